/** Numbers from 0 to below 1, the same for the same seed (mulberry32, from memory). */
export function chanceFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const between = (chance: () => number, least: number, most: number): number =>
  least + Math.floor(chance() * (most - least + 1));
