import type { ClimateSeries } from "../../items/campaign.ts";
import { relHumFromVapourPressure, vapourPressureFromRelHum } from "../../physics/air/moist-air.ts";
import { LONGEST_STEP } from "../../physics/mould/climate-series.ts";
import { type Day, dayNumber, dayOfNumber } from "../../units/day.ts";

/** The air of a store hour by hour: what its reader wrote, then the same days again until the end. */
export interface StoreAir {
  /** Hours from the plan's morning to the first value, 0 or less. */
  readonly start: number;
  /** °C and a fraction, one each hour; NaN where the reader was silent or stood still. */
  readonly dryBulb: Float64Array;
  readonly relHum: Float64Array;
  /** Means of the days that are repeated. */
  readonly recent: { readonly dryBulb: number; readonly relHum: number };
  /** Whether the days to come are moved with the months of a weather file. */
  readonly isSeasonal: boolean;
}

const HOUR_MS = 3_600_000;
const HOURS_A_DAY = 24;
/** No store is colder or warmer, °C: the reader has failed. Common practice, no source. */
const COLDEST = -40;
const WARMEST = 70;
/** Days that are repeated; at least so many of them must have been read; and how old the last may be. Common practice, no source. */
export const RECENT_DAYS = 28;
const LEAST_DAYS = 7;
const STALE_DAYS = 92;
/** Readings further back than this say little of today. */
const LOG_DAYS = 366;
/** Both values unchanged for a day: the reader has failed; common practice, no source. */
const STUCK_HOURS = 24;

/** @returns null where the reader gave too little, too long ago   @param days of the campaign from the plan's morning */
export function storeAirOf(
  series: ClimateSeries,
  weather: ClimateSeries | null,
  planFrom: Day,
  days: number,
): StoreAir | null {
  const log = loggedHours(series, planFrom);
  const last = log.dryBulb.findLastIndex((value) => !Number.isNaN(value));
  if (last < 0 || last + log.start < -STALE_DAYS * HOURS_A_DAY) return null;
  const window = RECENT_DAYS * HOURS_A_DAY;
  const recent = recentOf(log, last, window);
  if (!recent) return null;
  const length = days * HOURS_A_DAY - log.start;
  const air = { dryBulb: new Float64Array(length), relHum: new Float64Array(length) };
  air.dryBulb.set(log.dryBulb.subarray(0, last + 1));
  air.relHum.set(log.relHum.subarray(0, last + 1));
  const season = weather && seasonOf(weather, planFrom, last + log.start, window);
  for (let i = last + 1; i < length; i++) {
    const at = (i - last - 1) % window;
    const warm = recent.dryBulb[at] as number; // at stays below the window
    const damp = recent.relHum[at] as number;
    const then = season?.(warm, damp, i + log.start) ?? { dryBulb: warm, relHum: damp };
    air.dryBulb[i] = then.dryBulb;
    air.relHum[i] = then.relHum;
  }
  const means = { dryBulb: mean(recent.dryBulb), relHum: mean(recent.relHum) };
  return { ...air, start: log.start, recent: means, isSeasonal: season !== null };
}

interface Hours {
  readonly start: number;
  readonly dryBulb: Float64Array;
  readonly relHum: Float64Array;
}

/** Means of each hour up to the plan's morning; a value stands for six hours, and one that stood still for a day is none. */
function loggedHours({ readings }: ClimateSeries, planFrom: Day): Hours {
  const morning = dayNumber(planFrom) * HOURS_A_DAY;
  const hourOf = (at: string): number => Math.floor(Date.parse(`${at}Z`) / HOUR_MS) - morning;
  const sums = new Map<number, { warm: number; damp: number; n: number }>();
  let start = 0;
  for (const { at, dryBulb, relHum } of readings) {
    const hour = hourOf(at);
    if (dryBulb === undefined || relHum === undefined || dryBulb < COLDEST || dryBulb > WARMEST) continue;
    if (!(hour < 0 && hour >= -LOG_DAYS * HOURS_A_DAY)) continue;
    const sum = sums.get(hour) ?? { warm: 0, damp: 0, n: 0 };
    sums.set(hour, { warm: sum.warm + dryBulb, damp: sum.damp + relHum, n: sum.n + 1 });
    start = Math.min(start, hour);
  }
  const hours = {
    start,
    dryBulb: new Float64Array(-start).fill(Number.NaN),
    relHum: new Float64Array(-start).fill(Number.NaN),
  };
  for (const [hour, { warm, damp, n }] of sums) {
    hours.dryBulb[hour - start] = warm / n;
    hours.relHum[hour - start] = Math.min(1, damp / n);
  }
  dropStuck(hours);
  holdOver(hours);
  return hours;
}

function dropStuck({ dryBulb, relHum }: Hours): void {
  for (let from = 0, to = 1; from < dryBulb.length; from = to, to++) {
    while (to < dryBulb.length && dryBulb[to] === dryBulb[from] && relHum[to] === relHum[from]) to++;
    if (to - from <= STUCK_HOURS) continue;
    dryBulb.fill(Number.NaN, from, to);
    relHum.fill(Number.NaN, from, to);
  }
}

function holdOver({ dryBulb, relHum }: Hours): void {
  let last = Number.NEGATIVE_INFINITY;
  dryBulb.forEach((value, i) => {
    if (!Number.isNaN(value)) last = i;
    else if (i - last < LONGEST_STEP) {
      dryBulb[i] = dryBulb[last] as number;
      relHum[i] = relHum[last] as number;
    }
  });
}

/** The hours up to the last one read, a missing one as the hour before; null where less than a week of them was read. */
function recentOf({ dryBulb, relHum }: Hours, last: number, window: number): Omit<Hours, "start"> | null {
  const recent = { dryBulb: new Float64Array(window), relHum: new Float64Array(window) };
  const first = last + 1 - window;
  let read = 0;
  let from = last;
  for (let i = 0; i < window; i++) {
    if (!Number.isNaN(dryBulb[first + i] ?? Number.NaN)) {
      read++;
      from = first + i;
    }
    recent.dryBulb[i] = dryBulb[from] as number; // `last` was read, and so was every `from`
    recent.relHum[i] = relHum[from] as number;
  }
  return read < LEAST_DAYS * HOURS_A_DAY ? null : recent;
}

const mean = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / values.length;

/** Values of a room some hours from the plan's morning, when the season has gone on. */
type Season = (
  dryBulb: number,
  relHum: number,
  hour: number,
) => { readonly dryBulb: number; readonly relHum: number };

/** The store moves with the weather: by the change of the month's mean warmth and vapour pressure since the days that are repeated.
 *  @param lastHour of those days   @returns null where the file lacks a month. Common practice, no source. */
function seasonOf(weather: ClimateSeries, planFrom: Day, lastHour: number, window: number): Season | null {
  const months = monthsOf(weather);
  if (!months) return null;
  const morning = dayNumber(planFrom);
  const monthAt = (hour: number): Month =>
    months[monthOf(dayOfNumber(morning + Math.floor(hour / HOURS_A_DAY)))] as Month;
  const days = Array.from({ length: window / HOURS_A_DAY }, (_, d) => monthAt(lastHour - d * HOURS_A_DAY));
  const of = (value: (month: Month) => number): number =>
    days.reduce((sum, month) => sum + value(month), 0) / days.length;
  const before = { dryBulb: of((month) => month.dryBulb), vapour: of((month) => month.vapour) };
  return (dryBulb, relHum, hour) => {
    const month = monthAt(hour);
    const warm = dryBulb + month.dryBulb - before.dryBulb;
    const vapour = vapourPressureFromRelHum(dryBulb, relHum) + month.vapour - before.vapour;
    return {
      dryBulb: warm,
      relHum: Math.min(1, Math.max(0, relHumFromVapourPressure(warm, Math.max(1, vapour)))),
    };
  };
}

interface Month {
  /** °C */
  readonly dryBulb: number;
  /** Pa */
  readonly vapour: number;
}

const MONTHS = 12;
const monthOf = (at: string): number => Number(at.slice(5, 7)) - 1;

function monthsOf({ readings }: ClimateSeries): readonly Month[] | null {
  const sums = Array.from({ length: MONTHS }, () => ({ warm: 0, vapour: 0, n: 0 }));
  for (const { at, dryBulb, relHum } of readings) {
    const month = sums[monthOf(at)];
    if (!month || dryBulb === undefined || relHum === undefined) continue;
    month.warm += dryBulb;
    month.vapour += vapourPressureFromRelHum(dryBulb, Math.min(1, relHum));
    month.n++;
  }
  if (sums.some(({ n }) => n === 0)) return null;
  return sums.map(({ warm, vapour, n }) => ({ dryBulb: warm / n, vapour: vapour / n }));
}
