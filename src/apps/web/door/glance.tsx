import { useState } from "react";
import { door, sayAnswer } from "../../../core/say/rooms/door.ts";
import { DoButton } from "../item/do-button.tsx";
import { useWhyNot } from "../item/use-why-not.ts";
import type { AskedTest } from "./ask-view.ts";
import "./glance.css";
import { useAnswer } from "./use-answer.ts";

const MARKS = ["yes", "unsure", "open"] as const;
type Mark = (typeof MARKS)[number];

/** Several things one look answers: what is there is marked, the rest is no. What is left open stays not tested. */
export function Glance(p: {
  readonly item: string;
  readonly part: string;
  readonly tests: readonly AskedTest[];
}) {
  const [marks, setMarks] = useState<Readonly<Record<string, Mark>>>({});
  const answer = useAnswer(p.item);
  const whyNot = useWhyNot("findingRecorded");
  const isMarked = Object.keys(marks).length > 0;
  const write = (): void => {
    const answers = p.tests.flatMap((test) => {
      const mark = marks[test.id] ?? "no";
      return mark === "open" ? [] : [{ test, answer: mark }];
    });
    void answer(p.part, ...answers);
  };
  const toggle = (test: string, mark: Mark): void => {
    const { [test]: before, ...rest } = marks;
    setMarks(before === mark ? rest : { ...rest, [test]: mark });
  };
  return (
    <>
      <p>{door.glanceHelp}</p>
      <ul className="glance">
        {p.tests.map((test) => (
          <li key={test.id}>
            <GlanceLine test={test} mark={marks[test.id] ?? null} toggle={(mark) => toggle(test.id, mark)} />
          </li>
        ))}
      </ul>
      <DoButton isMain whyNot={whyNot} act={write}>
        {isMarked ? door.glanceRest : door.glanceNone}
      </DoButton>
    </>
  );
}

const GlanceLine = (p: {
  readonly test: AskedTest;
  readonly mark: Mark | null;
  readonly toggle: (mark: Mark) => void;
}) => (
  <>
    <p>
      {p.test.question} {p.test.stop && <strong>{door.stopTest}</strong>}
    </p>
    <span className="glance-marks">
      {MARKS.map((mark) => (
        <button
          key={mark}
          type="button"
          aria-pressed={p.mark === mark}
          aria-label={`${p.test.short}: ${mark === "open" ? door.leaveOpen : sayAnswer(mark)}`}
          onClick={() => p.toggle(mark)}
        >
          {mark === "open" ? door.leaveOpen : sayAnswer(mark)}
        </button>
      ))}
    </span>
  </>
);
