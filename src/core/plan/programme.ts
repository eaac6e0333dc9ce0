/** A mixed-integer linear programme: minimise cost·x with rows and columns between bounds. Sparse, by row. */
export interface Programme {
  readonly cost: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** 1: whole number. */
  readonly whole: Uint8Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly starts: Int32Array;
  readonly indices: Int32Array;
  readonly values: Float64Array;
}

export interface Solved {
  readonly status: "optimal" | "gap reached" | "stopped" | "infeasible" | "failed";
  readonly objective: number;
  readonly bound: number;
  readonly values: Float64Array;
  /** Price of one more unit of each row's bound; empty for a mixed-integer answer. */
  readonly duals: Float64Array;
}

export interface SolveOptions {
  /** Drop the whole-number conditions. */
  readonly relaxed: boolean;
  /** Stop when (objective − bound)/objective is at most this. */
  readonly gap: number;
}

/** The planner's way to an optimiser; `edge/solve` stands behind it. */
export type Solve = (programme: Programme, options: SolveOptions) => Promise<Solved>;

/** Collects columns and rows one by one. */
export class ProgrammeBuilder {
  private readonly columns: { cost: number; lower: number; upper: number; whole: boolean }[] = [];
  private readonly rows: { lower: number; upper: number }[] = [];
  private readonly starts: number[] = [0];
  private readonly indices: number[] = [];
  private readonly values: number[] = [];

  column(cost: number, lower: number, upper: number, whole = false): number {
    this.columns.push({ cost, lower, upper, whole });
    return this.columns.length - 1;
  }

  /** Adds lower ≤ Σ value·column ≤ upper; terms with value 0 are left out. */
  row(lower: number, upper: number, terms: readonly (readonly [column: number, value: number])[]): number {
    for (const [column, value] of terms) {
      if (value === 0) continue;
      this.indices.push(column);
      this.values.push(value);
    }
    this.starts.push(this.indices.length);
    this.rows.push({ lower, upper });
    return this.rows.length - 1;
  }

  build(): Programme {
    return {
      cost: Float64Array.from(this.columns, (each) => each.cost),
      lower: Float64Array.from(this.columns, (each) => each.lower),
      upper: Float64Array.from(this.columns, (each) => each.upper),
      whole: Uint8Array.from(this.columns, (each) => (each.whole ? 1 : 0)),
      rowLower: Float64Array.from(this.rows, (each) => each.lower),
      rowUpper: Float64Array.from(this.rows, (each) => each.upper),
      starts: Int32Array.from(this.starts),
      indices: Int32Array.from(this.indices),
      values: Float64Array.from(this.values),
    };
  }
}
