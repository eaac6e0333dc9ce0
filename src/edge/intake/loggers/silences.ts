import type { LoggerSilence, LoggerSilences } from "./logger-reading.ts";
import type { ReadingStore } from "./reading-store.ts";
import { GAP_FROM, isoMinute } from "./series-steps.ts";

const LONGEST_KEPT = 1000;

/** Rows one after the other that have a time and no value, on the clock of the file. */
export interface EmptyRun {
  readonly from: number;
  readonly to: number;
  readonly rows: number;
  /** A row with values before it, or else after it: what is done to its time is done to theirs. */
  readonly beside: { readonly line: number; readonly minutes: number };
}

/** Runs of rows without a value, before these rows leave the store. */
export function emptyRuns(
  { temperature, second, line, size }: ReadingStore,
  minutes: Float64Array,
): EmptyRun[] {
  const isEmpty = (i: number): boolean => Number.isNaN(temperature[i]) && Number.isNaN(second[i]);
  const runs: EmptyRun[] = [];
  for (let first = 0, next = 0; first < size; first = next + 1) {
    next = first;
    while (next < size && isEmpty(next)) next++;
    const beside = first > 0 ? first - 1 : next;
    if (next > first && beside < size)
      runs.push({
        from: minutes[first] ?? 0,
        to: minutes[next - 1] ?? 0,
        rows: next - first,
        beside: { line: line[beside] ?? 0, minutes: minutes[beside] ?? 0 },
      });
  }
  return runs;
}

/** Stretches in which the logger gave its time but no value; a row of its own between two readings in step is none.
 *  @param settled times of the rows left in the store   @param ordered times of the series */
export function silencesIn(
  runs: readonly EmptyRun[],
  { line }: ReadingStore,
  settled: Float64Array,
  ordered: Float64Array,
  usualStep: number,
): LoggerSilences {
  if (runs.length === 0 || usualStep <= 0) return { count: 0, rows: 0, longest: [] };
  const timeOfLine = new Map(runs.map(({ beside }) => [beside.line, Number.NaN]));
  for (let i = 0; i < settled.length; i++) {
    const here = line[i] as number; // i stays below the size of the store
    if (timeOfLine.has(here)) timeOfLine.set(here, settled[i] as number);
  }
  const found = runs
    .map((run) => onSettledClock(run, timeOfLine.get(run.beside.line) ?? Number.NaN))
    .filter(({ from, to }) => missingAround(ordered, from, to) > usualStep * GAP_FROM);
  const longest = found.sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, LONGEST_KEPT);
  return {
    count: found.length,
    rows: found.reduce((sum, { rows }) => sum + rows, 0),
    longest: longest
      .sort((a, b) => a.from - b.from)
      .map(({ from, to, rows }): LoggerSilence => ({ from: isoMinute(from), to: isoMinute(to), rows })),
  };
}

function onSettledClock({ from, to, rows, beside }: EmptyRun, now: number) {
  const shift = now - beside.minutes;
  return { from: Math.min(from, to) + shift, to: Math.max(from, to) + shift, rows };
}

/** Minutes from the last reading before to the first one after; NaN, when the row beside it is gone, is no stretch. */
function missingAround(ordered: Float64Array, from: number, to: number): number {
  const next = firstAfter(ordered, from);
  return Math.max(to, ordered[next] ?? to) - Math.min(from, ordered[next - 1] ?? from);
}

/** Index of the first time after this one, by halving. */
function firstAfter(ordered: Float64Array, time: number): number {
  let [low, high] = [0, ordered.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ordered[middle] as number) > time)
      high = middle; // middle stays below the length
    else low = middle + 1;
  }
  return low;
}
