import type { StationKind } from "../items/campaign.ts";
import type { JobClass } from "./classes.ts";
import { type Period, periodAt } from "./periods.ts";
import { type Hand, onePersonAt, type PlanProblem } from "./problem.ts";
import { type Programme, ProgrammeBuilder } from "./programme.ts";
import { KINDS } from "./work.ts";

const NONE = Number.POSITIVE_INFINITY;
/** A day late costs so many times a day of ordinary waiting. */
export const LATE = 5;

/** Cost of finishing on day `d`: weighted waiting, steep past the due day. */
export const finishCost = (weight: number, due: number | null, d: number): number =>
  weight * (d + (due !== null && d > due ? LATE * (d - due) : 0));

/** Weighted item-days an item costs when it never reaches its box: half the campaign more than being boxed after its end, however late it then is. */
export const undoneCost = (days: number, { weight, due }: { weight: number; due: number | null }): number =>
  finishCost(weight, due, days) + weight * days * 0.5;

/** The aggregated campaign as a programme, and where to find its parts again. */
export interface CampaignProgramme {
  readonly programme: Programme;
  /** [class][task][period] → column: how many of the class do the task then. */
  readonly flow: readonly (readonly Int32Array[])[];
  /** [person][period] → column of exposed days, or −1. */
  readonly exposedDays: readonly Int32Array[];
  /** Row → resource it belongs to, for ranking what binds. */
  readonly resourceOfRow: ReadonlyMap<number, string>;
  /** Rows that hand out what is shared, by what they hand out. */
  readonly sharedRows: readonly SharedRow[];
}

/** The row that shares out a kind of work, a kind of place, the Ward or a store in a period. */
export interface SharedRow {
  readonly row: number;
  readonly period: number;
  readonly what:
    | { readonly kind: number }
    | { readonly station: StationKind }
    | { readonly store: number }
    | "ward";
}

/**
 * Classes flow through their tasks period by period; people's minutes, exposed days, stations, Ward litres and stores are shared.
 * A relaxation of the day-by-day problem: counts may be fractions, and inside a period of several days an item may pass several tasks.
 * A finish in a period is counted on its first day, so the optimum is a bound for any day-by-day plan of the same mean minutes.
 */
export function campaignProgramme(
  problem: PlanProblem,
  classes: readonly JobClass[],
  periods: readonly Period[],
): CampaignProgramme {
  const build = new ProgrammeBuilder();
  const resourceOfRow = new Map<number, string>();
  const sharedRows: SharedRow[] = [];
  const flow = flowRows(problem, classes, periods, build);
  const exposedDays = exposedDayColumns(problem, periods, build, resourceOfRow);
  workRows(problem, classes, periods, build, flow, exposedDays, resourceOfRow, sharedRows);
  wardRows(problem, classes, periods, build, flow, resourceOfRow, sharedRows);
  storeRows(problem, classes, periods, build, flow, exposedDays, resourceOfRow, sharedRows);
  return { programme: build.build(), flow, exposedDays, resourceOfRow, sharedRows };
}

/** Inventory of each class before each task; what is not boxed at the end pays for being undone. */
function flowRows(
  problem: PlanProblem,
  classes: readonly JobClass[],
  periods: readonly Period[],
  build: ProgrammeBuilder,
): Int32Array[][] {
  return classes.map((each) => {
    const count = each.jobs.length;
    const lastTask = each.kinds.length - 1;
    const flow = each.kinds.map((_, s) =>
      Int32Array.from(periods, (period) =>
        build.column(
          s === lastTask ? finishCost(each.weight, each.due, period.from) : 0,
          0,
          period.to < each.ready ? 0 : count,
        ),
      ),
    );
    const undone = build.column(undoneCost(problem.days.length, each), 0, count);
    each.kinds.forEach((_, s) => {
      let stock = -1;
      const arrivals = periods.map((): [number, number][] => []);
      if (s > 0) {
        const lag = each.lags[s - 1] ?? 0;
        periods.forEach((period, t) => {
          const at = lag === 0 ? t : periodAt(periods, period.from + lag);
          arrivals[at]?.push([flow[s - 1]?.[t] as number, 1]);
        });
      }
      periods.forEach((_, t) => {
        const next = build.column(0, 0, count);
        const given = s === 0 && periodAt(periods, each.ready) === t ? count : 0;
        const before: [number, number][] = stock < 0 ? [] : [[stock, 1]];
        build.row(-given, -given, [
          ...before,
          ...(arrivals[t] ?? []),
          [flow[s]?.[t] as number, -1],
          [next, -1],
        ]);
        stock = next;
      });
    });
    build.row(count, count, [
      ...Array.from(flow[lastTask] ?? [], (column): [number, number] => [column, 1]),
      [undone, 1],
    ]);
    return flow;
  });
}

/** Whole exposed days per person and period: within the week's limit and never more in a row than allowed. */
function exposedDayColumns(
  problem: PlanProblem,
  periods: readonly Period[],
  build: ProgrammeBuilder,
  resourceOfRow: Map<number, string>,
): Int32Array[] {
  return problem.hands.map((hand) => {
    const possible = periods.map((period) => {
      let days = 0;
      for (let d = period.from; d <= period.to; d++) if ((hand.nearMinutes[d] ?? 0) > 0) days++;
      return days;
    });
    const inWeekOf = (period: Period): number =>
      Math.max(
        0,
        problem.exposedDaysAWeek - (weekOf(problem, period.from) === 0 ? hand.exposedBefore.week : 0),
      );
    const columns = Int32Array.from(possible, (days, t) =>
      days === 0 ? -1 : build.column(0, 0, Math.min(days, inWeekOf(periods[t] as Period)), true),
    );
    const weeks = new Map<number, number[]>();
    periods.forEach((period, t) => {
      if ((columns[t] ?? -1) < 0) return;
      const week = weekOf(problem, period.from);
      weeks.set(week, [...(weeks.get(week) ?? []), t]);
    });
    for (const inWeek of weeks.values()) {
      if (inWeek.length < 2) continue;
      const row = build.row(
        -NONE,
        inWeekOf(periods[inWeek[0] as number] as Period),
        inWeek.map((t) => [columns[t] as number, 1] as const),
      );
      resourceOfRow.set(row, "mould minutes");
    }
    inARowRows(problem, hand, periods, build, columns);
    return columns;
  });
}

const weekOf = (problem: PlanProblem, d: number): number => Math.floor((d + (problem.weekday[0] ?? 0)) / 7);

function inARowRows(
  problem: PlanProblem,
  { exposedBefore }: Hand,
  periods: readonly Period[],
  build: ProgrammeBuilder,
  columns: Int32Array,
): void {
  const notAll = (t: number, span: number): void => {
    const run = periods.slice(t, t + span);
    const from = run[0]?.from ?? 0;
    const consecutive =
      run.length === span && run.every((each, at) => each.from === each.to && each.from === from + at);
    if (!consecutive) return;
    const terms = run.flatMap((_, at) =>
      (columns[t + at] ?? -1) < 0 ? [] : [[columns[t + at] as number, 1] as const],
    );
    if (terms.length === span) build.row(-NONE, span - 1, terms);
  };
  periods.forEach((_, t) => {
    notAll(t, problem.exposedDaysInARow + 1);
  });
  if (exposedBefore.row > 0 && periods[0]?.from === 0)
    notAll(0, Math.max(1, problem.exposedDaysInARow + 1 - exposedBefore.row));
}

const sumOver = (series: Float64Array, period: Period): number => {
  let sum = 0;
  for (let d = period.from; d <= period.to; d++) sum += series[d] ?? 0;
  return sum;
};

const mostOn = (series: Float64Array, period: Period): number =>
  Math.max(...series.subarray(period.from, period.to + 1));

/** People's minutes cover the work of each kind; stations have places enough. */
function workRows(
  problem: PlanProblem,
  classes: readonly JobClass[],
  periods: readonly Period[],
  build: ProgrammeBuilder,
  flow: readonly (readonly Int32Array[])[],
  exposedDays: readonly Int32Array[],
  resourceOfRow: Map<number, string>,
  sharedRows: SharedRow[],
): void {
  const { overhead } = problem;
  const { maskMinutes, maskBreakMinutes } = problem.campaign.limits;
  const pause = maskMinutes.value > 0 ? maskBreakMinutes.value / maskMinutes.value : 0;
  const oneAt = (station: StationKind, hand: Hand, { from, to }: Period): number => {
    let sum = 0;
    for (let d = from; d <= to; d++)
      sum += Math.min(hand.minutes[d] ?? 0, onePersonAt(problem.stationRows, station, d));
    return sum;
  };
  const used = KINDS.map((_, kind) => classes.some((each) => each.kinds.includes(kind)));
  periods.forEach((period, t) => {
    const slow = problem.slowness[period.from] ?? 1;
    const demand = KINDS.map((_, kind) =>
      classes.flatMap((each, c) =>
        each.kinds.flatMap((own, s) =>
          own === kind ? [[flow[c]?.[s]?.[t] as number, slow * (each.minutes[s] ?? 0)] as const] : [],
        ),
      ),
    );
    const supply = KINDS.map((): [number, number][] => []);
    problem.hands.forEach((hand, p) => {
      const minutes = sumOver(hand.minutes, period);
      if (minutes === 0) return;
      const exposedColumn = exposedDays[p]?.[t] ?? -1;
      const all: [number, number][] = [];
      const near: [number, number][] = [];
      const at = new Map<StationKind, [number, number][]>();
      KINDS.forEach((kind, k) => {
        if (
          !used[k] ||
          !kind.skills.some((skill) => hand.person.skills.includes(skill)) ||
          (kind.exposed && exposedColumn < 0)
        )
          return;
        const column = build.column(0, 0, minutes);
        supply[k]?.push([column, 1]);
        all.push([column, kind.exposed ? 1 + pause : 1]);
        if (kind.exposed) near.push([column, 1]);
        if (kind.station) at.set(kind.station, [...(at.get(kind.station) ?? []), [column, 1]]);
      });
      if (exposedColumn >= 0) {
        // Breaks spread evenly over the minutes: never more than whole spells need.
        all.push([
          exposedColumn,
          overhead.clean + (1 + pause) * overhead.exposed - pause * maskMinutes.value,
        ]);
        resourceOfRow.set(
          build.row(-NONE, 0, [...near, [exposedColumn, -mostOn(hand.nearMinutes, period)]]),
          "mould minutes",
        );
      }
      resourceOfRow.set(build.row(-NONE, minutes, all), `hands:${hand.person.role}`);
      for (const [station, columns] of at) {
        const most = oneAt(station, hand, period);
        if (most < minutes) build.row(-NONE, most, columns);
      }
    });
    KINDS.forEach((_, k) => {
      if (!used[k]) return;
      const row = build.row(-NONE, 0, [
        ...(demand[k] ?? []),
        ...(supply[k] ?? []).map(([column]) => [column, -1] as const),
      ]);
      sharedRows.push({ row, period: t, what: { kind: k } });
    });
    for (const [station, minutes] of problem.stations) {
      const terms = KINDS.flatMap((kind, k) => (kind.station === station ? (demand[k] ?? []) : []));
      if (terms.length === 0) continue;
      const row = build.row(-NONE, sumOver(minutes, period), terms);
      resourceOfRow.set(row, station);
      sharedRows.push({ row, period: t, what: { station } });
    }
  });
}

/** Litres in bags between admission, or the first morning, and release. */
function wardRows(
  problem: PlanProblem,
  classes: readonly JobClass[],
  periods: readonly Period[],
  build: ProgrammeBuilder,
  flow: readonly (readonly Int32Array[])[],
  resourceOfRow: Map<number, string>,
  sharedRows: SharedRow[],
): void {
  const bags = classes.flatMap((each, c) => {
    const there = each.jobs.filter((job) => job.inWard);
    const litres = there.reduce((sum, { route }) => sum + route.wardLitres, 0);
    if (litres > 0) return [{ each, c, there: there.length, litres: litres / there.length }];
    return each.litres > 0 ? [{ each, c, there: 0, litres: each.litres }] : [];
  });
  if (bags.length === 0) return;
  const inside = bags.map(({ each, c, there }) => {
    const release = flow[c]?.[there > 0 ? 0 : 1];
    let before = -1;
    return periods.map((_, t) => {
      const now = build.column(0, 0, each.jobs.length);
      const left = before < 0 ? -there : 0;
      build.row(left, left, [
        ...(before < 0 ? [] : [[before, 1] as const]),
        ...(there > 0 ? [] : [[flow[c]?.[0]?.[t] as number, 1] as const]),
        [release?.[t] as number, -1],
        [now, -1],
      ]);
      before = now;
      return now;
    });
  });
  // A Ward fuller than it may be on the first morning takes in nothing before it has room, which these rows do not say.
  const most = bags.reduce((sum, { there, litres }) => sum + there * litres, 0);
  periods.forEach((_, t) => {
    const terms = bags.map(({ litres }, w) => [inside[w]?.[t] as number, litres] as const);
    const row = build.row(-NONE, Math.max(problem.wardLitres, most), terms);
    resourceOfRow.set(row, "ward");
    sharedRows.push({ row, period: t, what: "ward" });
  });
}

/** What is in the store room never falls below nothing before a new order could be here. */
function storeRows(
  problem: PlanProblem,
  classes: readonly JobClass[],
  periods: readonly Period[],
  build: ProgrammeBuilder,
  flow: readonly (readonly Int32Array[])[],
  exposedDays: readonly Int32Array[],
  resourceOfRow: Map<number, string>,
  sharedRows: SharedRow[],
): void {
  problem.stores.forEach((store, at) => {
    let before = -1;
    let carried = store.onHand;
    let day = 0;
    for (let t = 0; t < periods.length; t++) {
      const period = periods[t] as Period;
      if (period.from >= store.reorderFrom) return;
      for (; day <= period.to; day++) carried += store.arrivals[day] ?? 0;
      const uses = classes.flatMap((each, c) =>
        each.uses.flatMap((use, s) =>
          use.has(at) ? [[flow[c]?.[s]?.[t] as number, use.get(at) as number] as const] : [],
        ),
      );
      const perDay = problem.sessionUses.get(at) ?? 0;
      if (perDay > 0)
        for (const person of exposedDays)
          if ((person[t] ?? -1) >= 0) uses.push([person[t] as number, perDay]);
      const now = build.column(0, 0, NONE);
      const row = build.row(-carried, -carried, [
        ...(before < 0 ? [] : [[before, 1] as const]),
        ...uses.map(([column, use]) => [column, -use] as const),
        [now, -1],
      ]);
      resourceOfRow.set(row, `store:${store.id}`);
      sharedRows.push({ row, period: t, what: { store: at } });
      before = now;
      carried = 0;
    }
  });
}
