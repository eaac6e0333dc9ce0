import type { Facts, FactValue } from "../../items/facts.ts";
import type { RuleBook } from "../rule-book.ts";
import { type Comparison, type Condition, comparisonsOf, plain } from "../truth.ts";
import { type Circuit, FALSE, type Literal, not, TRUE } from "./circuit.ts";

/** Two literals for a three-valued truth: surely yes, and at least perhaps. */
export interface Both {
  readonly yes: Literal;
  readonly maybe: Literal;
}

const NEVER: Both = { yes: FALSE, maybe: FALSE };

/** The values of one fact that the rules can tell apart, each with the literal that says it is so. */
export interface FactSpace {
  readonly fact: string;
  /** One of these holds; `null` is "not tested". Numbers are named by a value inside their stretch. */
  readonly options: readonly { readonly value: FactValue | null; readonly holds: Literal }[];
  /** A list of words: any of these may hold together. */
  readonly members: readonly { readonly value: string; readonly holds: Literal }[];
}

/** Every item, person, place and moment the rules can tell apart: one literal for each value of each fact. */
export class FactSpaces {
  readonly spaces: ReadonlyMap<string, FactSpace>;

  constructor(circuit: Circuit, book: RuleBook) {
    const asked = comparisonsByFact(book);
    const spaces = new Map<string, FactSpace>();
    for (const [fact, comparisons] of asked) spaces.set(fact, spaceOf(circuit, book, fact, comparisons));
    this.spaces = spaces;
  }

  /** How many different sets of facts there are, as a power of ten. */
  get decimalDigits(): number {
    let digits = 0;
    for (const { options, members } of this.spaces.values())
      digits += Math.log10(Math.max(1, options.length)) + members.length * Math.log10(2);
    return digits;
  }
}

/** Comparisons of rules, derivations and resting states by the fact they read; the conditions and the Door's own fact are derived. */
function comparisonsByFact(book: RuleBook): Map<string, Comparison[]> {
  const asked = new Map<string, Comparison[]>();
  const add = (comparison: Comparison): void => {
    if (comparison.f.startsWith("cond.") || comparison.f === DOOR) return;
    asked.set(comparison.f, [...(asked.get(comparison.f) ?? []), comparison]);
  };
  for (const { when } of [...book.derivations, ...book.rules, ...book.rests])
    comparisonsOf(when).forEach(add);
  const everyFormat = book.facts.get("item.format")?.values ?? [];
  add({ f: "item.format", op: "in", v: everyFormat });
  for (const tests of Object.values(book.requiredTests))
    for (const test of tests) if (!asked.has(`obs.${test}`)) asked.set(`obs.${test}`, []);
  return asked;
}

export const DOOR = "state.required_tests_missing";

function spaceOf(
  circuit: Circuit,
  book: RuleBook,
  fact: string,
  comparisons: readonly Comparison[],
): FactSpace {
  const kind = book.facts.get(fact);
  const wanted = comparisons.flatMap(({ v }) => (Array.isArray(v) ? v : [v]) as FactValue[]).map(plain);
  if (kind?.type === "list") {
    const words = [...new Set([...wanted.map(String), ...(fact === "item.media" ? ["unknown"] : [])])];
    return {
      fact,
      options: [],
      members: words.map((value) => ({ value, holds: circuit.variable() })),
    };
  }
  const values: (FactValue | null)[] =
    kind?.type === "number"
      ? stretches(wanted.map(Number))
      : [...new Set([...wanted, ...(kind?.type === "yesNo" ? ["yes", "no"] : ["something else"])])];
  const open = kind?.type === "text" ? [] : ["unsure"];
  const options = [...new Set([...values, ...open, null])].map((value) => ({
    value,
    holds: circuit.variable(),
  }));
  circuit.exactlyOne(options.map(({ holds }) => holds));
  return { fact, options, members: [] };
}

/** A number inside each stretch that the thresholds cut, and each threshold itself. */
function stretches(thresholds: readonly number[]): number[] {
  const cuts = [...new Set(thresholds.filter(Number.isFinite))].sort((a, b) => a - b);
  if (cuts.length === 0) return [0];
  const between = cuts.slice(1).map((cut, at) => (cut + (cuts[at] as number)) / 2);
  const [first = 0, last = 0] = [cuts[0], cuts.at(-1)];
  return [...new Set([first - 1, ...cuts, ...between, last + 1])].sort((a, b) => a - b);
}

/** The facts of a world: free, or some of them fixed to a value (null: not tested). */
export class World {
  readonly #spaces: FactSpaces;
  readonly #circuit: Circuit;
  readonly #fixed: ReadonlyMap<string, FactValue | null>;

  constructor(circuit: Circuit, spaces: FactSpaces, fixed: Readonly<Record<string, FactValue | null>> = {}) {
    this.#circuit = circuit;
    this.#spaces = spaces;
    this.#fixed = new Map(Object.entries(fixed));
  }

  /** Holds where the fact has no value. A list without a word is a list nobody filled. */
  absent(fact: string): Literal {
    return this.is(fact, null);
  }

  /** Holds where the fact has this value. */
  is(fact: string, value: FactValue | null): Literal {
    const fixed = this.#fixed.get(fact);
    if (fixed !== undefined) return fixed === value ? TRUE : FALSE;
    const space = this.#spaces.spaces.get(fact);
    if (!space) return value === null ? TRUE : FALSE;
    if (space.members.length > 0)
      return value === null
        ? this.#circuit.and(...space.members.map(({ holds }) => not(holds)))
        : (space.members.find((each) => each.value === value)?.holds ?? FALSE);
    return space.options.find((option) => option.value === value)?.holds ?? FALSE;
  }

  /** A comparison over the values of its fact. */
  compare({ f, op, v }: Comparison): Both {
    const wanted = ((Array.isArray(v) ? v : [v]) as FactValue[]).map(plain);
    const space = this.#spaces.spaces.get(f);
    if (!space) return NEVER;
    if (space.members.length > 0) {
      const yes = this.#circuit.or(...wanted.map((each) => this.is(f, each)));
      const unknown = wanted.includes("unknown") ? FALSE : this.is(f, "unknown");
      return { yes, maybe: this.#circuit.or(yes, unknown) };
    }
    const right = space.options.filter(
      ({ value }) => value !== null && value !== "unsure" && satisfies(value, op, wanted),
    );
    const named = wanted.includes("unsure") ? [this.is(f, "unsure")] : [];
    const yes = this.#circuit.or(...right.map(({ value }) => this.is(f, value)), ...named);
    return { yes, maybe: op === "exists" ? yes : this.#circuit.or(yes, this.is(f, "unsure")) };
  }

  /** The facts of the solution found last. */
  factsIn(value: (variable: number) => boolean): Facts {
    const facts: Record<string, FactValue> = {};
    for (const [fact, { options, members }] of this.#spaces.spaces) {
      const fixed = this.#fixed.get(fact);
      const words = members.filter(({ holds }) => value(holds)).map((each) => each.value);
      const chosen = options.find(({ holds }) => value(holds))?.value;
      if (fixed !== undefined) {
        if (fixed !== null) facts[fact] = fixed;
      } else if (words.length > 0) facts[fact] = words;
      else if (chosen !== undefined && chosen !== null) facts[fact] = chosen;
    }
    return facts;
  }
}

function satisfies(value: FactValue, op: Comparison["op"], wanted: readonly FactValue[]): boolean {
  const [first] = wanted;
  switch (op) {
    case "exists":
      return value !== "" && value !== "no";
    case "gte":
      return Number(value) >= Number(first);
    case "gt":
      return Number(value) > Number(first);
    case "lte":
      return Number(value) <= Number(first);
    case "lt":
      return Number(value) < Number(first);
    default:
      return wanted.includes(value);
  }
}

/** A condition as two literals, conditions (`cond.…`) looked up among those derived before. */
export function truthOf(
  circuit: Circuit,
  condition: Condition,
  lookup: (comparison: Comparison) => Both,
): Both {
  if ("all" in condition) {
    const parts = condition.all.map((each) => truthOf(circuit, each, lookup));
    return {
      yes: circuit.and(...parts.map((each) => each.yes)),
      maybe: circuit.and(...parts.map((each) => each.maybe)),
    };
  }
  if ("any" in condition) {
    const parts = condition.any.map((each) => truthOf(circuit, each, lookup));
    return {
      yes: circuit.or(...parts.map((each) => each.yes)),
      maybe: circuit.or(...parts.map((each) => each.maybe)),
    };
  }
  if ("not" in condition) {
    const { yes, maybe } = truthOf(circuit, condition.not, lookup);
    return { yes: not(maybe), maybe: not(yes) };
  }
  return lookup(condition);
}
