import type { Route } from "../../care/care.ts";
import type { Norms } from "../../care/norms.ts";
import type { Campaign } from "../../items/campaign.ts";
import type { Watch } from "../improve/course.ts";
import { PLAN_DEFAULTS, type Planned, plannedFrom } from "../make-plan.ts";
import type { Pace } from "../pace.ts";
import { planProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import type { AcceptedPlan } from "./accepted.ts";
import { changesOf, type Replan } from "./changes.ts";
import { freshPlan, longSearched } from "./fresh-plan.ts";
import { nearestPlan } from "./nearest-plan.ts";
import { promisesOf } from "./promises.ts";

/** Simulated campaigns behind the finish range: so many item-walks in all, as people wait for their sheets. */
const ITEM_WALKS = 80_000;
const DRAWS = { least: 15, most: 60 };

export interface HowReplanned {
  /** `short`: as people wait for their sheets. */
  readonly search?: "short" | "long";
  readonly watch?: Watch | undefined;
}

/**
 * The plan for a new morning, from what was done and as near to the accepted plan as it pays: what was told for the next ten days is kept
 * unless it cannot be, or unless a change gains more waiting days than it costs. Same input, same plan.
 * @param routes with the minutes of `paces`, as `campaignRoutes` gives both
 * @param how a long search goes through as much as a first plan's; whoever watches is told how it goes, and may end it with the best so far
 */
export async function replan(
  campaign: Campaign,
  { routes, paces }: { readonly routes: readonly Route[]; readonly paces: readonly Pace[] },
  norms: Norms,
  solve: Solve,
  accepted: AcceptedPlan,
  { search = "short", watch }: HowReplanned = {},
): Promise<{ readonly planned: Planned; readonly replan: Replan }> {
  const problem = planProblem(campaign, routes, norms);
  const promises = promisesOf(problem, accepted);
  const {
    trial: fresh,
    course,
    ...proof
  } = await (search === "long" ? longSearched : freshPlan)(problem, solve, watch);
  const chosen = nearestPlan(problem, accepted, promises, fresh, (done) => course.goesOn("changes", done));
  const { guide, day, cost, problem: walkedIn } = chosen;
  const few = Math.round(ITEM_WALKS / Math.max(1, problem.jobs.length));
  const draws = search === "long" ? PLAN_DEFAULTS.draws : Math.min(DRAWS.most, Math.max(DRAWS.least, few));
  const made = { ...proof, guide, day, walkedIn, cost, bound: Math.min(cost, proof.bound) };
  return {
    planned: plannedFrom(problem, routes, norms, made, {
      draws,
      seed: PLAN_DEFAULTS.seed,
    }),
    replan: changesOf({ campaign, routes, paces, problem, accepted, promises, fresh, chosen }),
  };
}
