import type { Route } from "../../care/care.ts";
import { type CampaignProgramme, campaignProgramme } from "../campaign-programme.ts";
import { classesOf, type JobClass } from "../classes.ts";
import { PLAN_DEFAULTS } from "../make-plan.ts";
import { type Period, periodsOf } from "../periods.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve, Solved } from "../programme.ts";

/** A campaign as a programme, and the programme's answer without whole days: what no plan can beat, seconds before there is one. */
export interface RelaxedCase {
  readonly routes: readonly Route[];
  readonly problem: PlanProblem;
  readonly classes: readonly JobClass[];
  readonly periods: readonly Period[];
  readonly parts: CampaignProgramme;
  readonly relaxed: Solved;
  readonly look: FirstLook;
}

/** The relaxed programme in a lead's figures. */
export interface FirstLook {
  readonly routed: number;
  /** Items boxed by the end, at best. */
  readonly boxed: number;
  /** Days from the plan's morning to an item's box, at best: the weighted mean, days late and items left over adding to it. */
  readonly waitingDays: number;
}

export async function relaxedCase(
  problem: PlanProblem,
  routes: readonly Route[],
  solve: Solve,
): Promise<RelaxedCase> {
  const classes = classesOf(problem, PLAN_DEFAULTS.classes);
  const periods = periodsOf(problem);
  const parts = campaignProgramme(problem, classes, periods);
  const relaxed = await solve(parts.programme, { relaxed: true, gap: 0 });
  if (relaxed.status !== "optimal") throw new Error(`The relaxed programme ended as "${relaxed.status}".`);
  const weights = problem.jobs.reduce((sum, job) => sum + job.weight, 0);
  const look = {
    routed: problem.jobs.length,
    boxed: Math.round(boxedIn(parts, relaxed)),
    waitingDays: weights > 0 ? relaxed.objective / weights : 0,
  };
  return { routes, problem, classes, periods, parts, relaxed, look };
}

function boxedIn({ flow }: CampaignProgramme, { values }: Solved): number {
  let boxed = 0;
  for (const tasks of flow) for (const column of tasks.at(-1) ?? []) boxed += values[column] ?? 0;
  return boxed;
}
