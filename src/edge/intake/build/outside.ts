import type { Problem } from "../../../core/outcome/problem.ts";
import { problem, type Where } from "../problem.ts";

interface Span {
  readonly start: string;
  readonly end: string;
}

export const isOutside = (day: string, { start, end }: Span): boolean => day < start || day > end;

/** A day before the campaign begins or after it ends: used, but worth a look. */
export const outside = (where: Where, day: string, { start, end }: Span): Problem =>
  problem("day-outside", "note", where, {
    got: day,
    expected: `${start} to ${end}`,
    remedy: "Look whether the year is right.",
  });
