import type { PlanProblem } from "./problem.ts";

/** Days `from` to `to` (inclusive) planned as one. */
export interface Period {
  readonly from: number;
  readonly to: number;
}

const DAILY = 14;
const HALF_WEEKS_UNTIL = 42;

/** Single days for a fortnight, half-weeks (Mon-Wed, Thu-Sun) for four weeks, then whole weeks. Days on which nobody works are left out of the daily part. */
export function periodsOf(problem: PlanProblem): Period[] {
  const periods: Period[] = [];
  const last = problem.days.length - 1;
  for (let from = 0; from <= last; ) {
    const weekday = problem.weekday[from] ?? 0;
    const rest =
      from < DAILY ? 1 : from < HALF_WEEKS_UNTIL ? (weekday < 3 ? 3 - weekday : 7 - weekday) : 7 - weekday;
    const to = Math.min(last, from + rest - 1);
    if (worked(problem, from, to)) periods.push({ from, to });
    from = to + 1;
  }
  return periods;
}

const worked = (problem: PlanProblem, from: number, to: number): boolean =>
  problem.hands.some((hand) => hand.minutes.subarray(from, to + 1).some((minutes) => minutes > 0));

/** Index of the period in which day `d` lies, or of the next one after it; `periods.length` when there is none. */
export function periodAt(periods: readonly Period[], d: number): number {
  const found = periods.findIndex((period) => period.to >= d);
  return found < 0 ? periods.length : found;
}
