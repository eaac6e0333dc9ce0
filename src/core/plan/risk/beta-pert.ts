import type { Band } from "../../care/care.ts";

/** Rows of the table: where the typical value lies in the band, 0 to 1; columns: draws, 0 to 1. */
const PLACES = 40;
const DRAWS = 256;
const STEPS = 1000;

/** Quantiles of Beta(1 + 4m, 5 − 4m) for each place m. */
const TABLE = Array.from({ length: PLACES + 1 }, (_, row) => quantilesAt(row / PLACES));

/**
 * A value of a low-typical-high band for a draw u, 0 ≤ u < 1: the beta distribution whose mean is exactly the plan's 1-4-1 weighting, so that chance
 * widens a plan without moving it.
 * Source: Malcolm, Roseboom, Clark and Fazar, Application of a Technique for Research and Development Program Evaluation, 1959 (from memory).
 * From a table, true to a thousandth of the band's width but for the last draws at either end.
 */
export function betaPert({ low, typical, high }: Band, u: number): number {
  if (high <= low) return typical;
  const place = Math.min(1, Math.max(0, (typical - low) / (high - low))) * PLACES;
  const row = Math.min(PLACES - 1, Math.floor(place));
  const [before, after] = [quantile(TABLE[row], u), quantile(TABLE[row + 1], u)];
  return low + (high - low) * (before + (place - row) * (after - before));
}

function quantile(row: Float64Array | undefined, u: number): number {
  const at = Math.floor(u * DRAWS);
  const [before, after] = [row?.[at] ?? 0, row?.[at + 1] ?? 1];
  return before + (u * DRAWS - at) * (after - before);
}

/** Sums the density over fine steps and notes where each share of it is reached. */
function quantilesAt(m: number): Float64Array {
  const heights = Array.from({ length: STEPS }, (_, k) => {
    const x = (k + 0.5) / STEPS;
    return x ** (4 * m) * (1 - x) ** (4 - 4 * m);
  });
  const total = heights.reduce((sum, height) => sum + height, 0);
  const quantiles = new Float64Array(DRAWS + 1).fill(1);
  let next = 0;
  let sum = 0;
  heights.forEach((height, k) => {
    for (; next < DRAWS && (next / DRAWS) * total <= sum + height; next++)
      quantiles[next] = (k + ((next / DRAWS) * total - sum) / height) / STEPS;
    sum += height;
  });
  return quantiles;
}
