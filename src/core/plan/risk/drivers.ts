import type { Guide } from "../guide.ts";
import type { Driver } from "../plan.ts";
import type { PlanProblem } from "../problem.ts";
import { EVERY_LUCK, type Fortunes } from "./fortunes.ts";
import { quantileOf } from "./quantile.ts";
import { simulate } from "./simulate.ts";

/**
 * What makes the finish uncertain: each kind of luck is drawn alone, with the same draws as in the plan's own campaigns and all else as the plan expects, and what
 * lies between one campaign in ten and nine in ten is its spread. One at a time, so that a lead can follow it; spreads do not add up to the whole, because luck of
 * one kind hides behind another's.
 */
export function driversOf(problem: PlanProblem, guide: Guide, fortunes: Fortunes, draws: number): Driver[] {
  const drivers = EVERY_LUCK.map((luck) => {
    const { days, left } = simulate(problem, guide, fortunes, [luck], draws);
    const between = (values: Int32Array): number => quantileOf(values, 0.9) - quantileOf(values, 0.1);
    return { luck, days: between(days), items: between(left) };
  });
  return drivers.sort((a, b) => b.days - a.days || b.items - a.items);
}
