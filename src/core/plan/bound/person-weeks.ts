import { breakMinutes, wholeSpells } from "../mask-breaks.ts";
import type { Hand, PlanProblem } from "../problem.ts";
import { KINDS } from "../work.ts";
import type { DayModel } from "./day-model.ts";

/** A person's days at given prices: the best work on each, and the exposed days that pay most within the week's and the row's limit. */
export class PersonWeeks {
  /** [person][worked day] → running share of rounds with the person exposed. */
  readonly exposed: readonly Float64Array[];
  private readonly kinds: readonly { readonly clean: readonly number[]; readonly near: readonly number[] }[];
  private readonly gain: Float64Array;
  /** [worked day] → minutes near mould that gain most. */
  private readonly spent: Float64Array;
  private readonly cleanKind: Int32Array;
  private readonly nearKind: Int32Array;
  private readonly count: number;
  private readonly states: number;
  /** [worked day × state] → best sum so far, and whether the day was exposed and from which state. */
  private readonly from: Int32Array;

  constructor(private readonly model: DayModel) {
    const { problem, worked } = model;
    this.count = worked.days.length;
    this.exposed = problem.hands.map(() => new Float64Array(this.count));
    this.kinds = problem.hands.map(({ person }) => {
      const able = [...KINDS.keys()].filter((k) =>
        KINDS[k]?.skills.some((skill) => person.skills.includes(skill)),
      );
      return { clean: able.filter((k) => !KINDS[k]?.exposed), near: able.filter((k) => KINDS[k]?.exposed) };
    });
    this.gain = new Float64Array(this.count);
    this.spent = new Float64Array(this.count);
    this.cleanKind = new Int32Array(this.count);
    this.nearKind = new Int32Array(this.count);
    this.states = (problem.exposedDaysAWeek + 1) * (problem.exposedDaysInARow + 1);
    this.from = new Int32Array(this.count * this.states);
  }

  /** Sells everybody's minutes at the prices, takes them off `oversold` and adds what sessions use to `taken`; returns the takings. */
  sell(
    price: Float64Array,
    unit: readonly Float64Array[],
    oversold: Float64Array,
    taken: readonly Float64Array[],
    newest: number,
  ): number {
    const { problem, worked } = this.model;
    let takings = 0;
    problem.hands.forEach((hand, p) => {
      takings += this.dayByDay(p, price, unit);
      const exposed = this.bestDays(p);
      takings += exposed.gained;
      const share = this.exposed[p] as Float64Array;
      for (let i = 0; i < this.count; i++) {
        let minutes = hand.minutes[worked.days[i] as number] ?? 0;
        const near = exposed.on[i] === 1;
        share[i] = (1 - newest) * (share[i] as number) + (near ? newest : 0);
        if (near) {
          const spent = this.spent[i] as number;
          const at = (this.nearKind[i] as number) * this.count + i;
          oversold[at] = (oversold[at] as number) - spent;
          minutes -= spent + problem.overhead.clean + problem.overhead.exposed + breakMinutes(problem, spent);
          for (const [store, quantity] of problem.sessionUses) {
            const series = taken[store] as Float64Array;
            series[i] = (series[i] as number) + quantity;
          }
        }
        if ((this.cleanKind[i] as number) < 0) continue;
        const at = (this.cleanKind[i] as number) * this.count + i;
        oversold[at] = (oversold[at] as number) - minutes;
      }
    });
    return takings;
  }

  /** Best kinds of each day and what an exposed day gains over a clean one; returns what all days bring when clean. */
  private dayByDay(p: number, price: Float64Array, unit: readonly Float64Array[]): number {
    const { problem, worked } = this.model;
    const hand = problem.hands[p] as Hand;
    const kinds = this.kinds[p] as { clean: readonly number[]; near: readonly number[] };
    const best = (among: readonly number[], i: number): number => {
      let found = -1;
      let most = -1;
      for (const k of among)
        if ((price[k * this.count + i] as number) > most) {
          most = price[k * this.count + i] as number;
          found = k;
        }
      return found;
    };
    let takings = 0;
    for (let i = 0; i < this.count; i++) {
      const clean = best(kinds.clean, i);
      const near = best(kinds.near, i);
      this.cleanKind[i] = clean;
      this.nearKind[i] = near;
      const cleanPrice = clean < 0 ? 0 : (price[clean * this.count + i] as number);
      const d = worked.days[i] as number;
      takings += cleanPrice * (hand.minutes[d] as number);
      const minutes = hand.nearMinutes[d] as number;
      this.gain[i] = -1;
      if (near < 0 || minutes <= 0) continue;
      const over = (price[near * this.count + i] as number) - cleanPrice;
      let gain = Number.NEGATIVE_INFINITY;
      for (const spent of wholeSpells(problem, minutes)) {
        const worth = spent * over - cleanPrice * breakMinutes(problem, spent);
        if (worth <= gain) continue;
        gain = worth;
        this.spent[i] = spent;
      }
      gain -= cleanPrice * (problem.overhead.clean + problem.overhead.exposed);
      for (const [store, quantity] of problem.sessionUses) gain -= quantity * (unit[store]?.[i] ?? 0);
      this.gain[i] = gain;
    }
    return takings;
  }

  /** Exposed days of greatest gain: a walk through the days that remembers the week's count and the days in a row, from before the first morning on. */
  private bestDays(p: number): { readonly gained: number; readonly on: Uint8Array } {
    const { problem, worked } = this.model;
    const on = new Uint8Array(this.count);
    if (!this.gain.some((gain) => gain > 0)) return { gained: 0, on };
    const { exposedBefore } = problem.hands[p] as Hand;
    const most = problem.exposedDaysInARow;
    const width = most + 1;
    let sums = new Float64Array(this.states).fill(Number.NEGATIVE_INFINITY);
    sums[Math.min(exposedBefore.week, problem.exposedDaysAWeek) * width + Math.min(exposedBefore.row, most)] =
      0;
    let yesterday = -1;
    for (let i = 0; i < this.count; i++) {
      const next = new Float64Array(this.states).fill(Number.NEGATIVE_INFINITY);
      const d = worked.days[i] as number;
      const joins = yesterday === d - 1;
      // The state on the first morning tells of its own week, whatever day it is.
      const sameWeek = weekOf(problem, Math.max(0, yesterday)) === weekOf(problem, d);
      yesterday = d;
      for (let state = 0; state < this.states; state++) {
        const sum = sums[state] as number;
        if (sum === Number.NEGATIVE_INFINITY) continue;
        const week = sameWeek ? Math.floor(state / width) : 0;
        const row = joins ? state % width : 0;
        const rest = week * width;
        if (sum > (next[rest] as number)) {
          next[rest] = sum;
          this.from[i * this.states + rest] = state;
        }
        if ((this.gain[i] as number) <= 0 || week >= problem.exposedDaysAWeek || row >= most) continue;
        const more = (week + 1) * width + row + 1;
        if (sum + (this.gain[i] as number) > (next[more] as number)) {
          next[more] = sum + (this.gain[i] as number);
          this.from[i * this.states + more] = state;
        }
      }
      sums = next;
    }
    let state = 0;
    for (let each = 1; each < this.states; each++)
      if ((sums[each] as number) > (sums[state] as number)) state = each;
    const gained = sums[state] as number;
    for (let i = this.count - 1; i >= 0; i--) {
      if (state % width > 0) on[i] = 1;
      state = this.from[i * this.states + state] as number;
    }
    return { gained, on };
  }
}

const weekOf = (problem: PlanProblem, d: number): number => Math.floor((d + (problem.weekday[0] ?? 0)) / 7);
