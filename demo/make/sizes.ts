import type { ItemRow } from "./rows.ts";

/** Millimetres to the nearest five, as a tape on a table gives them. */
const tape = (mm: number): number => Math.max(5, Math.round(mm / 5) * 5);

export interface Size {
  readonly height_mm: number;
  readonly width_mm: number;
  readonly thickness_mm: number;
  readonly mass_kg: number;
}

/**
 * Size and mass of a stack of leaves between covers.
 * @param leafMm thickness of one leaf, mm   @param leafGsm grams a square metre   @param coverKg mass of boards and cover
 */
export function stackSize(
  high: number,
  wide: number,
  leaves: number,
  leafMm: number,
  leafGsm: number,
  coverKg: number,
): Size {
  const thick = leaves * leafMm + (coverKg > 0 ? 8 : 1);
  const kg = (high * wide * leaves * leafGsm) / 1e9 + coverKg;
  return {
    height_mm: tape(high),
    width_mm: tape(wide),
    thickness_mm: Math.max(1, Math.round(thick)),
    mass_kg: twoDigits(kg),
  };
}

const twoDigits = (n: number): number => Math.max(0.01, Math.round(n * 100) / 100);

/** First and last year, the same when nothing else is known. */
export const years = (first: number, last = first): Pick<ItemRow, "date_earliest" | "date_latest"> => ({
  date_earliest: first,
  date_latest: last,
});
