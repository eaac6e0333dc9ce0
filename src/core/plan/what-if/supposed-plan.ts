import type { Route } from "../../care/care.ts";
import { bindsOf } from "../binds.ts";
import { boundFrom } from "../bound/certificate.ts";
import { dayModel } from "../bound/day-model.ts";
import { searchPrices } from "../bound/price-search.ts";
import { dearWhereShut } from "../bound/shut-places.ts";
import { startPrices } from "../bound/start-prices.ts";
import { type Guide, guideFrom } from "../guide.ts";
import { bestManner, type Trial, tryOut } from "../improve/best-manner.ts";
import { guideFromPrices } from "../improve/price-guide.ts";
import { leftOf } from "../left.ts";
import { PLAN_DEFAULTS } from "../make-plan.ts";
import type { Plan } from "../plan.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import { finishOf } from "../risk.ts";
import { assignmentsOf, personDaysOf } from "../sheets.ts";
import type { Walk } from "../walk.ts";
import { gapOf, solveWholeDays, type WholeAnswer } from "../whole-days.ts";
import { following } from "./follow.ts";
import type { RelaxedCase } from "./relaxed-case.ts";

/** The parts of a plan that are compared; nothing is known yet of how good it is. */
export type FirstPlan = Pick<Plan, "planFrom" | "end" | "routed" | "finish" | "left" | "personDays">;
export type SupposedPlan = FirstPlan &
  Pick<Plan, "binds" | "assignments"> & { readonly proof: Pick<Plan["proof"], "gap" | "itemGap"> };

/** A plan made to be compared, and what it was made from. */
export interface Made<P extends FirstPlan> {
  readonly plan: P;
  /** Use of each consumable by day. */
  readonly use: ReadonlyMap<string, Float64Array>;
  /** What the plan followed: a scenario may follow it too. */
  readonly guide: Guide;
  readonly day: Walk;
  readonly problem: PlanProblem;
}
export type Supposed = Made<SupposedPlan>;

/** A shorter search than the plan's own, so that several plans take seconds: rounds of prices, sweeps through manners, no shaking. From trials. */
const SEARCH_ROUNDS = 100;
const SWEEPS = 2;
/** A programme within this of its bound is good enough to compare. */
const GAP = 0.03;

/** The plan as it is with the change in it, walked anew in the same way: in a moment, and proved by nothing. */
export function firstPlan(
  problem: PlanProblem,
  routes: readonly Route[],
  asItIs: Pick<Supposed, "guide" | "problem">,
  draws: number,
): Made<FirstPlan> {
  const trial = tryOut(problem, following(problem, asItIs.guide, asItIs.problem));
  return madeFrom(problem, routes, trial, draws);
}

/**
 * A plan to compare: programme with whole exposed days, a short search for prices and manner, luck. Every case of a comparison is made this
 * way and with the same seeds. A scenario may also follow the guide of the plan as it is, and the better of the two is taken:
 * without it what only helps could seem to harm, by the accidents of the search.
 */
export async function supposedPlan(
  relaxed: RelaxedCase,
  solve: Solve,
  draws: number,
  asItIs: Supposed | null,
): Promise<Supposed> {
  const { routes, problem, parts } = relaxed;
  const answer = await solveWholeDays(parts, rememberedIn(relaxed, solve), GAP);
  const { best, bound } = searched(relaxed, answer, asItIs);
  const made = madeFrom(problem, routes, best, draws);
  return {
    ...made,
    plan: {
      ...made.plan,
      assignments: assignmentsOf(problem, best.day),
      binds: bindsOf(problem, parts, answer.duals, answer.values, answer.objective, best.day),
      proof: { gap: gapOf(answer.objective, answer.bound), itemGap: gapOf(best.cost, bound) },
    },
  };
}

function madeFrom(
  problem: PlanProblem,
  routes: readonly Route[],
  { guide, day }: Trial,
  draws: number,
): Made<FirstPlan> {
  const { campaign } = problem;
  return {
    problem,
    guide,
    day,
    use: new Map(problem.stores.map((store, at) => [store.use, day.used[at] ?? new Float64Array(0)])),
    plan: {
      planFrom: campaign.planFrom,
      end: campaign.end,
      routed: problem.jobs.length,
      finish: finishOf(problem, guide, draws, PLAN_DEFAULTS.seed),
      left: leftOf(campaign, routes, day),
      personDays: personDaysOf(problem, day),
    },
  };
}

/** The relaxed programme is solved already; only the others go to the solver. */
const rememberedIn =
  ({ parts, relaxed }: RelaxedCase, solve: Solve): Solve =>
  (programme, options) =>
    programme === parts.programme && options.relaxed ? Promise.resolve(relaxed) : solve(programme, options);

/** The best day-by-day plan of a short search, and the bound no plan of items and days can beat. */
function searched(
  { problem, classes, periods, parts }: RelaxedCase,
  answer: WholeAnswer,
  asItIs: Supposed | null,
): { readonly best: Trial; readonly bound: number } {
  const first = tryOut(problem, guideFrom(problem, classes, periods, parts, answer.values));
  const model = dayModel(problem);
  const prices = searchPrices(
    model,
    dearWhereShut(problem, startPrices(problem, periods, parts, answer.duals)),
    first.cost,
    SEARCH_ROUNDS,
  );
  const tried = [first, bestManner(problem, first.guide, guideFromPrices(model, prices), SWEEPS)];
  if (asItIs) tried.push(tryOut(problem, following(problem, asItIs.guide, asItIs.problem)));
  const best = tried.reduce((least, each) => (each.cost < least.cost ? each : least));
  return { best, bound: boundFrom(problem, prices.prices) };
}
