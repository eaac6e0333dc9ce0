import { sayPercent } from "../../../../core/say/dates.ts";
import { anew as words } from "../../../../core/say/rooms/plan.ts";
import type { PlanLine } from "../../../server/plan-maker-messages.ts";
import { count, LOCALE } from "../../frame/reader.ts";

/** What is being done, how far it is, how good the best so far is; and the way to end it with that. */
export function MakingProgress(p: {
  readonly line: PlanLine;
  readonly isStopping: boolean;
  readonly stop: () => void;
}) {
  const { line } = p;
  const said = p.isStopping ? words.stopping : stepWords(line);
  const isPlanning = line.step === "planning";
  return (
    <div>
      <p role="status">{said}</p>
      <p>
        <progress
          aria-label={said}
          {...(isPlanning && line.done > 0 ? { value: line.done } : {})} // without a value: how far is not known
        />
      </p>
      {isPlanning && (
        <>
          <p className="quiet">
            {line.gap === null ? words.noGap : words.gap(sayPercent(line.gap, LOCALE, 1))}
          </p>
          <p>
            <button type="button" disabled={p.isStopping} onClick={p.stop}>
              {words.stop}
            </button>
          </p>
        </>
      )}
    </div>
  );
}

function stepWords(line: PlanLine): string {
  switch (line.step) {
    case "care":
      return words.steps.care(count(line.items));
    case "planning":
      return words.steps.planning(line.at);
    case "writing":
      return words.steps.writing;
    default:
      return words.steps.reading;
  }
}
