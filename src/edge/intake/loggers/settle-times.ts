import { findJumps, takeOutSummer } from "./clock-jumps.ts";
import type { LeftOut } from "./left-out.ts";
import type { ClockJump, LoggerCorrections } from "./logger-reading.ts";
import {
  type DateOrder,
  dayNumberOf,
  dayOfPacked,
  NO_DAY,
  NOMINAL_YEAR,
  writtenGroups,
} from "./packed-date.ts";
import { NO_OFFSET, type ReadingStore } from "./reading-store.ts";
import { isoMinute, usualStepOf } from "./series-steps.ts";

/** Minutes on the clock of the file for each row that has a day; rows without one leave the store. */
export function minutesOf(store: ReadingStore, order: DateOrder, leftOut: LeftOut): Float64Array {
  const { date, time, size } = store;
  const minutes = new Float64Array(size);
  let last = -1;
  let day = NO_DAY;
  let kept = 0;
  for (let i = 0; i < size; i++) {
    const packed = date[i] as number; // i stays below size
    if (packed !== last) {
      last = packed;
      day = dayOfPacked(packed, order);
    }
    if (day === NO_DAY) {
      leftOut.add("no-such-day", store.line[i] as number, () => writtenGroups(packed));
      continue;
    }
    minutes[kept] = day * 1440 + (time[i] as number) / 60_000;
    if (kept < i) moveRow(store, i, kept);
    kept++;
  }
  store.size = kept;
  return minutes.subarray(0, kept);
}

/** Rows without a value leave the store and the times. */
export function withoutEmpty(store: ReadingStore, minutes: Float64Array, leftOut: LeftOut): Float64Array {
  const { temperature, second, size } = store;
  let kept = 0;
  for (let i = 0; i < size; i++) {
    const [warm, damp] = [temperature[i] as number, second[i] as number]; // i stays below size
    if (warm !== warm && damp !== damp) {
      leftOut.add("no-value", store.line[i] as number);
      continue;
    }
    if (kept < i) {
      moveRow(store, i, kept);
      minutes[kept] = minutes[i] as number;
    }
    kept++;
  }
  store.size = kept;
  return minutes.subarray(0, kept);
}

function moveRow(store: ReadingStore, from: number, to: number): void {
  store.date[to] = store.date[from] as number;
  store.time[to] = store.time[from] as number;
  store.line[to] = store.line[from] as number;
  store.temperature[to] = store.temperature[from] as number;
  store.second[to] = store.second[from] as number;
  if (store.offset !== null) store.offset[to] = store.offset[from] as number;
}

export interface CellOffsets {
  /** The least offset, which is that of standard time. */
  readonly offset: number;
  readonly isChanging: boolean;
}

/** Where cells say their offset: all times put to the clock of the least one. Null: no cell says one. */
export function toStandardOffset(store: ReadingStore, minutes: Float64Array): CellOffsets | null {
  const { offset } = store;
  if (offset === null) return null;
  let [least, most] = [NO_OFFSET, -NO_OFFSET];
  for (let i = 0; i < minutes.length; i++) {
    const here = offset[i] as number; // i stays below the length
    if (here === NO_OFFSET) continue;
    if (here < least) least = here;
    if (here > most) most = here;
  }
  if (least === NO_OFFSET) return null;
  for (let i = 0; i < minutes.length; i++) {
    const here = offset[i] as number; // i stays below the length
    if (here !== NO_OFFSET) minutes[i] = (minutes[i] as number) - here + least;
  }
  return { offset: least, isChanging: least !== most };
}

/** Newest rows first: turned round, so that what follows sees time go on. */
export function turnIfNewestFirst(store: ReadingStore, minutes: Float64Array): boolean {
  let [up, down] = [0, 0];
  for (let i = 1; i < minutes.length; i++) {
    const step = (minutes[i] as number) - (minutes[i - 1] as number); // i stays inside
    if (step > 0) up++;
    else if (step < 0) down++;
  }
  if (down <= up) return false;
  const { size } = store;
  for (const column of [store.date, store.time, store.line, store.temperature, store.second])
    column.subarray(0, size).reverse();
  store.offset?.subarray(0, size).reverse();
  minutes.reverse();
  return true;
}

/** Hours 1 to 12 twice a day without AM and PM: each day the second round is the afternoon. True: that was so, and was mended. */
export function mendTwelveHours(
  { time, size }: ReadingStore,
  minutes: Float64Array,
  isSure: boolean,
): boolean {
  for (let i = 0; i < size; i++) {
    const hour = Math.floor((time[i] as number) / 3_600_000); // i stays below size
    if (hour < 1 || hour > 12) return false;
  }
  const dayOf = (i: number): number => Math.floor((minutes[i] ?? 0) / 1440);
  const rounds: { from: number; to: number; second: number }[] = [];
  for (let i = 0; i < minutes.length; i++) {
    const half = (minutes[i] as number) % 720; // i stays below the length
    const last = rounds.at(-1);
    if (last === undefined || dayOf(i) !== dayOf(last.from)) rounds.push({ from: i, to: i + 1, second: -1 });
    else {
      if (half < (minutes[i - 1] as number) % 720) {
        if (last.second >= 0) return false;
        last.second = i;
      }
      last.to = i + 1;
    }
  }
  let setBack = 0; // from 12 to 1 the figures fall, which no clock of 24 hours does within a day
  for (let i = 1; i < minutes.length; i++)
    if ((minutes[i] as number) < (minutes[i - 1] as number) && dayOf(i) === dayOf(i - 1)) setBack++; // i stays inside
  if (!isSure && setBack * 2 < rounds.length) return false;
  const whole = rounds.filter(({ second }) => second >= 0).length;
  if (!isSure && (whole < 1 || whole < rounds.length - 2)) return false;
  rounds.forEach(({ from, to, second }, n) => {
    const afternoon = second >= 0 ? second : n === 0 && rounds.length > 1 ? from : to;
    for (let i = from; i < to; i++) {
      const day = dayOf(i) * 1440;
      minutes[i] = day + (((minutes[i] as number) - day) % 720) + (i >= afternoon ? 720 : 0);
    }
  });
  return true;
}

export interface SummerTime {
  readonly jumps: readonly ClockJump[];
  readonly isTakenOut: boolean;
}

/** Finds hours skipped and repeated, and puts summer time back to standard time unless an offset is stated or the user says no. */
export function settleSummerTime(
  store: ReadingStore,
  minutes: Float64Array,
  isOffsetStated: boolean,
  wish: LoggerCorrections["summerTime"],
): SummerTime {
  const found = findJumps(minutes, usualStepOf(minutes));
  const jumps = found.map(
    ({ at, kind }): ClockJump => ({ at: isoMinute(minutes[at] ?? 0), kind, line: store.line[at] ?? 0 }),
  );
  const isTakenOut = found.length > 0 && (wish === undefined ? !isOffsetStated : wish === "taken out");
  if (isTakenOut) takeOutSummer(minutes, found);
  return { jumps, isTakenOut };
}

const FAR = 200 * 1440;

/** Months that follow each other while the years jump to and fro: one usual year put together from several. */
export function isTypicalYear(minutes: Float64Array): boolean {
  let isSetBack = false;
  for (let i = 1; i < minutes.length; i++) {
    const before = minutes[i - 1] as number; // i starts at 1
    const here = minutes[i] as number;
    if (Math.abs(here - before) > FAR) {
      if (!isNextMonth(before, here)) return false;
      if (here < before) isSetBack = true;
    } else if (here < before) return false;
  }
  return isSetBack;
}

/** The first of the month after, whatever the year; midnight still belongs to the month before. */
function isNextMonth(before: number, here: number): boolean {
  const [last, first] = [new Date(before * 60_000 - 1), new Date(here * 60_000)];
  return first.getUTCDate() === 1 && first.getUTCMonth() === last.getUTCMonth() + 1;
}

/** Months of different years become one year. Tells the year that the readings are dated in. */
export function toNominalYear(
  store: ReadingStore,
  minutes: Float64Array,
  leftOut: LeftOut,
): { minutes: Float64Array; year: number } {
  const years = new Set<number>();
  const days = new Map<number, number>();
  const nominal = (day: number): number => {
    const known = days.get(day);
    if (known !== undefined) return known;
    const date = new Date(day * 86_400_000);
    years.add(date.getUTCFullYear());
    const found = dayNumberOf(NOMINAL_YEAR, date.getUTCMonth() + 1, date.getUTCDate());
    days.set(day, found);
    return found;
  };
  const written = minutes.map((_, i) =>
    Math.floor(((minutes[i] as number) * 60_000 - (store.time[i] as number)) / 86_400_000 + 0.5),
  );
  for (const day of written) nominal(day);
  if (years.size <= 1) return { minutes, year: [...years][0] ?? NOMINAL_YEAR };
  for (let i = 0; i < minutes.length; i++) {
    const day = nominal(written[i] as number); // i stays below the length
    if (day === NO_DAY) store.temperature[i] = store.second[i] = Number.NaN;
    else minutes[i] = day * 1440 + (store.time[i] as number) / 60_000;
  }
  return { minutes: withoutEmpty(store, minutes, leftOut), year: NOMINAL_YEAR };
}
