import { finishCost, undoneCost } from "../campaign-programme.ts";
import type { PlanProblem } from "../problem.ts";
import type { Walk } from "../walk.ts";

/** Weighted item-days of a walked plan, on the same scale as the programme's. */
export function costOf(problem: PlanProblem, day: Walk): number {
  let cost = 0;
  for (const [job, ends] of day.ends) {
    const end = ends[ends.length - 1] ?? -1;
    cost += end < 0 ? undoneCost(problem.days.length, job) : finishCost(job.weight, job.due, end);
  }
  return cost;
}
