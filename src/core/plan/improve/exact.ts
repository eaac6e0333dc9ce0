import { boundFrom } from "../bound/certificate.ts";
import { type DayModel, dayModel, type Prices } from "../bound/day-model.ts";
import { dayWindows } from "../bound/day-windows.ts";
import type { Guide } from "../guide.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import type { Trial } from "./best-manner.ts";
import type { Course } from "./course.ts";
import { ExactProgramme } from "./exact-programme.ts";
import { isBorne, walkOf } from "./exact-walk.ts";
import { costOf } from "./plan-cost.ts";

/** First distance over the price bound in which the best plan is looked for; it doubles until the plan is found. From trials. */
const FIRST_REACH = 0.01;

/**
 * A small campaign solved item by item and day by day. Days on which the prices show that an item cannot end a task in a plan cheaper than a
 * reach are left out, which is what makes it small enough; a plan found within the reach is the best there is.
 */
export async function solveExactly(
  problem: PlanProblem,
  prices: Prices,
  course: Course,
  solve: Solve,
): Promise<void> {
  const model = dayModel(problem, true);
  const whole = problem.jobs.every((job) => Number.isInteger(job.weight)) && problem.days.length % 2 === 0;
  // Costs are whole numbers when weights are (a left item pays half the days), so a bound between two of them rises to the next.
  const raised = (bound: number): number => (whole ? Math.ceil(bound - 1e-4) : bound);
  // No plan costs as little as `upper`, so the best costs more.
  const nextOver = (upper: number): number => (whole ? Math.floor(upper + 1e-6) + 1 : upper);
  const base = boundFrom(problem, prices);
  course.bound = raised(base);
  const open = (): boolean => course.bound < course.best.cost - 1e-6;
  for (let reach = Math.max(2, FIRST_REACH * base); open() && course.goesOn("exact", 0); reach *= 2) {
    // With whole costs a better plan is better by 1.
    const better = course.best.cost - (whole ? 1 : 0);
    const upper = Math.min(better, base + reach);
    const parts = new ExactProgramme(model, dayWindows(model, prices, upper));
    const solved = await solve(parts.programme, { relaxed: false, gap: 0 });
    if (solved.status === "failed") break;
    if (solved.status !== "infeasible" && solved.values.length > 0) {
      const other = trialOf(problem, model, parts, solved.values);
      if (isBorne(model, other.day)) course.offer(other);
    }
    const found = solved.status === "infeasible" ? Number.POSITIVE_INFINITY : solved.bound + parts.fixedCost;
    const proved = found > upper ? nextOver(upper) : raised(found);
    course.bound = Math.max(course.bound, Math.min(proved, course.best.cost));
    if (upper >= better || solved.status === "stopped" || solved.status === "gap reached") break;
  }
}

/** The plan an answer is, and a guide that leads there when luck turns. */
function trialOf(problem: PlanProblem, model: DayModel, parts: ExactProgramme, values: Float64Array): Trial {
  const day = walkOf(model, parts, values);
  const last = problem.days.length;
  const guide: Guide = {
    wanted: new Map(
      [...day.ends].map(([job, ends]) => [job, Float64Array.from(ends, (d) => (d < 0 ? last + 1 : d))]),
    ),
    exposedBy: day.exposed.map((days) => {
      let sum = 0;
      return Float64Array.from(days, (on) => {
        sum += on;
        return sum;
      });
    }),
    worth: [],
    manner: { session: 1, patience: 7, sameWorth: 1, fitting: 1 },
  };
  return { problem, guide, day, cost: costOf(problem, day) };
}
