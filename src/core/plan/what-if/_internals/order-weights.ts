import type { PlanProblem } from "../../problem.ts";
import type { Change } from "../change.ts";

/** What waits first or last weighs so many times more or less: enough to pass every other weight there is. */
const PUSH = 20;

/** The problem with the weights that an order of work asks for; limits, routes and people stay as they are. */
export function inOrder(problem: PlanProblem, changes: readonly Change[]): PlanProblem {
  const push = new Map<string, number>();
  for (const each of changes)
    if (each.change === "order")
      for (const id of each.items) push.set(id, each.place === "first" ? PUSH : 1 / PUSH);
  if (push.size === 0) return problem;
  return {
    ...problem,
    jobs: problem.jobs.map((job) => ({ ...job, weight: job.weight * (push.get(job.item.id) ?? 1) })),
  };
}
