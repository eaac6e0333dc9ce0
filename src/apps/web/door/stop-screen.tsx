import { door } from "../../../core/say/rooms/door.ts";
import { Section } from "../frame/section.tsx";
import { AskAdviser } from "../item/ask-adviser.tsx";
import { goTo, linkTo } from "../walls/where.ts";
import { GivenAnswer } from "./answers-given.tsx";
import { DangerList } from "./dangers.tsx";
import { FinishSurvey } from "./finish-survey.tsx";
import type { DoorItem } from "./item-view.ts";
import { ScreenHeading } from "./screen-heading.tsx";
import "./stop-screen.css";
import { useTags } from "./use-tags.ts";

/** A resting state in which nobody is to touch the item: everybody leaves the room. */
const LEAVE = "room_cleared";

/** A stop test was answered yes, or unsure: how the item is left, who is asked, and nothing else. */
export function StopScreen({ item }: { readonly item: DoorItem }) {
  const { id, stops, follows, answers } = item;
  const { add } = useTags();
  const steps = door.stopSteps;
  const isLeft = follows.restId === LEAVE;
  const found = answers.filter(({ test }) => stops.some(({ short }) => short === test.short));
  return (
    <>
      <div className="stop-screen" role="alert">
        <ScreenHeading>{`${door.stop}: ${id}`}</ScreenHeading>
        <p>{item.title}</p>
        <ul>
          {stops.map(({ short, unsure }) => (
            <li key={short}>
              <strong>{unsure ? door.stopUnsure(short) : door.stopBecause(short)}.</strong>
            </li>
          ))}
        </ul>
        <DangerList dangers={follows.dangers} />
        <ol className="stop-steps">
          <li>{isLeft ? steps.leave : steps.close}</li>
          {isLeft ? <li>{steps.call}</li> : follows.rest !== "" && <li>{steps.keep(follows.rest)}</li>}
          {!isLeft && <li>{steps.mark}</li>}
          <li>{steps.wash}</li>
          <li>{steps.ask}</li>
        </ol>
        <p>{steps.local}</p>
      </div>
      <AskAdviser item={id} isOpen />
      <p className="stop-screen-acts">
        <button
          type="button"
          onClick={() => {
            add(id);
            goTo("door", "tags");
          }}
        >
          {door.printMark}
        </button>
        <a href={linkTo("door")}>{door.back}</a>
      </p>
      <FinishSurvey item={item} />
      {found.length > 0 && (
        <Section id="stop-wrong" heading={door.wrong} intro={door.wrongHelp}>
          <ul>
            {found.map((each) => (
              <li key={`${each.part} ${each.test.id}`}>
                <GivenAnswer item={id} given={each} />
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
