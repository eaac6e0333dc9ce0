import { costOf, type LengthPattern, type LengthProblem, type StockLength } from "./length-problem.ts";

interface Open {
  readonly stock: number;
  readonly counts: Int32Array;
  room: number;
}

export interface GreedyCut {
  readonly patterns: readonly LengthPattern[];
  readonly missing: Int32Array;
}

/** Longest first into the stock length where it leaves least; a new one of the cheapest sort by its length when it fits none.
 *  Source: best fit decreasing, Johnson 1973, from memory. */
export function greedyLengths({ stocks, pieces }: LengthProblem, wanted: Int32Array): GreedyCut {
  const order = [...pieces.keys()].sort((a, b) => lengthAt(b) - lengthAt(a));
  function lengthAt(piece: number): number {
    return (pieces[piece] as { length: number }).length;
  }
  const left = stocks.map(({ count }) => count);
  const open: Open[] = [];
  const missing = new Int32Array(pieces.length);
  for (const piece of order)
    for (let n = wanted[piece] as number; n > 0; n--) {
      const into =
        tightest(open, lengthAt(piece)) ?? fresh(stocks, left, open, pieces.length, lengthAt(piece));
      if (into === null) {
        missing[piece] = n;
        break;
      }
      into.room -= lengthAt(piece);
      into.counts[piece] = (into.counts[piece] as number) + 1;
    }
  return { patterns: open.map(({ stock, counts }) => ({ stock, counts, times: 1 })), missing };
}

function tightest(open: readonly Open[], length: number): Open | null {
  let best: Open | null = null;
  for (const each of open) if (each.room >= length && (best === null || each.room < best.room)) best = each;
  return best;
}

function fresh(
  stocks: readonly StockLength[],
  left: number[],
  open: Open[],
  pieces: number,
  length: number,
): Open | null {
  const rate = (n: number): number => costOf(stocks[n] as StockLength) / (stocks[n] as StockLength).length;
  const [stock] = [...stocks.keys()]
    .filter((n) => (left[n] as number) > 0 && (stocks[n] as StockLength).length >= length)
    .sort(
      (a, b) => rate(a) - rate(b) || (stocks[b] as StockLength).length - (stocks[a] as StockLength).length,
    );
  if (stock === undefined) return null;
  left[stock] = (left[stock] as number) - 1;
  const begun = { stock, counts: new Int32Array(pieces), room: (stocks[stock] as StockLength).length };
  open.push(begun);
  return begun;
}
