/** A column of the programme: what it costs and what it gives to which rows. */
export interface Column {
  readonly cost: number;
  readonly rows: Int32Array;
  readonly gives: Float64Array;
}

/** Finds columns that are cheaper than their rows' prices; none when there is none. */
export type Pricing = (prices: Float64Array) => readonly Column[];

const TINY = 1e-7;
/** The inverse is made afresh after so many pivots, against the drift of rounding. */
const REFRESH = 150;
const MOST_PIVOTS = 40_000;

/**
 * Least cost·x with x ≥ 0 and Σ gives·x ≥ wanted in every row, over columns that are found as they are needed.
 * Each row may also go without, at a price so high that it is the last resort. The wanted amounts may change between two solutions.
 * Source: revised simplex with column generation, Gilmore and Gomory, Operations Research 9 (1961), from memory.
 */
export class CoveringLp {
  readonly rows: number;
  readonly columns: Column[] = [];
  #wanted: Float64Array;
  readonly #inverse: Float64Array[];
  readonly #basis: Int32Array;
  #inBasis: Set<number>;
  readonly amounts: Float64Array;
  readonly prices: Float64Array;
  #pivots = 0;

  /** @param lastResort what one unit of a row costs that goes without; more than any honest price */
  constructor(wanted: Float64Array, lastResort: number) {
    this.rows = wanted.length;
    this.#wanted = wanted;
    const unit = (row: number, sign: number, cost: number): Column => ({
      cost,
      rows: Int32Array.of(row),
      gives: Float64Array.of(sign),
    });
    for (let row = 0; row < this.rows; row++) this.columns.push(unit(row, 1, lastResort));
    for (let row = 0; row < this.rows; row++) this.columns.push(unit(row, -1, 0));
    // a row that wants less than nothing is satisfied by its own excess
    this.#basis = Int32Array.from(wanted, (each, row) => (each < 0 ? this.rows + row : row));
    this.#inBasis = new Set(this.#basis);
    this.#inverse = Array.from(wanted, (each, row) => {
      const line = new Float64Array(this.rows);
      line[row] = each < 0 ? -1 : 1;
      return line;
    });
    this.amounts = new Float64Array(this.rows);
    this.prices = new Float64Array(this.rows);
    this.#recompute();
  }

  get cost(): number {
    let sum = 0;
    for (let row = 0; row < this.rows; row++) sum += (this.amounts[row] as number) * this.#columnIn(row).cost;
    return sum;
  }

  /** Columns in use with their amounts, those of going without left out. */
  used(): { readonly column: number; readonly amount: number }[] {
    return [...this.#basis.entries()]
      .map(([row, column]) => ({ column, amount: this.amounts[row] as number }))
      .filter(({ column, amount }) => column >= 2 * this.rows && amount > 1e-7);
  }

  goesWithout(): boolean {
    return this.#basis.some((column, row) => column < this.rows && (this.amounts[row] as number) > 1e-6);
  }

  /** Solves anew for other amounts; what was optimal stays dear enough, so only shortages are mended first. */
  want(wanted: Float64Array): void {
    this.#wanted = wanted;
    this.#recompute();
    for (this.#pivots = 0; this.#pivots < MOST_PIVOTS && this.#mendShortage(); );
  }

  /** Goes on until no column known or found is worth taking. @returns whether it ended by itself */
  solve(find: Pricing): boolean {
    for (this.#pivots = 0; this.#pivots < MOST_PIVOTS; ) {
      const known = this.#cheapestKnown();
      if (known !== -1) {
        if (!this.#enter(known)) return true;
        continue;
      }
      const found = find(this.prices);
      if (found.length === 0) return true;
      for (const column of found) this.columns.push(column);
    }
    return false;
  }

  reducedCost(column: Column): number {
    let cost = column.cost;
    for (let n = 0; n < column.rows.length; n++)
      cost -= (this.prices[column.rows[n] as number] as number) * (column.gives[n] as number);
    return cost;
  }

  #columnIn(row: number): Column {
    return this.columns[this.#basis[row] as number] as Column;
  }

  #cheapestKnown(): number {
    let best = -1;
    let least = -1e-7;
    for (let n = this.rows; n < this.columns.length; n++) {
      const cost = this.reducedCost(this.columns[n] as Column);
      if (cost < least && !this.#inBasis.has(n)) {
        least = cost;
        best = n;
      }
    }
    return best;
  }

  /** The column in terms of the basis. */
  #direction({ rows, gives }: Column): Float64Array {
    const direction = new Float64Array(this.rows);
    for (let row = 0; row < this.rows; row++) {
      const line = this.#inverse[row] as Float64Array;
      let sum = 0;
      for (let n = 0; n < rows.length; n++) sum += (line[rows[n] as number] as number) * (gives[n] as number);
      direction[row] = sum;
    }
    return direction;
  }

  #enter(entering: number): boolean {
    const direction = this.#direction(this.columns[entering] as Column);
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.rows; row++) {
      const step = direction[row] as number;
      if (step < TINY) continue;
      const ratio = Math.max(0, this.amounts[row] as number) / step;
      const isBetter =
        ratio < least - 1e-12 || (ratio < least + 1e-12 && step > (direction[leaving] as number));
      if (isBetter) [leaving, least] = [row, Math.min(least, ratio)];
    }
    if (leaving === -1) return false;
    this.#pivot(entering, leaving, direction);
    return true;
  }

  /** One step of the dual simplex. @returns false when nothing is short */
  #mendShortage(): boolean {
    let leaving = -1;
    let least = -1e-9;
    for (let row = 0; row < this.rows; row++)
      if ((this.amounts[row] as number) < least) [leaving, least] = [row, this.amounts[row] as number];
    if (leaving === -1) return false;
    const line = this.#inverse[leaving] as Float64Array;
    let entering = -1;
    let cheapest = Number.POSITIVE_INFINITY;
    let steepest = 0;
    for (let n = 0; n < this.columns.length; n++) {
      const { rows, gives } = this.columns[n] as Column;
      let along = 0;
      for (let k = 0; k < rows.length; k++)
        along += (line[rows[k] as number] as number) * (gives[k] as number);
      if (along > -TINY || this.#inBasis.has(n)) continue;
      const ratio = Math.max(0, this.reducedCost(this.columns[n] as Column)) / -along;
      if (ratio < cheapest - 1e-10 || (ratio < cheapest + 1e-10 && -along > steepest))
        [entering, cheapest, steepest] = [n, Math.min(cheapest, ratio), -along];
    }
    if (entering === -1) return false;
    this.#pivot(entering, leaving, this.#direction(this.columns[entering] as Column));
    return true;
  }

  #pivot(entering: number, leaving: number, direction: Float64Array): void {
    const own = this.#inverse[leaving] as Float64Array;
    const pivot = direction[leaving] as number;
    for (let n = 0; n < this.rows; n++) own[n] = (own[n] as number) / pivot;
    for (let row = 0; row < this.rows; row++) {
      const factor = direction[row] as number;
      if (row === leaving || factor === 0) continue;
      const line = this.#inverse[row] as Float64Array;
      for (let n = 0; n < this.rows; n++) line[n] = (line[n] as number) - factor * (own[n] as number);
    }
    this.#inBasis.delete(this.#basis[leaving] as number);
    this.#inBasis.add(entering);
    this.#basis[leaving] = entering;
    if (++this.#pivots % REFRESH === 0) this.#invert();
    this.#recompute();
  }

  /** Amounts and prices from the inverse. */
  #recompute(): void {
    this.prices.fill(0);
    for (let row = 0; row < this.rows; row++) {
      const line = this.#inverse[row] as Float64Array;
      const { cost } = this.#columnIn(row);
      let amount = 0;
      for (let n = 0; n < this.rows; n++) amount += (line[n] as number) * (this.#wanted[n] as number);
      this.amounts[row] = amount;
      if (cost !== 0)
        for (let n = 0; n < this.rows; n++)
          this.prices[n] = (this.prices[n] as number) + cost * (line[n] as number);
    }
  }

  /** The inverse of the basis by elimination with the largest pivot of each column. */
  #invert(): void {
    const size = this.rows;
    const basis: Float64Array[] = Array.from({ length: size }, () => new Float64Array(2 * size));
    for (let at = 0; at < size; at++) {
      const { rows, gives } = this.#columnIn(at);
      for (let n = 0; n < rows.length; n++)
        (basis[rows[n] as number] as Float64Array)[at] = gives[n] as number;
      (basis[at] as Float64Array)[size + at] = 1;
    }
    for (let at = 0; at < size; at++) {
      let most = at;
      for (let row = at + 1; row < size; row++)
        if (magnitude(basis, row, at) > magnitude(basis, most, at)) most = row;
      [basis[at], basis[most]] = [basis[most] as Float64Array, basis[at] as Float64Array];
      eliminate(basis, at);
    }
    for (let row = 0; row < size; row++)
      (this.#inverse[row] as Float64Array).set((basis[row] as Float64Array).subarray(size));
  }
}

const magnitude = (lines: readonly Float64Array[], row: number, at: number): number =>
  Math.abs((lines[row] as Float64Array)[at] as number);

function eliminate(lines: readonly Float64Array[], at: number): void {
  const own = lines[at] as Float64Array;
  const pivot = own[at] as number;
  for (let n = at; n < own.length; n++) own[n] = (own[n] as number) / pivot;
  for (let row = 0; row < lines.length; row++) {
    const line = lines[row] as Float64Array;
    const factor = line[at] as number;
    if (row === at || factor === 0) continue;
    for (let n = at; n < own.length; n++) line[n] = (line[n] as number) - factor * (own[n] as number);
  }
}
