import { suppose as words } from "../../../../core/say/rooms/plan.ts";
import { Section } from "../../frame/section.tsx";
import { ProblemWords } from "../../walls/notice.tsx";
import { Beside } from "./beside.tsx";
import "./supposed-answer.css";
import type { Supposing } from "./use-supposing.ts";

/** What is known so far: what was understood, the first answer, the proved one beside the plan; and what stands in the way. */
export function SupposedAnswer({ now, stop }: { readonly now: Supposing; readonly stop: () => void }) {
  const { first, proved } = now;
  const answer = proved ?? first;
  return (
    <Section id="answer" heading={words.beside}>
      <div role="alert" className="supposed-answer-trouble">
        {now.isAway && <p>{words.awayNow}</p>}
        {now.problems.length > 0 && (
          <p>
            <strong>{words.cannotBeSupposed}</strong>
          </p>
        )}
        {now.problems.map((problem) => (
          <div key={`${problem.code} ${problem.got}`}>
            {problem.code === "cannot-be-supposed" ? (
              <p>{problem.remedy}</p>
            ) : (
              <ProblemWords problem={problem} />
            )}
          </div>
        ))}
      </div>
      {now.supposed.length > 0 && (
        <ul className="supposed-answer-lines">
          {now.supposed.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <div aria-live="polite">
        {now.isAsking && <p>{stepWords(now)}</p>}
        {answer && (
          <>
            <h3>{proved ? words.proved : words.firstSaid}</h3>
            {answer.said.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </>
        )}
      </div>
      {now.isAsking && (
        <p>
          <progress aria-label={stepWords(now)} />{" "}
          <button type="button" onClick={stop}>
            {words.stop}
          </button>
        </p>
      )}
      <Beside now={now} />
      {answer && answer.cautions.length > 0 && (
        <div>
          <h3>{words.cautions}</h3>
          {answer.cautions.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
    </Section>
  );
}

const stepWords = ({ asItIs, first }: Supposing): string =>
  asItIs === null ? words.working : first === null ? words.first : words.proving;
