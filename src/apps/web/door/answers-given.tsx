import { sayDay } from "../../../core/say/dates.ts";
import { door, sayAnswer } from "../../../core/say/rooms/door.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { Fold } from "../item/fold.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { useStatus } from "../link/use-view.ts";
import { useWrite } from "../link/use-write.ts";
import { AnswerButtons } from "./answer-buttons.tsx";
import "./answers-given.css";
import type { AnswerView } from "./answers-view.ts";
import type { DoorItem } from "./item-view.ts";
import { useAnswer } from "./use-answer.ts";

/** Every answer that stands, each to be changed or taken back. */
export const AnswersGiven = ({ item }: { readonly item: DoorItem }) => (
  <Section id="answers" heading={door.answers}>
    {item.answers.length === 0 ? (
      <p className="quiet">{door.noAnswers}</p>
    ) : (
      <ul className="answers-given">
        {item.answers.map((given) => (
          <li key={`${given.part} ${given.test.id}`}>
            <GivenAnswer item={item.id} given={given} />
          </li>
        ))}
      </ul>
    )}
  </Section>
);

/** One answer; open, it can be given anew or taken back. What stood before stays in the log. */
export function GivenAnswer({ item, given }: { readonly item: string; readonly given: AnswerView }) {
  const { part, test, answer, by, day, correction, isOwn } = given;
  const again = useAnswer(item);
  const write = useWrite();
  const mayNotAnswer = useWhyNot("findingRecorded");
  const mayNotCorrect = useWhyNot("eventCorrected");
  const isLead = useStatus()?.me.role === "lead";
  const when = day === "" ? "" : sayDay(day as Day, LOCALE, "short"); // as the log keeps it
  const unit = test.choices.kind === "number" ? test.choices.unit : "";
  return (
    <Fold
      words={
        <span>
          {part !== "" && `${part}: `}
          {test.short}: <strong>{sayAnswer(answer, unit)}</strong>{" "}
          <span className="quiet">{door.answeredBy(by, when)}</span>
        </span>
      }
    >
      <p>{test.question}</p>
      <AnswerButtons
        choices={test.choices}
        whyNot={mayNotAnswer}
        answer={(next) => void again(part, { test, answer: next })}
      />
      <DoButton
        whyNot={mayNotCorrect ?? (isOwn || isLead ? null : door.notYours)}
        act={() =>
          void write(door.saidTakenBack(test.short), {
            kind: "eventCorrected",
            payload: correction,
            seen: [],
          })
        }
      >
        {door.takeBack}
      </DoButton>
    </Fold>
  );
}
