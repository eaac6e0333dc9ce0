import type { Row } from "./calendar.ts";

/* Sizes of the picture of days, in px: a day is as wide as a gloved finger, a frame as high as it takes to see a quarter of it. */

export const DAY = 48;
export const WEEK = 7 * DAY;
export const HEAD = 64;
export const FRAME = 40;

export const heightOf = (row: Row): number => (row.kind === "person" ? 100 : 56);

/** Where each row begins, under the head; one more at the end: the whole height. */
export function topsOf(rows: readonly Row[]): readonly number[] {
  const tops = [HEAD];
  for (const row of rows) tops.push((tops.at(-1) ?? HEAD) + heightOf(row));
  return tops;
}

/** The row at a height; −1: the head. */
export const rowAt = (tops: readonly number[], y: number): number =>
  Math.min(
    tops.length - 2,
    tops.findLastIndex((top) => top <= y),
  );
