/** Pieces to cut from rods, strips or rolls whose width they share. Lengths are whole numbers of one unit. */
export interface LengthProblem {
  readonly stocks: readonly StockLength[];
  readonly pieces: readonly PieceLength[];
}

export interface StockLength {
  readonly length: number;
  /** How many there are; endless when more can be had. */
  readonly count: number;
  /** What using one costs; by default its length. */
  readonly cost?: number;
}

export interface PieceLength {
  readonly length: number;
  readonly count: number;
}

/** What is cut from one stock length: how many of each piece. */
export interface LengthPattern {
  readonly stock: number;
  readonly counts: Int32Array;
  readonly times: number;
}

export interface LengthCut {
  readonly patterns: readonly LengthPattern[];
  readonly cost: number;
  /** No way of cutting costs less than this. */
  readonly bound: number;
  readonly proved: boolean;
  /** How many of each piece are not cut: too long, or the stock is used up. */
  readonly missing: Int32Array;
}

export const costOf = ({ cost, length }: StockLength): number => cost ?? length;

export const patternsCost = (patterns: readonly LengthPattern[], stocks: readonly StockLength[]): number =>
  patterns.reduce((sum, { stock, times }) => sum + times * costOf(stocks[stock] as StockLength), 0);

/** The same patterns put together. */
export function gathered(patterns: readonly LengthPattern[]): LengthPattern[] {
  const byKey = new Map<string, LengthPattern>();
  for (const pattern of patterns) {
    const key = `${pattern.stock}:${pattern.counts.join()}`;
    const times = (byKey.get(key)?.times ?? 0) + pattern.times;
    byKey.set(key, { ...pattern, times });
  }
  return [...byKey.values()].sort((a, b) => b.times - a.times);
}
