import type { ClimateReading } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { count, problem } from "./problem.ts";

const HOUR = 3_600_000;
/** A gap is said from three usual steps and two hours on; common practice, no source. */
const GAP_STEPS = 3;
const LEAST_GAP = 2 * HOUR;
/** Both values unchanged for a day: in a real room the last digit moves within hours; common practice, no source. */
const STUCK = 24 * HOUR;
const STUCK_READINGS = 12;
/** Each kind of trouble is said this often for one file, then counted. */
const MOST_SAID = 10;

/** Signs in ordered readings that the reader has failed: gaps, no values, values that stand still. */
export function watchReader(file: string, readings: readonly ClimateReading[]): Problem[] {
  if (readings.length < 2) return [];
  const times = readings.map(({ at }) => Date.parse(`${at}Z`));
  return [...gaps(file, readings, times), ...runs(file, readings, times)];
}

function gaps(file: string, readings: readonly ClimateReading[], times: readonly number[]): Problem[] {
  const steps = times.slice(1).map((time, i) => time - (times[i] ?? time));
  const usual = [...steps].sort((a, b) => a - b)[Math.floor(steps.length / 2)] ?? 0;
  const least = Math.max(usual * GAP_STEPS, LEAST_GAP);
  const found = steps.flatMap((step, i) => (step >= least ? [span(readings, i, i + 1)] : []));
  return said("reading-gap", file, found, "Nothing needs to be done if the reader was being read out.");
}

/** Stretches of readings that are the same throughout: without any value, or with the same values for a day. */
function runs(file: string, readings: readonly ClimateReading[], times: readonly number[]): Problem[] {
  const silent: string[] = [];
  const stuck: string[] = [];
  for (let first = 0, next = 0; first < readings.length; first = next) {
    const start = readings[first];
    while (next < readings.length && isSame(start, readings[next])) next++;
    const last = next - 1;
    const hours = (times[last] ?? 0) - (times[first] ?? 0);
    if (start?.dryBulb === undefined && start?.relHum === undefined) silent.push(span(readings, first, last));
    else if (
      start.dryBulb !== undefined &&
      start.relHum !== undefined &&
      hours >= STUCK &&
      next - first >= STUCK_READINGS
    )
      stuck.push(span(readings, first, last));
  }
  return [
    ...said("reader-silent", file, silent, "Look at the reader and its battery."),
    ...said("reader-stuck", file, stuck, "Look whether the reader has failed; compare it with another."),
  ];
}

const isSame = (a: ClimateReading | undefined, b: ClimateReading | undefined): boolean =>
  a?.dryBulb === b?.dryBulb && a?.relHum === b?.relHum;

const span = (readings: readonly ClimateReading[], from: number, to: number): string =>
  `from ${moment(readings[from])} to ${moment(readings[to])}`;
const moment = (reading: ClimateReading | undefined): string =>
  (reading?.at ?? "").slice(0, 16).replace("T", " ");

function said(
  code: "reading-gap" | "reader-silent" | "reader-stuck",
  file: string,
  spans: readonly string[],
  remedy: string,
): Problem[] {
  const shown = spans
    .slice(0, MOST_SAID)
    .map((expected) => problem(code, "note", { file }, { expected, remedy }));
  const rest = spans.length - shown.length;
  return rest === 0
    ? shown
    : [...shown, problem(code, "note", { file }, { expected: `${count(rest)} more times`, remedy })];
}
