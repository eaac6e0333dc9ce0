/* Whether a figure that was just typed may be a slip of the finger: then it is asked again, and taken if it is meant.
 * The bounds are for slips, not for physics. Common practice, no source. */

/** `impossible`: cannot be, and is not taken. */
export type TypedDoubt = "impossible" | "unusual" | "far-from-before";

/** How a kind of figure is held against what is usual, and against the one before. */
interface Bounds {
  readonly possible: readonly [low: number, high: number];
  readonly usual: readonly [low: number, high: number];
  /** How far it may be from the one before, as a difference. */
  readonly step: number;
}

/** Relative humidity as a fraction, temperatures in °C. */
export const TYPED = {
  relHum: { possible: [0, 1], usual: [0.08, 0.95], step: 0.15 },
  dryBulb: { possible: [-40, 70], usual: [5, 40], step: 8 },
} as const satisfies Record<string, Bounds>;

export function typedDoubt(
  value: number,
  { possible, usual, step }: Bounds,
  before: number | null,
): TypedDoubt | null {
  if (!Number.isFinite(value) || value < possible[0] || value > possible[1]) return "impossible";
  if (value < usual[0] || value > usual[1]) return "unusual";
  return before !== null && Math.abs(value - before) > step + 1e-9 ? "far-from-before" : null;
}

/** A drying item loses little between two weighings, and gains less. Shares of the weight before. */
const MOST_LOST = 0.15;
const MOST_GAINED = 0.03;
const MOST_GRAMS = 100_000;

export function weightDoubt(grams: number, before: number | null): TypedDoubt | null {
  if (!Number.isFinite(grams) || grams <= 0 || grams > MOST_GRAMS) return "impossible";
  if (before === null) return null;
  const change = (grams - before) / before;
  return change < -MOST_LOST || change > MOST_GAINED ? "far-from-before" : null;
}
