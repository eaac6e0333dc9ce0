import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay } from "../../../core/say/dates.ts";
import { answer } from "../../../core/say/page.ts";
import { type Day, daysBetween } from "../../../core/units/day.ts";
import { isMirrored } from "../frame/direction.ts";
import { LOCALE } from "../frame/reader.ts";
import { FinishMark } from "./finish-mark.tsx";

/** Per cent of the width kept free at either end. */
const EDGE = 2;

/** The campaign as a line with the likely finish on it. Places are in per cent, so that words keep their size at any width. */
export function FinishLine({ plan }: { plan: Plan }) {
  const days = Math.max(1, daysBetween(plan.start, plan.end));
  const x = (day: Day | null): number => {
    const share = day === null ? 1 : Math.min(1, Math.max(0, daysBetween(plan.start, day) / days));
    const along = EDGE + share * (100 - 2 * EDGE);
    return isMirrored() ? 100 - along : along;
  };
  const stretch = (from: Day | null, to: Day | null) => ({
    x1: `${x(from)}%`,
    x2: `${x(to)}%`,
    y1: 51,
    y2: 51,
  });
  const { p10, p50, p90 } = plan.finish;
  return (
    <svg className="finish-line" role="img" aria-label={lineWords(plan)}>
      <line className="rail" {...stretch(plan.start, plan.end)} />
      <line className="done" {...stretch(plan.start, plan.planFrom)} />
      <line className="range" {...stretch(p10, p90)} />
      <FinishMark at={x(plan.start)} side="below" words={`${answer.start} ${short(plan.start)}`} />
      {plan.planFrom !== plan.start && (
        <FinishMark at={x(plan.planFrom)} side="above" words={`${answer.morning} ${short(plan.planFrom)}`} />
      )}
      <FinishMark at={x(plan.end)} side="below" words={`${answer.end} ${short(plan.end)}`} />
      {p50 && <circle className="half" cx={`${x(p50)}%`} cy="51" r="11" />}
    </svg>
  );
}

const short = (day: Day): string => sayDay(day, LOCALE, "tiny");

function lineWords({ start, end, finish }: Plan): string {
  const say = (day: Day | null): string =>
    day ? sayDay(day, LOCALE) : answer.laterThan(sayDay(end, LOCALE)).toLocaleLowerCase(LOCALE);
  return answer.picture(say(start), answer.between(say(finish.p10), say(finish.p90)), say(end));
}
