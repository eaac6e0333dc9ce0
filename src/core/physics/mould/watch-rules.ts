import { withinRange } from "../out-of-range.ts";
import type { GrowthClassName } from "./mould-growth.ts";
import type { SurfaceGroup } from "./mould-limits.ts";

export interface WatchRules {
  /** `very-sensitive` unless told. */
  readonly growthClass: GrowthClassName;
  /** How fast the index recedes when dry, 0 to 1; 0.25 unless told. */
  readonly declineFactor: number;
  /** Index at the start, 0 to 6: above 0 when mould has grown there before. */
  readonly startIndex: number;
  /** Group of the parabola; `a`, the readiest, unless told. */
  readonly surfaceGroup: SurfaceGroup;
}

export const USUAL_RULES: WatchRules = {
  growthClass: "very-sensitive",
  declineFactor: 0.25,
  startIndex: 0,
  surfaceGroup: "a",
};

/** The rules given, the usual ones where none are.   @throws OutOfRange for a start index outside 0 to 6, a decline factor outside 0 to 1 */
export function watchRulesFrom(given: Partial<WatchRules>): WatchRules {
  const rules = { ...USUAL_RULES, ...given };
  withinRange("index at the start", rules.startIndex, "1", 0, 6);
  withinRange("decline factor", rules.declineFactor, "1", 0, 1);
  return rules;
}
