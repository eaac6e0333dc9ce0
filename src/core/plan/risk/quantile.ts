/**
 * The least value that at least a share of the values do not exceed, 0 < share ≤ 1: a finish by then is kept by that share of the campaigns.
 * Inverse of the empirical distribution, definition 1 of Hyndman and Fan, Sample Quantiles in Statistical Packages (1996).
 * @param sorted rising, at least one
 */
export const quantileOf = (sorted: ArrayLike<number>, share: number): number =>
  sorted[Math.ceil(share * sorted.length - 1e-9) - 1] as number; // 0.07 × 100 is 7.000000000000001
