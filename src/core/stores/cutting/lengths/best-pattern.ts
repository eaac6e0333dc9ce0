/** The most valuable set of pieces for every length up to the longest. */
export interface BestPatterns {
  /** Worth of the best set that fits into each length. */
  readonly worth: Float64Array;
  /** How many of each piece the best set for a length has. */
  setFor(length: number): Int32Array;
}

/**
 * Which pieces are worth most together and fit in a length; no piece more often than it is wanted. Exact.
 * @param lengths whole numbers, 1 and over   @param most how many of each   @param worths of one piece; those of nought or less are left out
 * Source: dynamic programme of the bounded knapsack with each count split into powers of two, from memory.
 */
export function bestPatterns(
  lengths: Int32Array,
  most: Int32Array,
  worths: Float64Array,
  longest: number,
): BestPatterns {
  const lots = lotsOf(lengths, most, worths, longest);
  const worth = new Float64Array(longest + 1);
  const taken = lots.map(() => new Uint8Array(longest + 1));
  lots.forEach((lot, n) => {
    take(worth, taken[n] as Uint8Array, lot);
  });
  return {
    worth,
    setFor(length) {
      const counts = new Int32Array(lengths.length);
      let room = length;
      for (let n = lots.length - 1; n >= 0; n--) {
        const lot = lots[n] as Lot;
        if ((taken[n] as Uint8Array)[room] === 0) continue;
        counts[lot.piece] = (counts[lot.piece] as number) + lot.count;
        room -= lot.length;
      }
      return counts;
    },
  };
}

interface Lot {
  readonly piece: number;
  readonly count: number;
  readonly length: number;
  readonly worth: number;
}

function lotsOf(lengths: Int32Array, most: Int32Array, worths: Float64Array, longest: number): Lot[] {
  const lots: Lot[] = [];
  for (let piece = 0; piece < lengths.length; piece++) {
    const [length, worth] = [lengths[piece] as number, worths[piece] as number];
    if (worth <= 1e-12) continue;
    let left = Math.min(most[piece] as number, Math.floor(longest / length));
    for (let count = 1; left > 0; count *= 2) {
      const lot = Math.min(count, left);
      lots.push({ piece, count: lot, length: lot * length, worth: lot * worth });
      left -= lot;
    }
  }
  return lots;
}

function take(worth: Float64Array, taken: Uint8Array, lot: Lot): void {
  for (let room = worth.length - 1; room >= lot.length; room--) {
    const withLot = (worth[room - lot.length] as number) + lot.worth;
    if (withLot > (worth[room] as number) + 1e-12) {
      worth[room] = withLot;
      taken[room] = 1;
    }
  }
}
