import { boundFrom } from "../bound/certificate.ts";
import { dayModel } from "../bound/day-model.ts";
import { searchPrices } from "../bound/price-search.ts";
import { startPrices } from "../bound/start-prices.ts";
import { campaignProgramme } from "../campaign-programme.ts";
import { classesOf } from "../classes.ts";
import { guideFrom } from "../guide.ts";
import { bestManner, type Trial, tryOut } from "../improve/best-manner.ts";
import { Course, type Watch } from "../improve/course.ts";
import { type DayPlan, dayPlan } from "../improve/day-plan.ts";
import { guideFromPrices } from "../improve/price-guide.ts";
import { PLAN_DEFAULTS } from "../make-plan.ts";
import { periodsOf } from "../periods.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import { solveWholeDays } from "../whole-days.ts";

/** A shorter search than a first plan's, as people wait for their sheets: the programme's gap, rounds of prices, sweeps through manners. From trials. */
const GAP = 0.03;
const SEARCH_ROUNDS = 40;
const SWEEPS = 1;

/** A plan that knows nothing of an accepted one, and what proves how good any plan of the problem is. */
export interface FreshPlan extends Pick<DayPlan, "classes" | "parts" | "answer" | "bound"> {
  readonly trial: Trial;
  /** Whether whoever watches wants it to go on. */
  readonly course: Course;
}

/** Told to stop, it goes through no further manners of working; prices are found all the same, as they prove the plan. */
export async function freshPlan(problem: PlanProblem, solve: Solve, watch?: Watch): Promise<FreshPlan> {
  const classes = classesOf(problem, PLAN_DEFAULTS.classes);
  const periods = periodsOf(problem);
  const parts = campaignProgramme(problem, classes, periods);
  const answer = await solveWholeDays(parts, solve, GAP);
  const first = tryOut(problem, guideFrom(problem, classes, periods, parts, answer.values));
  const course = new Course(first, watch);
  course.goesOn("prices", 0);
  const model = dayModel(problem);
  const start = startPrices(problem, periods, parts, answer.duals);
  const found = searchPrices(model, start, first.cost, SEARCH_ROUNDS);
  const bound = boundFrom(problem, found.prices);
  course.bound = bound;
  course.offer(
    bestManner(problem, first.guide, guideFromPrices(model, found), SWEEPS, () =>
      course.goesOn("manners", 0),
    ),
  );
  return { classes, parts, answer, trial: course.best, course, bound };
}

/** The same by a first plan's own search, where there is time for it. */
export async function longSearched(problem: PlanProblem, solve: Solve, watch?: Watch): Promise<FreshPlan> {
  const made = await dayPlan(problem, solve, PLAN_DEFAULTS, watch);
  const { classes, parts, answer, bound, walkedIn, guide, day, cost } = made;
  const trial = { problem: walkedIn, guide, day, cost };
  const course = new Course(trial, watch);
  course.bound = bound;
  return { classes, parts, answer, bound, trial, course };
}
