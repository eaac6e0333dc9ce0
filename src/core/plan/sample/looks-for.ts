import { binomialInterval, lotInterval, USUAL_SURENESS } from "./share-interval.ts";

/** Half the width of the interval, were the share seen again in so many looks; a share, 0 to 1. */
function halfWidth(looked: number, share: number, all: number | null, sureness: number): number {
  const seen = { looked, found: Math.round(share * looked) };
  const { low, high } = all === null ? binomialInterval(seen, sureness) : lotInterval(seen, all, sureness);
  return (high - low) / 2;
}

/**
 * How many items to look at in all so that the share is known to ± `within`, if it turns out as it looks now. Whole counts make the
 * width jump a little from one look to the next, so the answer may be a few off.
 * @param within half the width wanted, above 0, below 0.5   @param share 0 to 1; 0.5 asks most   @param all null: an endless lot
 */
export function looksFor(
  within: number,
  share: number,
  all: number | null,
  sureness = USUAL_SURENESS,
): number {
  const most = all ?? 1e6;
  let low = 0;
  let high = Math.min(most, 64);
  while (high < most && halfWidth(high, share, all, sureness) > within) {
    low = high;
    high = Math.min(most, high * 2);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (halfWidth(middle, share, all, sureness) <= within) high = middle;
    else low = middle;
  }
  return high;
}
