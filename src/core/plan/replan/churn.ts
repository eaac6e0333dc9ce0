import type { PlanProblem } from "../problem.ts";
import type { Walk } from "../walk.ts";
import type { AcceptedPlan } from "./accepted.ts";
import {
  brokenDueDays,
  CALM_DAYS,
  changedNearDays,
  changedPromises,
  type Promises,
  promisedSoon,
} from "./promises.ts";

/* What it costs to change what was told, in weighted item-days: as much as making so many items wait a day. Common practice, no source. */
const ACT_MOVED = 10;
const NEAR_DAY_MOVED = 30;
const DUE_BROKEN = 100;

/** Tomorrow is dearer than next week: the full price today, a third of it on the last calm day. */
const nearness = (day: number): number => 1 - ((2 / 3) * day) / (CALM_DAYS - 1);

/** Price of an act that is not begun by the person and on the day it was told. */
export const actMoved = (day: number): number => ACT_MOVED * nearness(day);

/** Price of everything that is not as it was told, in weighted item-days. */
export function churnOf(
  problem: PlanProblem,
  accepted: AcceptedPlan,
  promises: Promises,
  walk: Walk,
): number {
  let churn = 0;
  for (const each of changedPromises(promisedSoon(promises), walk)) churn += actMoved(each.day);
  for (const each of changedNearDays(promises, walk)) churn += NEAR_DAY_MOVED * nearness(each.day);
  for (const job of brokenDueDays(problem, accepted, walk)) churn += DUE_BROKEN * job.weight;
  return churn;
}
