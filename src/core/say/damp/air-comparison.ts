import type { MouldWatch } from "../../physics/mould/mould-watch.ts";
import { airGrade, named } from "./air.ts";
import { duration, percent } from "./quantities.ts";

/* Several places side by side, and which of them needs a visit first. */

const STATE_WORDS: Readonly<Record<MouldWatch["state"], string>> = {
  act: "act",
  watch: "watch",
  quiet: "no lamp",
  unknown: "not known",
};

/** The closing table, the worst first. */
export function airComparison(
  rows: readonly {
    name: string;
    watch: MouldWatch;
    above65: number;
    knownHours: number;
    meanDamp: number;
    meanWarmth: number;
  }[],
): string[] {
  const cells = rows.map(({ name, watch, above65, knownHours, meanDamp, meanWarmth }) => [
    name,
    STATE_WORDS[airGrade(watch)],
    STATE_WORDS[airGradeNow(watch)],
    knownHours > 0 ? percent(above65 / knownHours) : "-",
    watch.damp.longest === null ? "-" : duration(watch.damp.longest.hours),
    watch.index.highest.toFixed(1),
    Number.isNaN(meanDamp) ? "-" : percent(meanDamp),
    Number.isNaN(meanWarmth) ? "-" : `${meanWarmth.toFixed(1)} °C`,
  ]);
  const heads = ["", "at worst", "at the end", "65 % or more", "longest", "index", "mean RH", "mean T"];
  const widths = heads.map((head, i) => Math.max(head.length, ...cells.map((row) => row[i]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    `  ${row.map((cell, i) => (i < 3 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join("  ")}`.trimEnd();
  const [first, last] = [rows[0], rows.at(-1)];
  const worstFirst =
    first && last && isWorse(first.watch, last.watch) ? ` ${named(first.name)} needs you first.` : "";
  return [`Side by side, the worst first.${worstFirst}`, line(heads), ...cells.map(line)];
}

/** At the end it is never graded above the whole. */
const airGradeNow = (watch: MouldWatch): MouldWatch["state"] =>
  watch.stateNow === "act" ? airGrade(watch) : watch.stateNow;

const RANK: Readonly<Record<MouldWatch["state"], number>> = { act: 3, watch: 2, unknown: 1, quiet: 0 };
/** For sorting, the worst first: state, then state at the end, index, and time above the critical humidity. */
export const compareWatches = (a: MouldWatch, b: MouldWatch): number =>
  RANK[airGrade(b)] - RANK[airGrade(a)] ||
  RANK[b.stateNow] - RANK[a.stateNow] ||
  b.index.highest - a.index.highest ||
  b.critical.hours - a.critical.hours ||
  b.damp.hours - a.damp.hours;
const isWorse = (a: MouldWatch, b: MouldWatch): boolean => compareWatches(a, b) < 0 && RANK[a.state] > 0;
