import { useEffect, useRef } from "react";
import { door } from "../../../core/say/rooms/door.ts";
import { count } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import { AnswerButtons } from "./answer-buttons.tsx";
import type { AskedTest, AskView } from "./ask-view.ts";
import { Glance } from "./glance.tsx";
import type { DoorItem } from "./item-view.ts";
import { LaterTests } from "./later-tests.tsx";
import "./survey.css";
import { useAnswer } from "./use-answer.ts";
import { useSettled } from "./use-settled.ts";

/** The guided survey: the next question that matters, and nothing that does not. */
export function Survey(p: {
  readonly item: DoorItem;
  /** Questions put off, as `part test`. */
  readonly skipped: readonly string[];
  readonly skip: (skipped: readonly string[]) => void;
}) {
  const { ask, missing, id } = p.item;
  const putOff = (tests: readonly AskedTest[]): void =>
    p.skip([...p.skipped, ...tests.map((test) => `${ask.part} ${test.id}`)]);
  return (
    <Section id="survey" heading={door.survey}>
      <p role="status">{missing > 0 && door.mustAsk(count(missing))}</p>
      <Asked key={asked(ask)} item={id} ask={ask} putOff={putOff} />
      {p.skipped.length > 0 && (
        <p className="survey-skipped">
          {door.skipped(count(p.skipped.length))}{" "}
          <button type="button" onClick={() => p.skip([])}>
            {door.askSkipped}
          </button>
        </p>
      )}
      {ask.forbidden.length > 0 && (
        <section aria-label={door.forbidden}>
          <h3>{door.forbidden}</h3>
          <ul>
            {ask.forbidden.map((each) => (
              <ForbiddenTest key={`${each.part} ${each.test.id}`} item={id} {...each} />
            ))}
          </ul>
        </section>
      )}
      <LaterTests item={id} later={ask.later} />
    </Section>
  );
}

const asked = ({ part, tests }: AskView): string => `${part} ${tests.map(({ id }) => id).join(" ")}`;

/** What is asked now. The focus comes along when the question changes. */
function Asked(p: {
  readonly item: string;
  readonly ask: AskView;
  readonly putOff: (tests: readonly AskedTest[]) => void;
}) {
  const { part, tests, rules } = p.ask;
  const heading = useRef<HTMLHeadingElement>(null);
  const isSettled = useSettled();
  useEffect(() => {
    if (document.activeElement === document.body) heading.current?.focus(); // what was pressed is gone
  }, []);
  const [test] = tests;
  if (test === undefined) return <Empty title={door.settled} help={door.settledHelp} />;
  const isGlance = tests.length > 1;
  return (
    <div className="survey-asked">
      <h3 ref={heading} tabIndex={-1}>
        <span className="quiet">{isGlance ? door.glance(part) : door.question(part)}</span>
        {!isGlance && <span className="survey-question">{test.question}</span>}
      </h3>
      <div className="survey-answers" inert={!isSettled}>
        {isGlance ? (
          <Glance item={p.item} part={part} tests={tests} />
        ) : (
          <OneQuestion item={p.item} part={part} test={test} />
        )}
      </div>
      <div className="survey-skip">
        <button type="button" onClick={() => p.putOff(tests)}>
          {door.skip}
        </button>
        <p className="quiet">
          {door.skipHelp} {rules > 0 && door.matters(count(rules))}
        </p>
      </div>
    </div>
  );
}

/** A test that a rule forbids; where it must be asked, an unsure stands for it, and counts as the safer side. */
function ForbiddenTest(p: AskView["forbidden"][number] & { readonly item: string }) {
  const answer = useAnswer(p.item);
  const whyNot = useWhyNot("findingRecorded");
  const { part, test, rule, text } = p;
  return (
    <li>
      <p>{door.forbiddenBy(test.short, rule, text)}</p>
      {p.isMustAsk && (
        <DoButton whyNot={whyNot} act={() => void answer(part, { test, answer: "unsure" })}>
          {door.writeUnsure}
        </DoButton>
      )}
    </li>
  );
}

function OneQuestion(p: { readonly item: string; readonly part: string; readonly test: AskedTest }) {
  const answer = useAnswer(p.item);
  const whyNot = useWhyNot("findingRecorded");
  const { test } = p;
  return (
    <>
      <p>{door.how(test.how)}</p>
      {test.note !== "" && !test.stop && <p className="quiet">{test.note}.</p>}
      {test.stop && (
        <p>
          <strong>{door.stopTest}</strong>
        </p>
      )}
      <AnswerButtons
        choices={test.choices}
        whyNot={whyNot}
        answer={(given) => void answer(p.part, { test, answer: given })}
      />
      <p className="quiet">{door.unsureMeans}</p>
    </>
  );
}
