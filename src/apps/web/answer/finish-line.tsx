import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay } from "../../../core/say/dates.ts";
import { answer } from "../../../core/say/page.ts";
import { type Day, daysBetween } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";

const WIDTH = 1000;
const EDGE = 60;

/** The campaign as a line with the likely finish on it. */
export function FinishLine({ plan }: { plan: Plan }) {
  const days = Math.max(1, daysBetween(plan.start, plan.end));
  const x = (day: Day): number =>
    EDGE + ((WIDTH - 2 * EDGE) * Math.min(days, Math.max(0, daysBetween(plan.start, day)))) / days;
  const [from, to] = [plan.finish.p10 ?? plan.end, plan.finish.p90 ?? plan.end];
  const range = answer.between(
    sayDay(from, LOCALE),
    plan.finish.p90 ? sayDay(to, LOCALE) : answer.laterThan(sayDay(plan.end, LOCALE)),
  );
  const mark = (day: Day, words: string, anchor: "start" | "middle" | "end") => (
    <g>
      <line className="tick" x1={x(day)} x2={x(day)} y1="22" y2="50" />
      <text x={x(day)} y="70" textAnchor={anchor}>
        {words} {sayDay(day, LOCALE, "tiny")}
      </text>
    </g>
  );
  return (
    <svg
      className="finish-line"
      viewBox={`0 0 ${WIDTH} 84`}
      role="img"
      aria-label={answer.picture(sayDay(plan.start, LOCALE), range, sayDay(plan.end, LOCALE))}
    >
      <line className="rail" x1={EDGE} x2={WIDTH - EDGE} y1="36" y2="36" />
      <line className="range" x1={x(from) - 3} x2={x(to) + 3} y1="36" y2="36" />
      {mark(plan.start, answer.start, "start")}
      {plan.planFrom !== plan.start && mark(plan.planFrom, answer.morning, "middle")}
      {mark(plan.end, answer.end, "end")}
      {plan.finish.p50 && (
        <text x={x(plan.finish.p50)} y="16" textAnchor={x(plan.finish.p50) > WIDTH * 0.85 ? "end" : "middle"}>
          {sayDay(plan.finish.p50, LOCALE, "tiny")}
        </text>
      )}
    </svg>
  );
}
