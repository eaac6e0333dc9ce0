import type { Route } from "../../care/care.ts";
import type { Norms } from "../../care/norms.ts";
import type { Campaign } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";
import { campaignProgramme } from "../campaign-programme.ts";
import { classesOf } from "../classes.ts";
import { guideFrom } from "../guide.ts";
import { periodsOf } from "../periods.ts";
import { planProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import { walk } from "../walk.ts";

/** What is known a second or two before the proved plan. */
export interface FirstLook {
  /** Last item boxed when everything takes its expected time; null when something is left. */
  readonly finish: Day | null;
  readonly boxed: number;
  readonly routed: number;
  /** Must-do items not boxed by the end. */
  readonly mustLeft: number;
}

/** Fewer classes than the plan has: half as many rows, and the figures stay within days. */
const FEW_CLASSES = 30;

/** One relaxed programme of few classes and one walk of its answer: no whole exposed days, no luck, no proof. */
export async function firstLook(
  campaign: Campaign,
  routes: readonly Route[],
  norms: Norms,
  solve: Solve,
): Promise<FirstLook> {
  const problem = planProblem(campaign, routes, norms);
  const classes = classesOf(problem, FEW_CLASSES);
  const periods = periodsOf(problem);
  const parts = campaignProgramme(problem, classes, periods);
  const { values, status } = await solve(parts.programme, { relaxed: true, gap: 0 });
  if (status !== "optimal") throw new Error(`The first look's programme ended as "${status}".`);
  const plan = walk(problem, guideFrom(problem, classes, periods, parts, values));
  const routed = problem.jobs.length;
  let mustLeft = 0;
  for (const [job, ends] of plan.ends)
    if (job.item.priority === "must" && (ends.at(-1) ?? -1) < 0) mustLeft++;
  return {
    finish: plan.boxed === routed ? (problem.days[plan.lastDay] ?? null) : null,
    boxed: plan.boxed,
    routed,
    mustLeft,
  };
}
