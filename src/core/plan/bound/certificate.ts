import { finishCost, undoneCost } from "../campaign-programme.ts";
import { firstDayOf, lagAfter } from "../classes.ts";
import { breakMinutes, wholeSpells } from "../mask-breaks.ts";
import type { Job, PlanProblem } from "../problem.ts";
import { expected, KINDS } from "../work.ts";
import { type Prices, workedDays } from "./day-model.ts";

/**
 * The bound that prices prove: no day-by-day plan of the expected minutes costs less, whatever the prices, as long as none is negative.
 * Plain on purpose and apart from the search that finds the prices. Let every item buy the work it needs at the prices, on the days
 * that suit it best; let every person, place, the Ward and the stores sell what they have. What the items pay at least, less what the
 * sellers take at most, is the bound: a real plan sells no more than there is.
 */
export function boundFrom(problem: PlanProblem, prices: Prices): number {
  for (const row of [...prices.work, ...prices.places.values(), prices.ward, ...prices.stores])
    if (row.some((price) => !(price >= 0))) throw new Error("A price of the bound is negative or missing.");
  const { days, numberFrom } = workedDays(problem);
  let bound = 0;
  for (const job of problem.jobs) bound += leastCost(problem, prices, days, numberFrom, job);
  problem.hands.forEach((_, p) => {
    bound -= mostFromPerson(problem, prices, days, p);
  });
  days.forEach((d, i) => {
    for (const [station, minutes] of problem.stations)
      bound -= (prices.places.get(station)?.[i] ?? 0) * (minutes[d] ?? 0);
    bound -= (prices.ward[i] ?? 0) * problem.wardLitres;
    problem.stores.forEach((store, s) => {
      if (d >= store.reorderFrom) return;
      let there = store.onHand;
      for (let e = 0; e <= d; e++) there += store.arrivals[e] ?? 0;
      bound -= (prices.stores[s]?.[i] ?? 0) * there;
    });
  });
  return bound;
}

/** Price of a unit taken from a store on a worked day: it is missing on every later evening until more could be ordered. */
function unitPrice(problem: PlanProblem, prices: Prices, days: Int32Array, s: number, i: number): number {
  let price = 0;
  for (let e = i; e < days.length && (days[e] as number) < (problem.stores[s]?.reorderFrom ?? 0); e++)
    price += prices.stores[s]?.[e] ?? 0;
  return price;
}

/** Cheapest way of an item to its box at the prices, or being left. A task spread over days costs no less than on the cheapest of them. */
function leastCost(
  problem: PlanProblem,
  prices: Prices,
  days: Int32Array,
  numberFrom: Int32Array,
  job: Job,
): number {
  const count = days.length;
  const admits = job.tasks[0]?.act === "admit";
  let after: number[] = Array.from(days, (d) => finishCost(job.weight, job.due, d));
  for (let s = job.tasks.length - 1; s >= 0; s--) {
    const task = job.tasks[s] as Job["tasks"][number];
    const station = KINDS[task.kind]?.station;
    const from: number[] = new Array(count + 1).fill(Number.POSITIVE_INFINITY);
    for (let i = count - 1; i >= 0; i--) {
      const d = days[i] as number;
      const minutes = expected(task.minutes) * (problem.slowness[d] ?? 1);
      let cost = minutes * (prices.work[task.kind]?.[i] ?? 0);
      if (station) cost += minutes * (prices.places.get(station)?.[i] ?? 0);
      for (const [store, quantity] of task.uses)
        cost += quantity * unitPrice(problem, prices, days, store, i);
      if (admits && (task.act === "admit" || task.act === "release"))
        for (let e = 0; e < i; e++)
          cost += (task.act === "release" ? 1 : -1) * job.route.wardLitres * (prices.ward[e] ?? 0);
      from[i] = Math.min(from[i + 1] as number, cost + (after[i] as number));
    }
    if (s === 0) {
      const first = numberFrom[Math.min(problem.days.length, firstDayOf(job))] as number;
      return Math.min(undoneCost(problem.days.length, job), from[first] as number);
    }
    const lag = lagAfter(job, s - 1);
    after = Array.from(
      days,
      (d) => from[numberFrom[Math.min(problem.days.length, d + lag)] as number] as number,
    );
  }
  return 0;
}

/** The most a person can take at the prices: best work each day, exposed days within the week's and the row's limit, those before the first morning among them. */
function mostFromPerson(problem: PlanProblem, prices: Prices, days: Int32Array, p: number): number {
  const hand = problem.hands[p] as PlanProblem["hands"][number];
  const { overhead, exposedDaysAWeek, exposedDaysInARow } = problem;
  const best = (exposed: boolean, i: number): number =>
    Math.max(
      0,
      ...KINDS.map((kind, k) =>
        kind.exposed === exposed && kind.skills.some((skill) => hand.person.skills.includes(skill))
          ? (prices.work[k]?.[i] ?? 0)
          : 0,
      ),
    );
  let states = new Map([["before", { ...hand.exposedBefore, sold: 0 }]]);
  let before = -1;
  days.forEach((d, i) => {
    const monday = (e: number): number => Math.floor((e + (problem.weekday[0] ?? 0)) / 7);
    const minutes = hand.minutes[d] ?? 0;
    const clean = best(false, i);
    const next = new Map<string, { row: number; week: number; sold: number }>();
    const keep = (row: number, week: number, sold: number): void => {
      const known = next.get(`${row}|${week}`);
      if (!known || known.sold < sold) next.set(`${row}|${week}`, { row, week, sold });
    };
    const near = hand.nearMinutes[d] ?? 0;
    let session = 0;
    for (const [store, quantity] of problem.sessionUses)
      session += quantity * unitPrice(problem, prices, days, store, i);
    for (const state of states.values()) {
      const row = d === before + 1 ? state.row : 0;
      const week = monday(d) === monday(Math.max(0, before)) ? state.week : 0;
      keep(0, week, state.sold + minutes * clean);
      if (near <= 0 || week >= exposedDaysAWeek || row >= exposedDaysInARow) continue;
      for (const spent of wholeSpells(problem, near)) {
        const rest = minutes - overhead.clean - overhead.exposed - spent - breakMinutes(problem, spent);
        keep(row + 1, week + 1, state.sold + spent * Math.max(clean, best(true, i)) + rest * clean - session);
      }
    }
    states = next;
    before = d;
  });
  return Math.max(...[...states.values()].map((state) => state.sold));
}
