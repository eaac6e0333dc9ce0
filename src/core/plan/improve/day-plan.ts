import { boundFrom } from "../bound/certificate.ts";
import { dayModel, type Prices } from "../bound/day-model.ts";
import { searchPrices } from "../bound/price-search.ts";
import { startPrices } from "../bound/start-prices.ts";
import { type CampaignProgramme, campaignProgramme } from "../campaign-programme.ts";
import { classesOf, type JobClass } from "../classes.ts";
import { type Guide, guideFrom } from "../guide.ts";
import { periodsOf } from "../periods.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import type { Walk } from "../walk.ts";
import { solveWholeDays, type WholeAnswer } from "../whole-days.ts";
import { bestManner, type Trial, tryOut } from "./best-manner.ts";
import { solveExactly } from "./exact.ts";
import { guideFromPrices } from "./price-guide.ts";
import { shaken } from "./shake.ts";

/** How much is tried; every count falls as the campaign grows, so that the time stays within a minute. */
export interface Effort {
  /** Largest gap of the programme accepted before the mixed-integer search takes over, 0 to 1. */
  readonly gap: number;
  /** Most classes the programme may have. */
  readonly classes: number;
  readonly seed: number;
}

/** A plan of every item on every day, what it was made from, and how good it is. */
export interface DayPlan {
  readonly classes: readonly JobClass[];
  readonly parts: CampaignProgramme;
  readonly answer: WholeAnswer;
  readonly guide: Guide;
  readonly day: Walk;
  /** Weighted item-days of the plan, and the bound that no plan of items and days can beat. */
  readonly cost: number;
  readonly bound: number;
  /** What proves the bound, or, of a small campaign solved exactly, what made it small enough. */
  readonly prices: Prices;
}

/** Up to so many items the plan is the best there is, found item by item and day by day. */
const EXACT_ITEMS = 30;
/** Steps of one price search that may be spent, as items alike × tasks × days. */
const SEARCH_WORK = 1.5e9;
const SEARCH_ROUNDS = { least: 150, most: 1500 };
/** Items walked again in search of a better order, all tries together. */
const SHAKE_WORK = 4e5;
const SHAKE_TRIES = { least: 0, most: 1500 };

const within = ({ least, most }: { least: number; most: number }, n: number): number =>
  Math.round(Math.max(least, Math.min(most, n)));

/** Programme, prices and their bound, walks in many manners, small changes of the order: the best plan met, and its proof. */
export async function dayPlan(problem: PlanProblem, solve: Solve, effort: Effort): Promise<DayPlan> {
  const classes = classesOf(problem, effort.classes);
  const periods = periodsOf(problem);
  const parts = campaignProgramme(problem, classes, periods);
  const answer = await solveWholeDays(parts, solve, effort.gap);
  const programme = guideFrom(problem, classes, periods, parts, answer.values);
  const model = dayModel(problem);
  const rounds = within(SEARCH_ROUNDS, SEARCH_WORK / (model.kind.length * model.worked.days.length));
  const first = tryOut(problem, programme);
  const start = startPrices(problem, periods, parts, answer.duals);
  const rough = searchPrices(model, start, first.cost, Math.round(rounds / 2));
  const rougher = better(first, bestManner(problem, programme, guideFromPrices(model, rough), 1));
  // A nearer plan makes surer steps.
  const found = searchPrices(model, rough.prices, rougher.cost, Math.round(rounds / 2));
  const fine = better(rougher, bestManner(problem, programme, guideFromPrices(model, found), 2));
  const tries = within(SHAKE_TRIES, SHAKE_WORK / Math.max(1, problem.jobs.length));
  const walked = shaken(problem, fine, tries, effort.seed);
  const { best, bound } =
    problem.jobs.length <= EXACT_ITEMS
      ? await solveExactly(problem, found.prices, walked, solve)
      : { best: walked, bound: boundFrom(problem, found.prices) };
  return {
    classes,
    parts,
    answer,
    guide: best.guide,
    day: best.day,
    cost: best.cost,
    bound: Math.min(best.cost, bound),
    prices: found.prices,
  };
}

const better = (one: Trial, other: Trial): Trial => (other.cost < one.cost ? other : one);
