import { seeded } from "../../../plan/chance.ts";
import { bestPatterns } from "./best-pattern.ts";
import { type Column, CoveringLp } from "./covering-lp.ts";
import { costOf, type LengthPattern, type LengthProblem, type StockLength } from "./length-problem.ts";

/** A pattern of the programme with how often it is used, in fractions. */
export interface UsedPattern {
  readonly column: number;
  readonly stock: number;
  readonly counts: Int32Array;
  readonly amount: number;
}

/** What one piece, and one of a limited stock length, is worth; with what all that is wanted is then worth. */
export interface Prices {
  readonly pieces: Float64Array;
  readonly stocks: Float64Array;
  readonly total: number;
}

/** Nobody cuts a part of a pattern; the programme may, and so costs at most as much as any real way of cutting.
 *  Source: Gilmore and Gomory, Operations Research 9 (1961); its bound before the end: Farley, Operations Research 38 (1990); from memory. */
export class PatternLp {
  readonly problem: LengthProblem;
  readonly lastResort: number;
  /** Costs are whole multiples of this. */
  readonly step: number;
  solves = 0;
  readonly #lengths: Int32Array;
  /** Stock lengths of which there are only so many, in the order of their rows. */
  readonly #limited: readonly number[];
  readonly #lp: CoveringLp;
  readonly #stockOf = new Map<Column, number>();

  constructor(problem: LengthProblem, wanted: Int32Array) {
    this.problem = problem;
    this.#lengths = Int32Array.from(problem.pieces, ({ length }) => length);
    this.#limited = [...problem.stocks.keys()].filter((n) => Number.isFinite(problem.stocks[n]?.count));
    this.step = problem.stocks.map(costOf).reduce(commonMeasure, 0) || 1;
    this.lastResort = 10 * Math.max(...problem.stocks.map(costOf));
    this.#lp = new CoveringLp(this.#amounts(wanted, []), this.lastResort);
  }

  /** What is still to be paid at least for what is still wanted, rounded up to a possible cost. */
  floorOf(wanted: Int32Array, fixed: readonly LengthPattern[]): number {
    this.solves++;
    this.#lp.want(this.#amounts(wanted, fixed));
    let floor = 0;
    const ended = this.#lp.solve((prices) => {
      const { columns, tooCheap } = this.#price(prices, wanted);
      floor = Math.max(floor, this.#lp.cost / (1 + tooCheap));
      return this.roundedUp(floor) >= this.roundedUp(this.#lp.cost) && tooCheap < 0.01 ? [] : columns;
    });
    return ended ? this.roundedUp(floor) : 0;
  }

  roundedUp = (cost: number): number => Math.ceil(cost / this.step - 1e-6) * this.step;

  used(): UsedPattern[] {
    return this.#lp.used().map(({ column, amount }) => {
      const { rows, gives } = this.#lp.columns[column] as Column;
      const counts = new Int32Array(this.#lengths.length);
      rows.forEach((row, n) => {
        if (row < counts.length) counts[row] = gives[n] as number;
      });
      return { column, amount, counts, stock: this.#stockOf.get(this.#lp.columns[column] as Column) ?? 0 };
    });
  }

  /** Best prices from the middle of all that are best: fewer patterns look worth their cost at them than at a corner.
   *  @param looks corners whose mean is taken */
  middlePrices(wanted: Int32Array, looks: number): Prices {
    const draw = seeded(1);
    const exact = this.#amounts(wanted, []);
    this.floorOf(wanted, []);
    const sum = new Float64Array(exact.length);
    for (let n = 0; n < looks; n++) {
      this.#lp.want(exact.map((each) => each + Math.abs(each) * 1e-3 * draw()));
      const mayBeLess = this.#lp.solve((prices) => this.#price(prices, wanted).columns);
      if (!mayBeLess) break;
      const shrink = looks * (1 + this.#price(this.#lp.prices, wanted).tooCheap);
      this.#lp.prices.forEach((price, row) => {
        sum[row] = (sum[row] as number) + Math.max(0, price) / shrink;
      });
    }
    const total = exact.reduce((all, each, row) => all + each * (sum[row] as number), 0);
    const stocks = new Float64Array(this.problem.stocks.length);
    this.#limited.forEach((stock, n) => {
      stocks[stock] = sum[this.#lengths.length + n] as number;
    });
    return { pieces: sum.slice(0, this.#lengths.length), stocks, total };
  }

  /** What each piece and each limited stock length still asks for. */
  #amounts(wanted: Int32Array, fixed: readonly LengthPattern[]): Float64Array {
    const used = (stock: number): number =>
      fixed.reduce((sum, each) => sum + (each.stock === stock ? each.times : 0), 0);
    const stocks = this.#limited.map((n) => used(n) - (this.problem.stocks[n] as StockLength).count);
    return Float64Array.from([...wanted, ...stocks]);
  }

  /** The pattern worth most from each stock length, and by what share of its cost one is too cheap at most. */
  #price(prices: Float64Array, most: Int32Array): { columns: Column[]; tooCheap: number } {
    const { stocks } = this.problem;
    const longest = Math.max(...stocks.map(({ length }) => length));
    // what costs nothing still fills what would be waste
    const dearest = Math.max(...stocks.map(costOf));
    const best = bestPatterns(
      this.#lengths,
      most,
      filling(prices, this.#lengths, (1e-7 * dearest) / longest),
      longest,
    );
    const columns: Column[] = [];
    let tooCheap = 0;
    for (const [n, stock] of stocks.entries()) {
      const place = this.#limited.indexOf(n);
      const toll = place === -1 ? 0 : (prices[this.#lengths.length + place] as number);
      const gain = (best.worth[stock.length] as number) - toll - costOf(stock);
      if (gain < 3e-7 * dearest) continue;
      tooCheap = Math.max(tooCheap, gain / costOf(stock));
      columns.push(this.#columnOf(n, place, best.setFor(stock.length)));
    }
    return { columns, tooCheap };
  }

  #columnOf(stock: number, place: number, counts: Int32Array): Column {
    const rows = [...counts.keys()].filter((piece) => (counts[piece] as number) > 0);
    const gives = rows.map((piece) => counts[piece] as number);
    if (place !== -1) {
      rows.push(this.#lengths.length + place);
      gives.push(-1);
    }
    const cost = costOf(this.problem.stocks[stock] as StockLength);
    const column = { cost, rows: Int32Array.from(rows), gives: Float64Array.from(gives) };
    this.#stockOf.set(column, stock);
    return column;
  }
}

const filling = (prices: Float64Array, lengths: Int32Array, perLength: number): Float64Array =>
  Float64Array.from(lengths, (length, n) => Math.max(0, prices[n] as number) + length * perLength);

const commonMeasure = (a: number, b: number): number => (b === 0 ? a : commonMeasure(b, a % b));
