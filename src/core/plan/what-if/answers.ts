import type { Route } from "../../care/care.ts";
import type { Norms } from "../../care/norms.ts";
import type { Campaign } from "../../items/campaign.ts";
import { PLAN_DEFAULTS } from "../make-plan.ts";
import type { Order } from "../plan.ts";
import { planProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import { finishOf } from "../risk.ts";
import { inOrder } from "./_internals/order-weights.ts";
import {
  type Difference,
  differenceOf,
  type FirstOutlook,
  firstOutlookOf,
  type Outlook,
  outlookOf,
} from "./compare.ts";
import { type FreezerQueue, freezerQueueOf } from "./freezer-queue.ts";
import type { Scenario } from "./read-scenario.ts";
import { relaxedCase } from "./relaxed-case.ts";
import { type ReleaseQueue, releaseQueueOf } from "./release-queue.ts";
import { type FirstPlan, firstPlan, type Made, type Supposed, supposedPlan } from "./supposed-plan.ts";

/** A scenario and the campaign it makes. */
export interface Case {
  readonly scenario: Scenario;
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
}

/** What answering takes beside the campaign. */
export interface Means {
  readonly norms: Norms;
  readonly solve: Solve;
  readonly ordersOf: (campaign: Campaign, use: ReadonlyMap<string, Float64Array>) => readonly Order[];
}

/** The plan as it is: made once, and every scenario is held against it. */
export interface AsItIs {
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
  readonly supposed: Supposed;
  readonly outlook: Outlook;
  /** The same with as few simulated campaigns as a first answer has. */
  readonly first: FirstOutlook;
  readonly draws: number;
}

/** How one scenario stands: walked anew at once, then with a plan of its own and its proof. */
export type Answer =
  | {
      readonly step: "first";
      /** Place of the scenario in the question, 0 first. */
      readonly at: number;
      readonly outlook: FirstOutlook;
      readonly difference: Difference;
    }
  | {
      readonly step: "proved";
      readonly at: number;
      readonly outlook: Outlook;
      /** Null: the scenario only asks, and changes nothing. */
      readonly difference: Difference | null;
      readonly releases: ReleaseQueue | null;
      readonly freezer: FreezerQueue | null;
    };

/** Simulated campaigns: as many as the plan has, fewer where each takes long; so many item-walks in all. */
const ITEM_WALKS = 300_000;
const FEWEST_DRAWS = 50;
/** Simulated campaigns behind a first answer, the first of the same seeds. */
const FIRST_DRAWS = 20;

const drawsFor = (items: number): number =>
  Math.min(PLAN_DEFAULTS.draws, Math.max(FEWEST_DRAWS, Math.round(ITEM_WALKS / Math.max(1, items))));

export async function asItIs(
  campaign: Campaign,
  routes: readonly Route[],
  means: Means,
  draws = drawsFor(campaign.items.length),
): Promise<AsItIs> {
  const relaxed = await relaxedCase(planProblem(campaign, routes, means.norms), routes, means.solve);
  const supposed = await supposedPlan(relaxed, means.solve, draws, null);
  const outlook = outlookOf(supposed, relaxed.look, ordersOf(means, supposed));
  const few = finishOf(supposed.problem, supposed.guide, firstDraws(draws), PLAN_DEFAULTS.seed);
  return { campaign, routes, supposed, outlook, first: { ...outlook, finish: few }, draws };
}

const firstDraws = (draws: number): number => Math.min(draws, FIRST_DRAWS);
const ordersOf = ({ ordersOf }: Means, made: Made<FirstPlan>): readonly Order[] =>
  ordersOf(made.problem.campaign, made.use);

/** First answers of all scenarios, then the proved ones, each as soon as it is there. */
export async function* answersTo(
  base: AsItIs,
  cases: readonly Case[],
  means: Means,
): AsyncGenerator<Answer, void, undefined> {
  const known = new Set(base.campaign.items.map((each) => each.id));
  for (const [at, each] of cases.entries()) {
    if (each.scenario.changes.length === 0) continue;
    const made = firstPlan(problemOf(each, means), each.routes, base.supposed, firstDraws(base.draws));
    const outlook = firstOutlookOf(made, ordersOf(means, made));
    yield { step: "first", at, outlook, difference: differenceOf(base.first, outlook, known) };
  }
  for (const [at, each] of cases.entries()) {
    const { changes, releasesAlone, freezer } = each.scenario;
    const own = changes.length > 0 ? await proved(base, each, means) : null;
    const { plan, problem } = own?.supposed ?? base.supposed;
    yield {
      step: "proved",
      at,
      outlook: own?.outlook ?? base.outlook,
      difference: own && differenceOf(base.outlook, own.outlook, known),
      releases: releasesAlone === null ? null : releaseQueueOf(problem, plan, releasesAlone),
      freezer: freezer && freezerQueueOf(each.routes, plan, freezer),
    };
  }
}

/** A scenario's own plan, on the same seeds as the plan as it is. */
export async function proved(
  base: AsItIs,
  each: Case,
  means: Means,
): Promise<{ readonly supposed: Supposed; readonly outlook: Outlook }> {
  const relaxed = await relaxedCase(problemOf(each, means), each.routes, means.solve);
  const supposed = await supposedPlan(relaxed, means.solve, base.draws, base.supposed);
  return { supposed, outlook: outlookOf(supposed, relaxed.look, ordersOf(means, supposed)) };
}

const problemOf = ({ campaign, routes, scenario }: Case, { norms }: Means) =>
  inOrder(planProblem(campaign, routes, norms), scenario.changes);
