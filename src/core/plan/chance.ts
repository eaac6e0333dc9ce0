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
