import type { Problem } from "../../core/outcome/problem.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Day } from "../../core/units/day.ts";
import { startPlanner } from "../../edge/solve/planner.ts";
import { finishedPlan, type ReadyFolder, readyFolder } from "../../edge/solve/ready-folder.ts";
import { BrokenPlan } from "./broken-plan.ts";
import { stoppable } from "./interrupts.ts";
import { PlanningLine } from "./planning-line.ts";

export interface PlannedFolder
  extends Pick<ReadyFolder, "campaign" | "problems" | "care" | "routes" | "stock"> {
  readonly plan: Plan;
  /** What the plan draws from each store, day by day. */
  readonly use: ReadonlyMap<string, Float64Array>;
}

/** Reads a campaign folder, decides care and makes the plan; null with the problems when the folder cannot be used. */
export async function planFolder(
  folder: string,
  planFrom: Day | undefined,
  progress: (words: string) => void,
): Promise<PlannedFolder | { readonly campaign: null; readonly problems: readonly Problem[] }> {
  progress("Reading the campaign folder …");
  const ready = await readyFolder(folder, planFrom, (items) =>
    progress(`Deciding care for ${items} items …`),
  );
  if (ready.campaign === null) return ready;
  const { campaign, problems, care, routes, stock } = ready;
  progress("Planning …");
  const planner = startPlanner();
  const line = new PlanningLine(progress);
  try {
    const planning = planner.plan(campaign, routes, (at) => line.step(at));
    const planned = await stoppable(planning, () => planner.stop(), progress);
    const { plan, broken } = finishedPlan(ready, planned);
    if (broken !== null) throw new BrokenPlan(broken);
    return { campaign, problems, care, routes, stock, plan, use: planned.use };
  } finally {
    line.end();
    await planner.close();
  }
}
