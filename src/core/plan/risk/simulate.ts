import { dayNumber, dayOfNumber } from "../../units/day.ts";
import type { Guide } from "../guide.ts";
import type { DayRange, Finish, Luck } from "../plan.ts";
import type { PlanProblem } from "../problem.ts";
import { type Walk, walk } from "../walk.ts";
import type { Fortunes } from "./fortunes.ts";
import { quantileOf } from "./quantile.ts";

/** How the simulated campaigns ended, each list rising. */
export interface Endings {
  /** Day of the last box; the day after the end: something is left. */
  readonly days: Int32Array;
  /** Items left at the end. */
  readonly left: Int32Array;
}

/** Walks so many campaigns, each with its own luck; `seen` is shown each walk, and nothing else is kept of it. */
export function simulate(
  problem: PlanProblem,
  guide: Guide,
  fortunes: Fortunes,
  lucks: readonly Luck[],
  draws: number,
  seen: (outcome: Walk, draw: number) => void = () => undefined,
): Endings {
  const days = new Int32Array(draws);
  const left = new Int32Array(draws);
  for (let draw = 0; draw < draws; draw++) {
    const outcome = walk(problem, guide, fortunes(draw, lucks));
    left[draw] = problem.jobs.length - outcome.boxed;
    days[draw] = left[draw] === 0 ? outcome.lastDay : problem.days.length;
    seen(outcome, draw);
  }
  return { days: days.sort(), left: left.sort() };
}

export const finishFrom = (problem: PlanProblem, { days, left }: Endings): Finish => {
  const boxed = (share: number): number => problem.jobs.length - quantileOf(left, share);
  return {
    ...rangeOf(problem, days),
    boxed: { p10: boxed(0.9), p50: boxed(0.5), p90: boxed(0.1) },
    draws: days.length,
    unfinished: left.filter((count) => count > 0).length,
  };
};

/** One in ten, half, nine in ten of rising day numbers of the plan. */
export function rangeOf({ campaign, days }: PlanProblem, sorted: ArrayLike<number>): DayRange {
  const day = (share: number) => {
    const d = quantileOf(sorted, share);
    return d >= 0 && d < days.length ? dayOfNumber(dayNumber(campaign.planFrom) + d) : null;
  };
  return { p10: day(0.1), p50: day(0.5), p90: day(0.9) };
}
