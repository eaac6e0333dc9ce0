import { ONE_IN_TEN, type UseSpread } from "./spread.ts";

/** What will have been used by the evening of each day: as expected, and what one campaign in ten stays under, or goes over. */
export interface Need {
  readonly low: Float64Array;
  readonly mid: Float64Array;
  readonly high: Float64Array;
}

/** Units by which a sum of days may be off by rounding. */
export const ROUNDING = 1e-6;

/**
 * Use summed up from day to day. Its variance is that of a team off by one share on all days, and of days off each by itself:
 * σ²(d) = (all · Σu)² + each² · Σu². With `all` 0 this is the textbook's normal demand over a lead time.
 * @param use of each day; @param z standard deviations to either end
 */
export function needOf(use: Float64Array, spread: UseSpread, z = ONE_IN_TEN): Need {
  const need = { low: use.slice(), mid: use.slice(), high: use.slice() };
  let [sum, squares, low, high] = [0, 0, 0, 0];
  use.forEach((quantity, d) => {
    sum += quantity;
    squares += quantity ** 2;
    const off = z * Math.hypot(spread.all * sum, spread.each * Math.sqrt(squares));
    low = Math.max(low, sum - off);
    high = Math.max(high, sum + off);
    need.low[d] = low;
    need.mid[d] = sum;
    need.high[d] = high;
  });
  return need;
}
