/** A satisfiability solver: variables are 1, 2, 3 …, a literal is a variable or its negative. */
export interface Sat {
  readonly clause: (literals: readonly number[]) => void;
  /** Whether all clauses can hold together with the literals assumed. */
  readonly solve: (assumed: readonly number[]) => boolean;
  /** Value of a variable in the solution found last. */
  readonly value: (variable: number) => boolean;
}

export type Literal = number;
export const not = (a: Literal): Literal => -a;

/**
 * Formulas over a solver: each "and" and "or" becomes one variable with the clauses that make it equal to its parts (Tseitin 1968),
 * the same formula twice is one variable, and constants fold away.
 */
export class Circuit {
  readonly #sat: Sat;
  readonly #known = new Map<string, Literal>();
  #variables = 1;

  constructor(sat: Sat) {
    this.#sat = sat;
    sat.clause([TRUE]);
  }

  get variables(): number {
    return this.#variables;
  }

  variable(): Literal {
    this.#variables += 1;
    return this.#variables;
  }

  /** Exactly one of the literals holds. */
  exactlyOne(literals: readonly Literal[]): void {
    this.#sat.clause(literals);
    for (const [at, a] of literals.entries())
      for (const b of literals.slice(at + 1)) this.#sat.clause([-a, -b]);
  }

  and(...parts: readonly Literal[]): Literal {
    const left = [...new Set(parts)].filter((each) => each !== TRUE);
    if (left.includes(FALSE) || left.some((each) => left.includes(-each))) return FALSE;
    if (left.length === 0) return TRUE;
    if (left.length === 1) return left[0] as Literal;
    const key = left.sort((a, b) => a - b).join();
    const known = this.#known.get(key);
    if (known) return known;
    const all = this.variable();
    for (const part of left) this.#sat.clause([-all, part]);
    this.#sat.clause([all, ...left.map(not)]);
    this.#known.set(key, all);
    return all;
  }

  or(...parts: readonly Literal[]): Literal {
    return not(this.and(...parts.map(not)));
  }

  /** Holds wherever `a` holds and `b` does not. */
  without(a: Literal, b: Literal): Literal {
    return this.and(a, not(b));
  }
}

export const TRUE: Literal = 1;
export const FALSE: Literal = -1;
