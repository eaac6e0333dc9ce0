import { binomialAtMost, lotAtMost } from "./tails.ts";

/** What was seen: so many looked at, so many of them with it. */
export interface Looked {
  readonly looked: number;
  readonly found: number;
}

/** A share, 0 to 1, between two ends. */
export interface ShareInterval {
  readonly low: number;
  readonly high: number;
}

/** The ends of a share in a lot, and the items they stand for. */
export interface LotInterval extends ShareInterval {
  readonly lowItems: number;
  readonly highItems: number;
}

/** How often such intervals hold the true share. */
export const USUAL_SURENESS = 0.95;

/**
 * Exact interval for a share seen in a sample of an endless lot: each end is the share at which what was seen, or anything further out,
 * would come up with half of what is left of the sureness.
 * @param sureness 0.5 to 0.999
 * Source: Clopper and Pearson 1934, Biometrika 26, 404-413 (from memory); checked against SciPy 1.17.1.
 */
export function binomialInterval({ looked, found }: Looked, sureness = USUAL_SURENESS): ShareInterval {
  const tail = (1 - sureness) / 2;
  if (looked === 0) return { low: 0, high: 1 };
  return {
    low: found === 0 ? 0 : rootOf((p) => 1 - binomialAtMost(found - 1, looked, p) - tail),
    high: found === looked ? 1 : rootOf((p) => tail - binomialAtMost(found, looked, p)),
  };
}

/** Where a rising function crosses nought between 0 and 1, to 1e-12. */
function rootOf(rising: (p: number) => number): number {
  let low = 0;
  for (let high = 1; high - low > 1e-12; ) {
    const middle = (low + high) / 2;
    if (rising(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The same for a lot of so many items, none looked at twice: the fewest and the most items with it that what was seen does not speak
 * against. With all looked at, nothing is open.
 * Source: inversion of the two hypergeometric tail tests, as Clopper and Pearson do for the binomial; checked against SciPy 1.17.1.
 */
export function lotInterval({ looked, found }: Looked, all: number, sureness = USUAL_SURENESS): LotInterval {
  const tail = (1 - sureness) / 2;
  const [least, most] = [found, all - looked + found];
  const lowItems = firstOf(least, most, (marked) => 1 - lotAtMost(found - 1, looked, marked, all) > tail);
  const highItems = firstOf(lowItems, most, (marked) => lotAtMost(found, looked, marked + 1, all) <= tail);
  const share = (items: number): number => (all === 0 ? 0 : items / all);
  return { low: share(lowItems), high: share(highItems), lowItems, highItems };
}

/** First whole number of a span from which the test holds; the last one when it holds for none before. */
function firstOf(least: number, most: number, holds: (n: number) => boolean): number {
  let low = least;
  for (let high = most; low < high; ) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
