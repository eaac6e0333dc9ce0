/** Seeded draws: the same seed gives the same numbers on every machine. Values 0 ≤ u < 1 (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A value of the triangular distribution low-typical-high for a draw u. */
export function triangular(low: number, typical: number, high: number, u: number): number {
  if (high <= low) return typical;
  const cut = (typical - low) / (high - low);
  return u < cut
    ? low + Math.sqrt(u * (high - low) * (typical - low))
    : high - Math.sqrt((1 - u) * (high - low) * (high - typical));
}

/**
 * A draw that hangs on its own numbers alone: whatever is drawn beside it or before it, it stays the same. 0 ≤ u < 1.
 * @param numbers whole numbers of 32 bits that name the draw
 */
export const chanceAt = (seed: number, ...numbers: readonly number[]): number =>
  hashOf(seed, numbers) / 4294967296;

/** A name as a number of 32 bits, for `chanceAt`. */
export const keyOf = (name: string): number =>
  hashOf(
    0,
    [...name].map((letter) => letter.codePointAt(0) ?? 0),
  );

/** MurmurHash3_x86_32 over whole 32-bit words (Austin Appleby, public domain). 0 to 2³² − 1. */
export function hashOf(seed: number, words: readonly number[]): number {
  let hash = seed;
  for (const word of words) {
    const mixed = Math.imul(word, 0xcc9e2d51);
    hash ^= Math.imul((mixed << 15) | (mixed >>> 17), 0x1b873593);
    hash = (Math.imul((hash << 13) | (hash >>> 19), 5) + 0xe6546b64) | 0;
  }
  hash ^= words.length * 4;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
