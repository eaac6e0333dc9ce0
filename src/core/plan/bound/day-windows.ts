import type { PlanProblem } from "../problem.ts";
import { KINDS } from "../work.ts";
import { boundFrom } from "./certificate.ts";
import type { DayModel, Prices } from "./day-model.ts";

/** [task] → first and last worked day on which it can end in a plan cheaper than the one known; past the last day: it may be left. */
export interface DayWindows {
  readonly soonest: Int32Array;
  readonly latest: Int32Array;
}

/**
 * Windows that prices prove: where an item's cheapest way with a task ending on a day costs more over its very cheapest way than the known
 * plan costs over the bound, no cheaper plan ends the task that day.
 */
export function dayWindows(model: DayModel, prices: Prices, upper: number): DayWindows {
  const slack = upper - boundFrom(model.problem, prices) + 1e-6;
  const costs = new TaskCosts(model, prices);
  const tasks = model.kind.length;
  const windows = { soonest: new Int32Array(tasks), latest: new Int32Array(tasks) };
  for (let j = 0; j + 1 < model.firstTask.length; j++) windowsOfItem(model, costs, j, slack, windows);
  return windows;
}

/** What a task costs at the prices when all its work is done on one day. */
class TaskCosts {
  private readonly unit: readonly Float64Array[];
  private readonly ward: Float64Array;

  constructor(
    private readonly model: DayModel,
    private readonly prices: Prices,
  ) {
    const { problem, worked } = model;
    this.unit = problem.stores.map((store, s) => unitPrices(store, prices.stores[s], worked.days));
    this.ward = new Float64Array(worked.days.length + 1);
    worked.days.forEach((_, i) => {
      this.ward[i + 1] = (this.ward[i] as number) + (prices.ward[i] as number);
    });
  }

  of(j: number, task: number, i: number): number {
    const { model, prices } = this;
    const kind = model.kind[task] as number;
    const station = KINDS[kind]?.station;
    const slow = model.problem.slowness[model.worked.days[i] as number] ?? 1;
    const place = station ? (prices.places.get(station)?.[i] ?? 0) : 0;
    let cost = (model.minutes[task] as number) * slow * ((prices.work[kind]?.[i] ?? 0) + place);
    for (const [store, quantity] of model.uses[task] ?? []) cost += quantity * (this.unit[store]?.[i] ?? 0);
    return cost - (model.ward[task] as number) * (model.litres[j] as number) * (this.ward[i] as number);
  }
}

/** Price of a unit taken on each worked day: it is missing on every later evening until more could be ordered. */
function unitPrices(
  store: PlanProblem["stores"][number],
  evening: Float64Array | undefined,
  days: Int32Array,
): Float64Array {
  const unit = new Float64Array(days.length);
  let sum = 0;
  for (let i = unit.length - 1; i >= 0; i--) {
    if ((days[i] as number) < store.reorderFrom) sum += evening?.[i] ?? 0;
    unit[i] = sum;
  }
  return unit;
}

function windowsOfItem(
  model: DayModel,
  costs: TaskCosts,
  j: number,
  slack: number,
  { soonest, latest }: DayWindows,
): void {
  const count = model.worked.days.length;
  const first = model.firstTask[j] as number;
  const tasks = (model.firstTask[j + 1] as number) - first;
  const before = costsBefore(model, costs, j);
  const after = costsAfter(model, costs, j);
  const way = (s: number, i: number): number => (before[s]?.[i] as number) + (after[s]?.[i] as number);
  const undone = model.undone[j] as number;
  let cheapest = undone;
  for (let i = 0; i < count; i++) cheapest = Math.min(cheapest, way(tasks - 1, i));
  for (let s = 0; s < tasks; s++) {
    let from = count;
    let to = -1;
    for (let i = 0; i < count; i++) {
      if (way(s, i) - cheapest > slack) continue;
      from = Math.min(from, i);
      to = i;
    }
    soonest[first + s] = from;
    latest[first + s] = undone - cheapest <= slack ? count : to;
  }
}

/** [task of the item] → [worked day] → least cost of all work up to the task's end that evening, its work on the best day before. */
function costsBefore(model: DayModel, costs: TaskCosts, j: number): Float64Array[] {
  const count = model.worked.days.length;
  const first = model.firstTask[j] as number;
  const sums: Float64Array[] = [];
  for (let task = first; task < (model.firstTask[j + 1] as number); task++) {
    const sum = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
    const earlier = sums[task - first - 1];
    let start = earlier ? Number.POSITIVE_INFINITY : 0;
    let next = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      if (earlier)
        for (; next < count && (model.nextFrom[task - 1]?.[next] as number) <= i; next++)
          start = Math.min(start, earlier[next] as number);
      if (i < (model.ready[j] as number)) continue;
      least = Math.min(least, start + costs.of(j, task, i));
      sum[i] = least;
    }
    sums.push(sum);
  }
  return sums;
}

/** [task of the item] → [worked day] → least cost from there on when the task ends that evening. */
function costsAfter(model: DayModel, costs: TaskCosts, j: number): Float64Array[] {
  const count = model.worked.days.length;
  const first = model.firstTask[j] as number;
  const last = (model.firstTask[j + 1] as number) - 1;
  const sums: Float64Array[] = [];
  let onwards = new Float64Array(0);
  for (let task = last; task >= first; task--) {
    const later = onwards;
    const sum = Float64Array.from({ length: count }, (_, i) =>
      task === last
        ? (model.finish[j]?.[i] as number)
        : (later[model.nextFrom[task]?.[i] as number] ?? Number.POSITIVE_INFINITY),
    );
    onwards = new Float64Array(count);
    for (let i = count - 1, least = Number.POSITIVE_INFINITY; i >= 0; i--) {
      least = Math.min(least, costs.of(j, task, i) + (sum[i] as number));
      onwards[i] = least;
    }
    sums[task - first] = sum;
  }
  return sums;
}
