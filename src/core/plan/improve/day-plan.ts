import { boundFrom } from "../bound/certificate.ts";
import { type DayModel, dayModel, type Prices } from "../bound/day-model.ts";
import { type PriceSearch, searchPrices } from "../bound/price-search.ts";
import { startPrices } from "../bound/start-prices.ts";
import { type CampaignProgramme, campaignProgramme } from "../campaign-programme.ts";
import { classesOf, type JobClass } from "../classes.ts";
import { type Guide, guideFrom } from "../guide.ts";
import { periodsOf } from "../periods.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import type { Walk } from "../walk.ts";
import { solveWholeDays, type WholeAnswer } from "../whole-days.ts";
import { bestManner, FIRST, tryOut } from "./best-manner.ts";
import { Course, type Watch } from "./course.ts";
import { solveExactly } from "./exact.ts";
import { guideFromPrices, worthAt } from "./price-guide.ts";
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
  /** The problem as the plan took it: some days near mould that it could use are left out. */
  readonly walkedIn: PlanProblem;
  readonly day: Walk;
  /** Weighted item-days of the plan, and the bound that no plan of items and days can beat. */
  readonly cost: number;
  readonly bound: number;
  /** What proves the bound, or, of a small campaign solved exactly, what made it small enough. */
  readonly prices: Prices;
}

/** Up to so many items the plan is the best there is, found item by item and day by day. */
const EXACT_ITEMS = 30;
/** Steps of both price searches together, as items alike × tasks × days; and rounds of each. */
const SEARCH_WORK = 1.5e9;
const SEARCH_ROUNDS = { least: 75, most: 600 };
/** Tries at a better order of 5,000 items; fewer of more, for each is a longer walk and gains less. */
const SHAKES_AT_5000 = 310;
const SHAKE_TRIES = { least: 0, most: 1000 };

const within = ({ least, most }: { least: number; most: number }, n: number): number =>
  Math.round(Math.max(least, Math.min(most, n)));
const triesFor = ({ jobs }: PlanProblem): number =>
  within(SHAKE_TRIES, SHAKES_AT_5000 * (5000 / Math.max(1, jobs.length)) ** 1.5);

/**
 * Programme, prices and their bound, walks in many manners, small changes: the best plan met, and its proof. From the first walk on there is a
 * whole plan; when the watch says stop it is the best so far, with the bound so far.
 */
export async function dayPlan(
  problem: PlanProblem,
  solve: Solve,
  effort: Effort,
  watch?: Watch,
): Promise<DayPlan> {
  const classes = classesOf(problem, effort.classes);
  const periods = periodsOf(problem);
  const parts = campaignProgramme(problem, classes, periods);
  const answer = await solveWholeDays(parts, solve, effort.gap);
  const programme = guideFrom(problem, classes, periods, parts, answer.values);
  const model = dayModel(problem);
  const start = startPrices(problem, periods, parts, answer.duals);
  const course = new Course(tryOut(problem, programme), watch);
  course.offer(tryOut(problem, { ...programme, worth: worthAt(model, start), manner: FIRST }));
  course.goesOn("programme", 1);
  const prices = searchBoth(model, course, programme, start);
  if (!course.stopped) shaken(problem, course, model, prices, triesFor(problem), effort.seed);
  course.bound = boundFrom(problem, prices.prices);
  if (!course.stopped && problem.jobs.length <= EXACT_ITEMS && course.goesOn("exact", 0))
    await solveExactly(problem, prices.prices, course, solve);
  const { best, bound } = course;
  return {
    classes,
    parts,
    answer,
    guide: best.guide,
    walkedIn: best.problem,
    day: best.day,
    cost: best.cost,
    bound: Math.min(best.cost, bound),
    prices: prices.prices,
  };
}

/** Prices and the manner of walking by them, twice: towards a nearer plan the steps are surer. */
function searchBoth(model: DayModel, course: Course, programme: Guide, start: Prices): PriceSearch {
  const rounds = within(SEARCH_ROUNDS, SEARCH_WORK / (model.kind.length * model.worked.days.length) / 2);
  const search = (from: Prices, turn: number): PriceSearch => {
    const found = searchPrices(model, from, course.best.cost, rounds, (bound, done) => {
      course.bound = Math.max(course.bound, bound);
      return course.goesOn("prices", (turn + done) / 2);
    });
    if (course.stopped) return found;
    course.offer(
      bestManner(model.problem, programme, guideFromPrices(model, found), turn + 1, (best) => {
        course.offer(best);
        return course.goesOn("manners", turn / 2);
      }),
    );
    return found;
  };
  const rough = search(start, 0);
  return course.stopped ? rough : search(rough.prices, 1);
}
