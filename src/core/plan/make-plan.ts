import type { Route } from "../care/care.ts";
import type { Norms } from "../care/norms.ts";
import type { Campaign } from "../items/campaign.ts";
import { bindsOf } from "./binds.ts";
import type { Watch } from "./improve/course.ts";
import { type DayPlan, dayPlan } from "./improve/day-plan.ts";
import { leftOf } from "./left.ts";
import type { Plan } from "./plan.ts";
import { type PlanProblem, planProblem } from "./problem.ts";
import type { Solve } from "./programme.ts";
import { riskOf } from "./risk.ts";
import { roomsOf } from "./rooms.ts";
import { sheetRows } from "./sheet-rows.ts";
import { assignmentsOf, itemDaysOf, personDaysOf } from "./sheets.ts";
import { gapOf } from "./whole-days.ts";

export interface PlanOptions {
  /** Largest gap accepted before the mixed-integer search takes over, 0 to 1. */
  readonly gap: number;
  /** Most simulated campaigns behind the finish range; a large collection has fewer. */
  readonly draws: number;
  readonly seed: number;
  /** Most classes the programme may have. */
  readonly classes: number;
}

export const PLAN_DEFAULTS: PlanOptions = { gap: 0.01, draws: 200, seed: 1, classes: 90 };

/** What the stores are asked for, by consumable and day; the stores' own page is made from it. */
export interface Planned {
  readonly plan: Omit<Plan, "orders" | "stores">;
  readonly use: ReadonlyMap<string, Float64Array>;
}

/** The campaign's plan: programme, day-by-day plan with its proof, range of the finish. Same input, same plan, whoever watches; told to stop, the best so far. */
export async function makePlan(
  campaign: Campaign,
  routes: readonly Route[],
  norms: Norms,
  solve: Solve,
  options: PlanOptions = PLAN_DEFAULTS,
  watch?: Watch,
): Promise<Planned> {
  const problem = planProblem(campaign, routes, norms);
  return plannedFrom(problem, routes, norms, await dayPlan(problem, solve, options, watch), options);
}

/** A day-by-day plan as the plan that is shown, with the range of its finish. */
export function plannedFrom(
  problem: PlanProblem,
  routes: readonly Route[],
  norms: Norms,
  made: Omit<DayPlan, "prices">,
  options: Pick<PlanOptions, "draws" | "seed">,
): Planned {
  const { campaign } = problem;
  const { parts, answer, day } = made;
  const assignments = assignmentsOf(problem, day);
  const plan = {
    campaign: campaign.name,
    place: campaign.place.name,
    start: campaign.start,
    end: campaign.end,
    planFrom: campaign.planFrom,
    itemCount: campaign.items.length,
    routed: problem.jobs.length,
    doneBefore: routes.filter((route) => route.destiny === "done").length,
    ...riskOf(made.walkedIn, made.guide, day, options.draws, options.seed),
    proof: {
      objective: answer.objective,
      bound: answer.bound,
      gap: gapOf(answer.objective, answer.bound),
      classes: made.classes.length,
      rows: parts.programme.rowLower.length,
      columns: parts.programme.cost.length,
      itemObjective: made.cost,
      itemBound: made.bound,
      itemGap: gapOf(made.cost, made.bound),
    },
    binds: bindsOf(problem, parts, answer.duals, answer.values, answer.objective, day),
    left: leftOf(campaign, routes, day),
    assignments,
    clock: sheetRows(assignments, campaign, norms),
    personDays: personDaysOf(problem, day),
    itemDays: itemDaysOf(problem, day),
    rooms: roomsOf(campaign, routes, day),
    people: campaign.people.map((person) => ({
      code: person.code,
      name: person.name,
      role: person.role,
      mouldLimit: person.mouldWork
        ? { minutesADay: problem.exposedMinutesADay, daysAWeek: problem.exposedDaysAWeek }
        : null,
    })),
    stations: campaign.stations.map(({ id, kind, places }) => ({ id, kind, places })),
  };
  return {
    plan,
    use: new Map(problem.stores.map((store, at) => [store.use, day.used[at] ?? new Float64Array(0)])),
  };
}
