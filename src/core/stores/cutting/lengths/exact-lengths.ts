import { ProgrammeBuilder, type Solve } from "../../../plan/programme.ts";
import { costOf, type LengthPattern, type LengthProblem, type StockLength } from "./length-problem.ts";
import type { Prices } from "./pattern-lp.ts";

interface Pattern {
  readonly stock: number;
  readonly counts: Int32Array;
}

/**
 * Every pattern that a way of cutting below a cost can contain: dearer by no more than that cost lies over what all is worth.
 * @returns null when there are more than `most`
 * Source: enumeration by reduced cost, Baldacci, Christofides and Mingozzi, Mathematical Programming 115 (2008), from memory.
 */
export function patternsBelow(
  cost: number,
  { stocks, pieces }: LengthProblem,
  wanted: Int32Array,
  prices: Prices,
  most: number,
): Pattern[] | null {
  const slack = cost - prices.total + 1e-6;
  const longest = Math.max(...stocks.map(({ length }) => length));
  const order = [...pieces.keys()]
    .filter((piece) => (wanted[piece] as number) > 0)
    .sort((a, b) => (pieces[b]?.length ?? 0) - (pieces[a]?.length ?? 0));
  const lengths = order.map((piece) => pieces[piece]?.length ?? 0);
  const worths = order.map((piece) => prices.pieces[piece] as number);
  const counts = order.map((piece) => wanted[piece] as number);
  const rest = worthOfRest(lengths, counts, worths, longest);
  const found: Pattern[] = [];
  const now = new Int32Array(pieces.length);
  const walk = (stock: number, at: number, room: number, need: number): boolean => {
    if (need > ((rest[at] as Float64Array)[room] as number) + 1e-9) return true;
    if (at === order.length) return found.push({ stock, counts: now.slice() }) <= most;
    const [piece, length, worth] = [order[at] as number, lengths[at] as number, worths[at] as number];
    for (let n = Math.min(counts[at] as number, Math.floor(room / length)); n >= 0; n--) {
      now[piece] = n;
      if (!walk(stock, at + 1, room - n * length, need - n * worth)) return false;
    }
    return true;
  };
  for (const [stock, each] of stocks.entries()) {
    now.fill(0);
    if (!walk(stock, 0, each.length, costOf(each) + (prices.stocks[stock] as number) - slack)) return null;
  }
  return found.filter(({ counts: some }) => some.some((count) => count > 0));
}

/** Worth of the best set from the pieces at and after each place, for every room. */
function worthOfRest(
  lengths: readonly number[],
  counts: readonly number[],
  worths: readonly number[],
  longest: number,
): Float64Array[] {
  const rest = [new Float64Array(longest + 1)];
  for (let at = lengths.length - 1; at >= 0; at--) {
    const [length, worth, count] = [lengths[at] as number, worths[at] as number, counts[at] as number];
    const after = rest[0] as Float64Array;
    const own = Float64Array.from(after, (best, room) => {
      let most = best;
      for (let n = 1; n <= count && n * length <= room; n++)
        most = Math.max(most, (after[room - n * length] as number) + n * worth);
      return most;
    });
    rest.unshift(own);
  }
  return rest;
}

/** Puts patterns together so that every piece is cut as often as it is wanted, for at most this cost.
 *  @returns the patterns; "none" when it is proved that there is no way; "unknown" when the search ended before */
export async function exactLengths(
  cost: number,
  patterns: readonly Pattern[],
  { stocks }: LengthProblem,
  wanted: Int32Array,
  solve: Solve,
): Promise<LengthPattern[] | "none" | "unknown"> {
  const builder = new ProgrammeBuilder();
  const times = Math.max(...wanted);
  const columns = patterns.map(() => builder.column(0, 0, times, true));
  const all = [...columns.entries()];
  wanted.forEach((count, piece) => {
    if (count === 0) return;
    const terms = all.map(([n, column]) => [column, patterns[n]?.counts[piece] ?? 0] as const);
    builder.row(count, count, terms);
  });
  stocks.forEach(({ count }, stock) => {
    if (!Number.isFinite(count)) return;
    const terms = all.map(([n, column]) => [column, patterns[n]?.stock === stock ? 1 : 0] as const);
    builder.row(0, count, terms);
  });
  const costs = all.map(
    ([n, column]) => [column, costOf(stocks[patterns[n]?.stock ?? 0] as StockLength)] as const,
  );
  builder.row(0, cost + 1e-6, costs);
  const solved = await solve(builder.build(), { relaxed: false, gap: 0 });
  if (solved.status === "infeasible") return "none";
  const used = patterns.map((pattern, n) => ({ ...pattern, times: Math.round(solved.values[n] ?? 0) }));
  const cut = wanted.map((_, piece) =>
    used.reduce((sum, each) => sum + each.times * (each.counts[piece] as number), 0),
  );
  const isWhole = cut.every((count, piece) => count === wanted[piece]);
  return isWhole ? used.filter(({ times: often }) => often > 0) : "unknown";
}
