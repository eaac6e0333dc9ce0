import type { StationKind } from "../../items/campaign.ts";
import type { DayModel } from "../bound/day-model.ts";
import type { DayWindows } from "../bound/day-windows.ts";
import { breakMinutes } from "../mask-breaks.ts";
import { type Hand, onePersonAt } from "../problem.ts";
import { type Programme, ProgrammeBuilder } from "../programme.ts";
import { KINDS } from "../work.ts";

const NONE = Number.POSITIVE_INFINITY;
type Term = readonly [column: number, value: number];

/**
 * A campaign as one programme of items and days. Whether a task has ended by an evening is a yes or no; its work may be spread over days, but
 * none of it comes before the task before it has ended and the wait is over; exposed days are whole. Any day-by-day plan of the expected
 * minutes that costs less than the plan the windows were made for is a solution.
 */
export class ExactProgramme {
  /** [task] → [worked day] → column of "ended by that evening". */
  readonly ended: Int32Array[] = [];
  /** [task] → [worked day] → column of the share of its work done that day, or −1. */
  readonly share: Int32Array[] = [];
  /** [person][worked day] → column of an exposed day, or −1. */
  readonly exposed: Int32Array[] = [];
  /** [person][kind][worked day] → column of the minutes a person gives a kind of work, or −1. */
  readonly given: Int32Array[][] = [];
  readonly programme: Programme;
  /** Cost that no column carries: every item being left. */
  readonly fixedCost: number;
  private readonly build = new ProgrammeBuilder();
  private readonly count: number;

  constructor(
    private readonly model: DayModel,
    private readonly windows: DayWindows,
  ) {
    this.count = model.worked.days.length;
    this.fixedCost = model.undone.reduce((sum, each) => sum + each, 0);
    for (let j = 0; j + 1 < model.firstTask.length; j++) this.itemRows(j);
    this.exposedDays();
    this.given = model.problem.hands.map(() => KINDS.map(() => new Int32Array(this.count).fill(-1)));
    for (let i = 0; i < this.count; i++) this.workRows(i);
    this.wardRows();
    this.storeRows();
    this.programme = this.build.build();
  }

  private itemRows(j: number): void {
    const { model, build, count } = this;
    const first = model.firstTask[j] as number;
    const last = (model.firstTask[j + 1] as number) - 1;
    const finish = model.finish[j] as Float64Array;
    for (let task = first; task <= last; task++) {
      const soonest = this.windows.soonest[task] as number;
      const latest = this.windows.latest[task] as number;
      const ended = new Int32Array(count);
      const share = new Int32Array(count).fill(-1);
      for (let i = 0; i < count; i++) {
        const later = i + 1 < count ? (finish[i + 1] as number) : (model.undone[j] as number);
        const saved = task === last ? (finish[i] as number) - later : 0;
        ended[i] = build.column(saved, this.lowest(task, i), i >= soonest ? 1 : 0, true);
        if (i <= latest && i >= (model.ready[j] as number)) share[i] = build.column(0, 0, 1);
        if (i > soonest && i <= latest)
          build.row(0, NONE, [
            [ended[i] as number, 1],
            [ended[i - 1] as number, -1],
          ]);
      }
      this.ended[task] = ended;
      this.share[task] = share;
      this.workOfTask(task, task > first ? this.mayStart(task - 1) : null);
    }
  }

  /** The work done by an evening is all of it when the task has ended, and none before the task may start. */
  private workOfTask(task: number, mayStart: Int32Array | null): void {
    const done: Term[] = [];
    const share = this.share[task] as Int32Array;
    for (let i = 0; i < this.count; i++) {
      if ((share[i] as number) >= 0) done.push([share[i] as number, 1]);
      if (i > (this.windows.latest[task] as number)) break;
      this.build.row(0, NONE, [...done, [this.ended[task]?.[i] as number, -1]]);
      if (!mayStart) continue;
      const column = mayStart[i] as number;
      this.build.row(-NONE, 0, column < 0 ? done : [...done, [column, -1]]);
    }
    this.build.row(-NONE, 1, done);
  }

  /** [worked day] → column that says the task before had ended early enough; −1 where it cannot have. */
  private mayStart(before: number): Int32Array {
    const columns = new Int32Array(this.count).fill(-1);
    for (let i = 0; i < this.count; i++)
      columns.fill(this.ended[before]?.[i] as number, this.model.nextFrom[before]?.[i] as number);
    return columns;
  }

  private exposedDays(): void {
    const { problem, worked } = this.model;
    problem.hands.forEach((hand, p) => {
      const columns = Int32Array.from(worked.days, (d) =>
        (hand.nearMinutes[d] ?? 0) > 0 ? this.build.column(0, 0, 1, true) : -1,
      );
      this.exposed[p] = columns;
      worked.days.forEach((_, i) => {
        this.exposedLimits(hand, columns, i);
      });
    });
  }

  /** So many exposed days in the week that begins on a worked day, and in the days in a row from it; days before the first morning count. */
  private exposedLimits({ exposedBefore }: Hand, columns: Int32Array, i: number): void {
    const { problem, worked } = this.model;
    const { exposedDaysAWeek, exposedDaysInARow } = problem;
    const monday = (d: number): number => d - (problem.weekday[d] ?? 0);
    const from = worked.days[i] as number;
    const week = monday(from);
    if (i === 0 || monday(worked.days[i - 1] as number) !== week)
      this.mostExposed(columns, from, week + 6, exposedDaysAWeek - (week <= 0 ? exposedBefore.week : 0));
    this.mostExposed(columns, from, from + exposedDaysInARow, exposedDaysInARow);
    if (i > 0 || exposedBefore.row === 0) return;
    const rest = Math.max(0, exposedDaysInARow - exposedBefore.row);
    this.mostExposed(columns, 0, rest, rest);
  }

  private mostExposed(columns: Int32Array, from: number, to: number, most: number): void {
    const terms: Term[] = [];
    this.model.worked.days.forEach((d, i) => {
      if (d >= from && d <= to && (columns[i] as number) >= 0) terms.push([columns[i] as number, 1]);
    });
    if (terms.length > most) this.build.row(-NONE, Math.max(0, most), terms);
  }

  private workRows(i: number): void {
    const { model, build } = this;
    const { problem } = model;
    const d = model.worked.days[i] as number;
    const demand: Term[][] = KINDS.map(() => []);
    model.kind.forEach((kind, task) => {
      const column = this.share[task]?.[i] ?? -1;
      const minutes = (problem.slowness[d] ?? 1) * (model.minutes[task] as number);
      if (column >= 0) demand[kind]?.push([column, minutes]);
    });
    problem.hands.forEach((_, p) => {
      this.personRows(p, i, demand);
    });
    demand.forEach((terms, k) => {
      const given = this.given.flatMap((kinds): Term[] => {
        const column = kinds[k]?.[i] ?? -1;
        return column < 0 ? [] : [[column, -1]];
      });
      if (terms.length > 0) build.row(-NONE, 0, [...terms, ...given]);
    });
    for (const [station, minutes] of problem.stations) {
      const terms = KINDS.flatMap((kind, k) => (kind.station === station ? (demand[k] as Term[]) : []));
      if (terms.length > 0) build.row(-NONE, minutes[d] ?? 0, terms);
    }
  }

  private personRows(p: number, i: number, demand: readonly (readonly Term[])[]): void {
    const { model, build } = this;
    const { overhead, stationRows, campaign } = model.problem;
    const hand = model.problem.hands[p];
    const d = model.worked.days[i] as number;
    const minutes = hand?.minutes[d] ?? 0;
    if (!hand || minutes === 0) return;
    const exposed = this.exposed[p]?.[i] ?? -1;
    const all: Term[] = [];
    const near: Term[] = [];
    const at = new Map<StationKind, Term[]>();
    KINDS.forEach((kind, k) => {
      if (demand[k]?.length === 0 || (kind.exposed && exposed < 0)) return;
      if (!kind.skills.some((skill) => hand.person.skills.includes(skill))) return;
      const column = build.column(0, 0, minutes);
      (this.given[p]?.[k] as Int32Array)[i] = column;
      all.push([column, 1]);
      if (kind.exposed) near.push([column, 1]);
      if (kind.station) at.set(kind.station, [...(at.get(kind.station) ?? []), [column, 1]]);
    });
    if (exposed >= 0) {
      const most = hand.nearMinutes[d] as number;
      const pause = breakMinutes(model.problem, most) > 0 ? campaign.limits.maskBreakMinutes.value : 0;
      all.push([exposed, overhead.clean + overhead.exposed - pause]);
      build.row(-NONE, 0, [...near, [exposed, -most]]);
      if (pause > 0) all.push([this.spells(near, exposed), pause]);
    }
    build.row(-NONE, minutes, all);
    for (const [station, terms] of at) {
      const most = onePersonAt(stationRows, station, d);
      if (most < minutes) build.row(-NONE, most, terms);
    }
  }

  /** Column of the whole spells with a mask of a person's day, clearing up being worn too. */
  private spells(near: readonly Term[], exposed: number): number {
    const { overhead, campaign } = this.model.problem;
    const { maskMinutes } = campaign.limits;
    const spells = this.build.column(0, 0, Math.ceil(1440 / maskMinutes.value), true);
    this.build.row(-NONE, 0, [...near, [exposed, overhead.exposed], [spells, -maskMinutes.value]]);
    return spells;
  }

  /** An item is in the Ward from the day its admission is begun, or from the first morning, until it is released. */
  private wardRows(): void {
    const { model } = this;
    const inside = Array.from(model.worked.days, (): Term[] => []);
    let there = 0;
    model.problem.jobs.forEach(({ inWard, route }, j) => {
      if (!inWard) return;
      there += route.wardLitres;
      this.ended[model.firstTask[j] as number]?.forEach((column, i) => {
        inside[i]?.push([column, -route.wardLitres]);
      });
    });
    // A Ward fuller than it may be on the first morning takes in nothing before it has room, which these rows do not say.
    const most = Math.max(model.problem.wardLitres, there) - there;
    for (let j = 0; j + 1 < model.firstTask.length; j++)
      for (let task = model.firstTask[j] as number; task < (model.firstTask[j + 1] as number); task++) {
        const litres = (model.ward[task] as number) * (model.litres[j] as number);
        if (litres === 0) continue;
        const columns = litres > 0 ? this.begun(task) : (this.ended[task] as Int32Array);
        columns.forEach((column, i) => {
          inside[i]?.push([column, litres]);
        });
      }
    for (const terms of inside) if (terms.length > 0) this.build.row(-NONE, most, terms);
  }

  /** [worked day] → column of "some of its work was done by that evening". */
  private begun(task: number): Int32Array {
    const done: Term[] = [];
    const share = this.share[task] as Int32Array;
    return Int32Array.from(share, (column, i) => {
      if (column >= 0) done.push([column, 1]);
      const soonest = i >= (this.windows.soonest[task] as number);
      const begun = this.build.column(0, this.lowest(task, i), done.length > 0 || soonest ? 1 : 0, true);
      this.build.row(-NONE, 0, [...done, [begun, -1]]);
      return begun;
    });
  }

  private lowest(task: number, i: number): number {
    return i >= (this.windows.latest[task] as number) ? 1 : 0;
  }

  private storeRows(): void {
    const { problem, worked, uses } = this.model;
    problem.stores.forEach((store, s) => {
      const terms: Term[] = [];
      const session = problem.sessionUses.get(s) ?? 0;
      worked.days.forEach((d, i) => {
        if (d >= store.reorderFrom) return;
        uses.forEach((used, task) => {
          const column = this.share[task]?.[i] ?? -1;
          if (column >= 0 && used?.has(s)) terms.push([column, used.get(s) as number]);
        });
        for (const person of this.exposed)
          if ((person[i] ?? -1) >= 0 && session > 0) terms.push([person[i] as number, session]);
        const arrived = store.arrivals.subarray(0, d + 1).reduce((sum, each) => sum + each, 0);
        if (terms.length > 0) this.build.row(-NONE, store.onHand + arrived, terms);
      });
    });
  }
}
