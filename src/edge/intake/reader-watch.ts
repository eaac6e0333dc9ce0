import type { Problem } from "../../core/outcome/problem.ts";
import type { LoggerImport, LoggerSilence, ReadingSeries } from "./loggers/logger-reading.ts";
import { count, problem } from "./problem.ts";

const HOUR = 60;
/** A gap is said from three usual steps and two hours on; common practice, no source. */
const GAP_STEPS = 3;
const LEAST_GAP = 2 * HOUR;
/** Both values unchanged for a day: in a real room the last digit moves within hours; common practice, no source. */
const STUCK = 24 * HOUR;
const STUCK_READINGS = 12;
/** Each kind of trouble is said this often for one file, then counted. */
const MOST_SAID = 10;

/** A stretch of time in minutes, on the clock of the series. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** Signs that a reader has failed: gaps, no values, values that stand still. */
export function watchReader(file: string, { reading, series }: LoggerImport): Problem[] {
  const leastGap = Math.max(reading.usualStepMinutes * GAP_STEPS, LEAST_GAP);
  const silent = reading.silences.longest.map(spanOf);
  return [
    ...said(
      "reading-gap",
      file,
      gaps(series.minutes, silent, leastGap),
      "Nothing needs to be done if the reader was being read out.",
    ),
    ...said("reader-silent", file, silent, "Look at the reader and its battery."),
    ...said(
      "reader-stuck",
      file,
      stuck(series, leastGap),
      "Look whether the reader has failed; compare it with another.",
    ),
  ];
}

const spanOf = ({ from, to }: LoggerSilence): Span => ({ from: minutesOf(from), to: minutesOf(to) });
const minutesOf = (at: string): number => Date.parse(`${at}Z`) / 60_000;

/** Stretches without a row: neither a reading nor one of the rows that have a time alone. */
function gaps(minutes: Float64Array, silent: readonly Span[], least: number): Span[] {
  const found: Span[] = [];
  for (let i = 1; i < minutes.length; i++) {
    const [from, to] = [minutes[i - 1] as number, minutes[i] as number]; // i stays inside
    if (to - from < least) continue;
    const inside = silent.filter((each) => each.from > from && each.to < to);
    const starts = [from, ...inside.map((each) => each.to)];
    const ends = [...inside.map((each) => each.from), to];
    starts.forEach((start, n) => {
      const end = ends[n] ?? to;
      if (end - start >= least) found.push({ from: start, to: end });
    });
  }
  return found;
}

/** Stretches without a gap in which both values are the same for a day and more. */
function stuck({ minutes, dryBulb, relHum }: ReadingSeries, leastGap: number): Span[] {
  const found: Span[] = [];
  const goesOn = (i: number): boolean =>
    dryBulb[i] === dryBulb[i - 1] && // a value that is absent is no value, and not the same as another
    relHum[i] === relHum[i - 1] &&
    (minutes[i] ?? 0) - (minutes[i - 1] ?? 0) < leastGap;
  for (let first = 0, next = 1; first < minutes.length; first = next, next++) {
    while (next < minutes.length && goesOn(next)) next++;
    const [from, to] = [minutes[first] ?? 0, minutes[next - 1] ?? 0];
    if (to - from >= STUCK && next - first >= STUCK_READINGS) found.push({ from, to });
  }
  return found;
}

const inWords = ({ from, to }: Span): string => `from ${moment(from)} to ${moment(to)}`;
const moment = (minutes: number): string =>
  new Date(minutes * 60_000).toISOString().slice(0, 16).replace("T", " ");

function said(
  code: "reading-gap" | "reader-silent" | "reader-stuck",
  file: string,
  spans: readonly Span[],
  remedy: string,
): Problem[] {
  const shown = spans
    .slice(0, MOST_SAID)
    .map((span) => problem(code, "note", { file }, { expected: inWords(span), remedy }));
  const rest = spans.length - shown.length;
  return rest === 0
    ? shown
    : [...shown, problem(code, "note", { file }, { expected: `${count(rest)} more times`, remedy })];
}
