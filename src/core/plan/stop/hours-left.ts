import type { Act, StationKind } from "../../items/campaign.ts";
import { addDays, daysBetween, mondayOf } from "../../units/day.ts";
import type { Hand, PlanProblem, StoreRow } from "../problem.ts";
import { KINDS, kindOf } from "../work.ts";

/** Work to be fitted in, whole or not at all. */
export interface Work {
  readonly act: Act;
  readonly minutes: number;
  readonly exposed: boolean;
  /** Consumable → quantity, taken when the work begins. */
  readonly uses: Readonly<Record<string, number>>;
}

/** Part of a work done by one person on one day. */
export interface Bit {
  readonly day: number;
  readonly person: number;
  readonly minutes: number;
}

/** Where a work came to lie. */
export interface Placed {
  readonly work: Work;
  readonly bits: readonly Bit[];
  readonly from: number;
  readonly until: number;
}

/** Why a work found no place. */
export type NoPlace = "no person" | "no store" | "no hours";

/** Less than this is not begun on a day unless it ends there; minutes. */
const SHORTEST = 5;
const TINY = 1e-6;

/**
 * The hours, places and stores left until the stop. Works are laid in one after the other, each on its soonest day, each whole or not at
 * all, and can be taken out again. Kept: hours present, mould minutes a day, exposed days a week and in a row, changing before and after
 * them, never alone near mould, staffed stations, stores on hand and on their way.
 */
export class HoursLeft {
  readonly #problem: PlanProblem;
  readonly #left: Float64Array[];
  readonly #near: Float64Array[];
  /** [person][day] → works near mould on that day; 0: not exposed. */
  readonly #worn: Uint16Array[];
  readonly #wornBefore: readonly ReadonlySet<number>[];
  readonly #stations: ReadonlyMap<StationKind, Float64Array>;
  readonly #stock: Float64Array[];
  readonly #storeOf: ReadonlyMap<string, number>;
  readonly #present: Uint8Array;

  /** @param wornBefore by person, exposed days before the first morning, as negative day indices */
  constructor(problem: PlanProblem, wornBefore: readonly ReadonlySet<number>[]) {
    const { hands, days, stations, stores } = problem;
    this.#problem = problem;
    this.#left = hands.map((hand) => hand.minutes.slice());
    this.#near = hands.map(() => new Float64Array(days.length));
    this.#worn = hands.map(() => new Uint16Array(days.length));
    this.#wornBefore = wornBefore;
    this.#stations = new Map([...stations].map(([kind, minutes]) => [kind, minutes.slice()]));
    this.#storeOf = new Map(stores.map((store, at) => [store.use, at]));
    this.#stock = stores.map((store) => stockOf(store, days.length));
    this.#present = Uint8Array.from(
      days,
      (_, d) => hands.filter((hand) => (hand.minutes[d] ?? 0) > 0).length,
    );
  }

  /** Lays the work on its soonest end, from a day to a day; else says what is missing. */
  place(work: Work, from: number, until = this.#problem.days.length - 1): Placed | NoPlace {
    const kind = KINDS[kindOf({ act: work.act, exposed: work.exposed })];
    const able = this.#problem.hands
      .map((hand, p) => ({ hand, p }))
      .filter(
        ({ hand }) =>
          kind?.skills.some((skill) => hand.person.skills.includes(skill)) &&
          (!work.exposed || hand.mayMould.some((may, d) => may === 1 && (hand.minutes[d] ?? 0) > 0)),
      );
    if (able.length === 0) return "no person";
    let best: { bits: Bit[]; opened: number; p: number } | null = null;
    for (const { p } of able) {
      const tried = this.#try(work, kind?.station ?? null, p, from, until);
      if (tried && (!best || this.#before(tried, best))) best = tried;
    }
    if (!best) return this.#suppliedFrom(work.uses) <= until ? "no hours" : "no store";
    const placed = {
      work,
      bits: best.bits,
      from: best.bits[0]?.day ?? from,
      until: best.bits.at(-1)?.day ?? from,
    };
    this.#book(placed, 1);
    return placed;
  }

  /** Takes a work out again. */
  remove(placed: Placed): void {
    this.#book(placed, -1);
  }

  /** Lays a work in again where it lay. */
  restore(placed: Placed): void {
    this.#book(placed, 1);
  }

  /** Minutes of a person still free on a day. */
  free = (p: number, d: number): number => this.#left[p]?.[d] ?? 0;
  wornOn = (p: number, d: number): boolean => (this.#worn[p]?.[d] ?? 0) > 0;

  /** Sooner first, then with less changing, then by whoever can do least else. */
  #before(
    a: { bits: Bit[]; opened: number; p: number },
    b: { bits: Bit[]; opened: number; p: number },
  ): boolean {
    const skills = (p: number): number => this.#problem.hands[p]?.person.skills.length ?? 0;
    const order =
      (a.bits.at(-1)?.day ?? 0) - (b.bits.at(-1)?.day ?? 0) ||
      a.opened - b.opened ||
      skills(a.p) - skills(b.p) ||
      a.p - b.p;
    return order < 0;
  }

  #try(work: Work, station: StationKind | null, p: number, from: number, until: number) {
    const { slowness } = this.#problem;
    const bits: Bit[] = [];
    const opened: number[] = [];
    let need = work.minutes;
    for (let d = Math.max(from, this.#suppliedFrom(work.uses)); d <= until && need > TINY; d++) {
      const slow = slowness[d] ?? 1;
      const own = work.exposed ? this.#nearLeft(p, d, opened) : this.free(p, d);
      const places = station ? (this.#stations.get(station)?.[d] ?? Number.POSITIVE_INFINITY) : own;
      const spent = Math.min(own, places, need * slow);
      if (spent < Math.min(SHORTEST, need * slow) - TINY) continue;
      if (work.exposed && !this.wornOn(p, d)) opened.push(d);
      bits.push({ day: d, person: p, minutes: spent });
      need -= spent / slow;
    }
    return need > TINY || bits.length === 0 ? null : { bits, opened: opened.length, p };
  }

  /** Minutes a person may still give near mould on a day; changing is taken off where the day is not exposed yet. */
  #nearLeft(p: number, d: number, opened: readonly number[]): number {
    const { overhead, exposedMinutesADay } = this.#problem;
    const most = exposedMinutesADay - overhead.exposed - (this.#near[p]?.[d] ?? 0);
    if (this.wornOn(p, d)) return Math.min(most, this.free(p, d));
    return this.#mayChange(p, d, opened)
      ? Math.min(most, this.free(p, d) - overhead.clean - overhead.exposed)
      : 0;
  }

  #mayChange(p: number, d: number, opened: readonly number[]): boolean {
    const { hands, days, sessionUses, exposedDaysAWeek, exposedDaysInARow } = this.#problem;
    if (hands[p]?.mayMould[d] !== 1 || (this.#present[d] ?? 0) < 2) return false;
    const worn = (e: number): boolean =>
      e < 0 ? (this.#wornBefore[p]?.has(e) ?? false) : this.wornOn(p, e) || opened.includes(e);
    const monday = d - (this.#problem.weekday[d] ?? 0);
    let week = 0;
    for (let e = monday; e < monday + 7; e++) if (worn(e)) week++;
    let row = 1;
    for (let e = d - 1; worn(e); e--) row++;
    for (let e = d + 1; e < days.length && worn(e); e++) row++;
    if (week >= exposedDaysAWeek || row > exposedDaysInARow) return false;
    const first = Math.min(d, ...opened);
    return [...sessionUses].every(
      ([store, quantity]) => this.#enoughFrom(store, quantity * (1 + opened.length)) <= first,
    );
  }

  /** First day from which all of it is there to the end, what others take later counted. */
  #suppliedFrom = (uses: Work["uses"]): number =>
    Math.max(
      0,
      ...Object.entries(uses).map(([use, quantity]) => {
        const store = this.#storeOf.get(use);
        return store === undefined ? 0 : this.#enoughFrom(store, quantity);
      }),
    );

  #enoughFrom(store: number, quantity: number): number {
    const stock = this.#stock[store] as Float64Array;
    let d = stock.length;
    while (d > 0 && (stock[d - 1] ?? 0) >= quantity - TINY) d--;
    return d;
  }

  #book({ work, bits }: Placed, sign: 1 | -1): void {
    const { overhead, sessionUses } = this.#problem;
    const station = KINDS[kindOf({ act: work.act, exposed: work.exposed })]?.station;
    const add = (series: Float64Array | undefined, d: number, minutes: number): void => {
      if (series) series[d] = (series[d] ?? 0) + minutes;
    };
    for (const { day, person, minutes } of bits) {
      add(this.#left[person], day, -sign * minutes);
      if (station) add(this.#stations.get(station), day, -sign * minutes);
      if (!work.exposed) continue;
      add(this.#near[person], day, sign * minutes);
      const worn = this.#worn[person] as Uint16Array;
      const before = worn[day] ?? 0;
      worn[day] = before + sign;
      if (before !== 0 && worn[day] !== 0) continue; // the day was exposed before and still is
      add(this.#left[person], day, -sign * (overhead.clean + overhead.exposed));
      for (const [store, quantity] of sessionUses) this.#take(store, day, sign * quantity);
    }
    for (const [use, quantity] of Object.entries(work.uses)) {
      const store = this.#storeOf.get(use);
      if (store !== undefined) this.#take(store, bits[0]?.day ?? 0, sign * quantity);
    }
  }

  #take(store: number, day: number, quantity: number): void {
    const stock = this.#stock[store];
    for (let e = day; stock && e < stock.length; e++) stock[e] = (stock[e] ?? 0) - quantity;
  }
}

/** Quantity there on each day; without end from the day on which an order sent on the first morning would be here. */
function stockOf({ onHand, arrivals, reorderFrom }: StoreRow, days: number): Float64Array {
  const stock = new Float64Array(days);
  let sum = onHand;
  for (let d = 0; d < days; d++) {
    sum += arrivals[d] ?? 0;
    stock[d] = d < reorderFrom ? sum : Number.POSITIVE_INFINITY;
  }
  return stock;
}

/** Exposed days before the first morning, as far back as a week and a row can reach. */
export function wornBefore(problem: PlanProblem): ReadonlySet<number>[] {
  const { campaign, hands } = problem;
  const since = addDays(mondayOf(campaign.planFrom), -7);
  return hands.map(
    (hand: Hand) =>
      new Set(
        campaign.sessions
          .filter((each) => each.exposed && each.person === hand.person.code && each.day >= since)
          .map((each) => daysBetween(campaign.planFrom, each.day))
          .filter((d) => d < 0),
      ),
  );
}
