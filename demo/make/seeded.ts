/** A seeded source of chance: the same seed draws the same numbers on every machine. */
export interface Chance {
  /** Uniform, 0 up to but not including 1. */
  readonly next: () => number;
  /** True in `share` of the draws, 0 to 1. */
  readonly happens: (share: number) => boolean;
  /** Whole number, both ends possible. */
  readonly whole: (low: number, high: number) => number;
  /** Triangular between low and high with its peak at `typical`: a long tail where high lies far off. */
  readonly skewed: (low: number, typical: number, high: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly shuffled: <T>(from: readonly T[]) => T[];
  /** `count` different entries in their first order. */
  readonly some: <T>(from: readonly T[], count: number) => T[];
  /** `count` different entries, likelier the greater their weight; in their first order. */
  readonly someByWeight: <T>(from: readonly T[], count: number, weight: (entry: T) => number) => T[];
}

/** Bits from mulberry32, a public-domain generator of Tommy Ettinger; period 2^32, far more than a campaign draws. */
function mulberry32(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let bits = Math.imul(state ^ (state >>> 15), state | 1);
    bits ^= bits + Math.imul(bits ^ (bits >>> 7), bits | 61);
    return ((bits ^ (bits >>> 14)) >>> 0) / 4294967296;
  };
}

/** @param seed whole number, 0 to 2^32 − 1 */
export function seeded(seed: number): Chance {
  const next = mulberry32(seed);
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  const pick = <T>(from: readonly T[]): T => entryAt(from, whole(0, from.length - 1));
  return {
    next,
    happens: (share) => next() < share,
    whole,
    skewed: (low, typical, high) => triangular(next(), low, typical, high),
    pick,
    shuffled: (from) => shuffle(from, whole),
    some: (from, count) => firstBy(from, count, () => next()),
    someByWeight: (from, count, weight) =>
      firstBy(from, count, (entry) => -Math.log(1 - next()) / weight(entry)),
  };
}

/** Inverse of the triangular distribution at `u`, 0 to 1. */
function triangular(u: number, low: number, typical: number, high: number): number {
  const span = high - low;
  if (span === 0) return low;
  const below = typical - low;
  return u * span < below
    ? low + Math.sqrt(u * span * below)
    : high - Math.sqrt((1 - u) * span * (high - typical));
}

function shuffle<T>(from: readonly T[], whole: (low: number, high: number) => number): T[] {
  const mixed = [...from];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = whole(0, last);
    const held = entryAt(mixed, last);
    mixed[last] = entryAt(mixed, other);
    mixed[other] = held;
  }
  return mixed;
}

/** The `count` entries with the lowest keys, in their first order. */
function firstBy<T>(from: readonly T[], count: number, key: (entry: T) => number): T[] {
  if (count > from.length) throw new Error(`${count} entries wanted of ${from.length}.`);
  const keyed = from.map((entry, at) => ({ entry, at, key: key(entry) }));
  const chosen = keyed.sort((a, b) => a.key - b.key).slice(0, count);
  return chosen.sort((a, b) => a.at - b.at).map(({ entry }) => entry);
}

/** The entry at a place; outside the list it throws, naming the place. */
export function entryAt<T>(from: readonly T[], at: number): T {
  if (!(at in from)) throw new Error(`No entry ${at} in a list of ${from.length}.`);
  return from[at] as T; // checked on the line above
}

/** Each name as often as its count says: `{ sheep: 2, goat: 1 }` → sheep, sheep, goat. */
export const inShares = <T extends string>(counts: Readonly<Partial<Record<T, number>>>): T[] =>
  (Object.entries(counts) as [T, number][]).flatMap(([name, count]) => Array<T>(count).fill(name));
