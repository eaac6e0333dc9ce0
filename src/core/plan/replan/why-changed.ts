import type { Act, StationKind } from "../../items/campaign.ts";
import { addDays, type Day } from "../../units/day.ts";
import { firstDayOf } from "../classes.ts";
import type { PlanProblem, Task } from "../problem.ts";
import type { Walk } from "../walk.ts";
import { KINDS } from "../work.ts";
import type { Promised, Promises } from "./promises.ts";

/** Why something is not as it was told; never why a person may not do mould work. */
export type WhyChanged =
  | { readonly why: "left the team" }
  | { readonly why: "away"; readonly person: string; readonly day: Day }
  | { readonly why: "clean work"; readonly person: string; readonly day: Day }
  /** Exposed days worked before the first morning use up what the week allows. */
  | { readonly why: "enough mould days"; readonly person: string }
  | { readonly why: "behind"; readonly act: Act; readonly day: Day }
  | { readonly why: "ward"; readonly ready: Day }
  | { readonly why: "arrives later"; readonly day: Day }
  | { readonly why: "closed"; readonly station: StationKind; readonly day: Day }
  | { readonly why: "store"; readonly store: string; readonly day: Day }
  | { readonly why: "set aside" | "at the Door" | "not needed" }
  /** The day holds less than was planned: work takes longer, or what fell behind comes first. */
  | { readonly why: "day is full" }
  | { readonly why: "there was room" }
  /** The change saves more waiting days than it costs. */
  | { readonly why: "gains more" };

/** Why a promise is not kept: the first of the item's acts that could not be as told decides. */
export function whyOf(
  problem: PlanProblem,
  promises: Promises,
  walk: Walk,
  changed: ReadonlySet<Promised>,
  promise: Promised,
  held: number,
): WhyChanged {
  const told = promises.told.get(promise.job) ?? [];
  const date = (d: number): Day => addDays(problem.campaign.planFrom, d);
  for (const each of told.slice(0, promise.task + 1)) {
    if (!each) continue;
    if (each.day < 0) {
      const ready = firstDayOf(each.job);
      const act = (each.job.tasks[each.task] as Task).act;
      return each.task === 0 && each.job.inWard && ready > 0
        ? { why: "ward", ready: date(ready) }
        : { why: "behind", act, day: date(each.day) };
    }
    if (changed.has(each)) return whyHere(problem, walk, each, held);
  }
  return whyHere(problem, walk, promise, held);
}

/** Why one act is not begun by the person and on the day it was told. */
function whyHere(problem: PlanProblem, walk: Walk, promise: Promised, held: number): WhyChanged {
  const { job, task, person, day } = promise;
  const { act, kind, uses } = job.tasks[task] as Task;
  const date = addDays(problem.campaign.planFrom, day);
  const hand = problem.hands[person];
  if (!hand) return { why: "left the team" };
  if (task === 0 && firstDayOf(job) > day) {
    const ready = addDays(problem.campaign.planFrom, firstDayOf(job));
    return job.inWard ? { why: "ward", ready } : { why: "arrives later", day: ready };
  }
  if (!hand.minutes[day]) return { why: "away", person: hand.person.code, day: date };
  const station = KINDS[kind]?.station;
  if (KINDS[kind]?.exposed && !hand.mayMould[day])
    return { why: "clean work", person: hand.person.code, day: date };
  if (station && problem.stations.get(station)?.[day] === 0) return { why: "closed", station, day: date };
  const needs = KINDS[kind]?.exposed ? [...uses, ...problem.sessionUses] : [...uses];
  for (const [store, quantity] of needs)
    if (stockOn(problem, walk, store, day) < quantity)
      return { why: "store", store: problem.stores[store]?.id ?? "", day: date };
  const now = walk.pieces.find((piece) => piece.job === job && piece.task === task);
  if (now && (now.day < day || (now.day === day && act !== "box"))) return { why: "there was room" };
  return day < held ? { why: "day is full" } : { why: "gains more" };
}

/** What is left of a store on the morning of a day; Infinity once an order sent today could be here. */
function stockOn(problem: PlanProblem, walk: Walk, store: number, day: number): number {
  const row = problem.stores[store];
  if (!row || day >= row.reorderFrom) return Number.POSITIVE_INFINITY;
  let stock = row.onHand;
  for (let d = 0; d <= day; d++)
    stock += (row.arrivals[d] ?? 0) - (d < day ? (walk.used[store]?.[d] ?? 0) : 0);
  return stock;
}

/** Why a person is not near mould on the days that were told. */
export function whyNear(problem: PlanProblem, person: number, day: number, held: number): WhyChanged {
  const hand = problem.hands[person];
  const date = addDays(problem.campaign.planFrom, day);
  if (!hand) return { why: "left the team" };
  const { code } = hand.person;
  if (!hand.minutes[day]) return { why: "away", person: code, day: date };
  if (!hand.mayMould[day]) return { why: "clean work", person: code, day: date };
  const { week, row } = hand.exposedBefore;
  if (week >= problem.exposedDaysAWeek || row >= problem.exposedDaysInARow)
    return { why: "enough mould days", person: code };
  return day < held ? { why: "day is full" } : { why: "gains more" };
}
