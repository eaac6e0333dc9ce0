import { boundFrom } from "../bound/certificate.ts";
import { type DayModel, dayModel, type Prices } from "../bound/day-model.ts";
import { dayWindows } from "../bound/day-windows.ts";
import type { Guide } from "../guide.ts";
import type { PlanProblem } from "../problem.ts";
import type { Solve } from "../programme.ts";
import type { Trial } from "./best-manner.ts";
import { ExactProgramme } from "./exact-programme.ts";
import { isBorne, walkOf } from "./exact-walk.ts";
import { costOf } from "./plan-cost.ts";

/** A small campaign's best plan and the bound; they are equal when the search could finish. */
export interface Exact {
  readonly best: Trial;
  readonly bound: number;
}

/** First distance over the price bound in which the best plan is looked for; it doubles until the plan is found. From trials. */
const FIRST_REACH = 0.005;

/**
 * A small campaign solved item by item and day by day. Days on which the prices show that an item cannot end a task in a plan cheaper than a
 * reach are left out, which is what makes it small enough; a plan found within the reach is the best there is.
 */
export async function solveExactly(
  problem: PlanProblem,
  prices: Prices,
  known: Trial,
  solve: Solve,
): Promise<Exact> {
  const model = dayModel(problem, true);
  const whole = problem.jobs.every((job) => Number.isInteger(job.weight)) && problem.days.length % 2 === 0;
  // Costs are whole numbers when weights are (a left item pays half the days), so a bound between two of them rises to the next.
  const raised = (bound: number): number => (whole ? Math.ceil(bound - 1e-4) : bound);
  const base = boundFrom(problem, prices);
  let best = known;
  let bound = raised(base);
  for (let reach = Math.max(2, FIRST_REACH * base); bound < best.cost - 1e-6; reach *= 2) {
    const upper = Math.min(best.cost, base + reach);
    const parts = new ExactProgramme(model, dayWindows(model, prices, upper));
    const solved = await solve(parts.programme, { relaxed: false, gap: 0 });
    if (solved.status === "failed") break;
    if (solved.status !== "infeasible" && solved.values.length > 0) {
      const other = trialOf(problem, model, parts, solved.values);
      if (other.cost < best.cost && isBorne(model, other.day)) best = other;
    }
    const proved = solved.status === "infeasible" ? upper : Math.min(upper, solved.bound + parts.fixedCost);
    bound = Math.max(bound, raised(Math.min(proved, best.cost)));
    if (upper >= best.cost || solved.status === "stopped" || solved.status === "gap reached") break;
  }
  return { best, bound: Math.min(bound, best.cost) };
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
  return { guide, day, cost: costOf(problem, day) };
}
