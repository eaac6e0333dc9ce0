import { useState } from "react";
import { sayDay } from "../../../core/say/dates.ts";
import { door, sayAnswer } from "../../../core/say/rooms/door.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { useWriter } from "../walls/writer.tsx";
import { AnswerButtons } from "./answer-buttons.tsx";
import type { DisagreementView } from "./answers-view.ts";
import "./disagreements.css";
import type { DoorItem } from "./item-view.ts";

/** Answers that contradict: both are shown, and people who looked again together settle them. */
export function Disagreements({ item }: { readonly item: DoorItem }) {
  if (item.disagreements.length === 0) return null;
  return (
    <Section id="disagreements" heading={door.disagreement} intro={door.disagreementHelp}>
      {item.disagreements.map((each) => (
        <Settle key={`${each.part} ${each.test.id}`} item={item} disagreement={each} />
      ))}
    </Section>
  );
}

function Settle({
  item,
  disagreement,
}: {
  readonly item: DoorItem;
  readonly disagreement: DisagreementView;
}) {
  const { part, test, answers } = disagreement;
  const { person } = useWriter();
  const status = useStatus();
  const write = useWrite();
  const mayNot = useWhyNot("disagreementSettled");
  const [marked, setMarked] = useState<readonly string[] | null>(null);
  const isOutside = item.people.length === 0;
  const by = marked ?? (person === null ? [] : [person]);
  async function settle(answer: string | number): Promise<void> {
    if (status === null) return;
    const looked = isOutside ? [status.me.role] : by;
    await write(door.saidSettled(test.short, sayAnswer(answer)), {
      kind: "disagreementSettled",
      payload: { item: item.id, part, test: test.id, answer, day: status.today, by: looked },
    });
  }
  return (
    <div className="settle">
      <h3>
        {part !== "" && `${part}: `}
        {test.question}
      </h3>
      <ul>
        {answers.map(({ answer, by: who, day }) => (
          <li key={`${who} ${day} ${answer}`}>
            <strong>{sayAnswer(answer)}</strong>{" "}
            {door.answeredBy(who, day === "" ? "" : sayDay(day as Day, LOCALE))}
          </li>
        ))}
      </ul>
      {!isOutside && (
        <fieldset>
          <legend>{door.togetherWho}</legend>
          {item.people.map(({ code, name }) => (
            <label key={code}>
              <input
                type="checkbox"
                checked={by.includes(code)}
                onChange={({ target }) =>
                  setMarked(target.checked ? [...by, code] : by.filter((each) => each !== code))
                }
              />
              {name}
            </label>
          ))}
        </fieldset>
      )}
      <AnswerButtons
        choices={test.choices}
        whyNot={mayNot ?? (by.length === 0 && !isOutside ? door.oneAtLeast : null)}
        answer={(answer) => void settle(answer)}
      />
    </div>
  );
}
