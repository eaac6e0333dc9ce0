import { type FactValue, UNSURE } from "../items/facts.ts";

/** Kleene's three values as numbers, so that "and" is the smaller, "or" the larger. */
export const NO = 0;
export const PERHAPS = 1;
export const YES = 2;
export type Truth = 0 | 1 | 2;

export const not = (a: Truth): Truth => (2 - a) as Truth;

export type Comparison = { readonly f: string; readonly op: Op; readonly v: FactValue };
export type Condition =
  | Comparison
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

export const OPS = ["eq", "in", "has", "hasAny", "gte", "gt", "lte", "lt", "exists"] as const;
export type Op = (typeof OPS)[number];

/** Values of the facts by their place in the rule book; `true` and `false` are written `yes` and `no`. */
export type Values = readonly (FactValue | undefined)[];
export type Check = (values: Values) => Truth;

/** Stands for an answer nobody has given yet: every comparison with it may come out either way. */
export const OPEN = "not asked yet";

/** `yes` and `true` are one answer, as are `no` and `false`. */
export const plain = (value: FactValue): FactValue =>
  value === true ? "yes" : value === false ? "no" : value;

/**
 * A condition as a function of the facts. Not tested is "no"; `unsure` is "perhaps" unless the condition asks for it by name;
 * writing or colour recorded as `unknown` may be any kind, so it is "perhaps" too.
 * @param place where a fact stands among the values
 */
export function compile(condition: Condition, place: (fact: string) => number): Check {
  if ("all" in condition) return allOf(condition.all.map((each) => compile(each, place)));
  if ("any" in condition) return anyOf(condition.any.map((each) => compile(each, place)));
  if ("not" in condition) {
    const part = compile(condition.not, place);
    return (values) => not(part(values));
  }
  return compileComparison(condition, place(condition.f));
}

const allOf =
  (parts: readonly Check[]): Check =>
  (values) => {
    let worst: Truth = YES;
    for (const part of parts) {
      const t = part(values);
      if (t === NO) return NO;
      if (t < worst) worst = t;
    }
    return worst;
  };

const anyOf =
  (parts: readonly Check[]): Check =>
  (values) => {
    let best: Truth = NO;
    for (const part of parts) {
      const t = part(values);
      if (t === YES) return YES;
      if (t > best) best = t;
    }
    return best;
  };

function compileComparison({ op, v }: Comparison, at: number): Check {
  if (op === "exists")
    return (values) => {
      const given = values[at];
      return given === undefined || given === "" || given === "no" ? NO : given === OPEN ? PERHAPS : YES;
    };
  if (op === "gte" || op === "gt" || op === "lte" || op === "lt") return compareNumber(at, op, Number(v));
  const names = (Array.isArray(v) ? v : [v]).map(plain);
  const unknownToo = names.includes("unknown");
  return (values) => {
    const given = values[at];
    if (given === undefined) return NO;
    if (given === OPEN) return PERHAPS;
    if (!Array.isArray(given)) return names.includes(given as string) ? YES : given === UNSURE ? PERHAPS : NO;
    if (given.some((each) => names.includes(each))) return YES;
    return given.includes(UNSURE) || (!unknownToo && given.includes("unknown")) ? PERHAPS : NO;
  };
}

function compareNumber(at: number, op: "gte" | "gt" | "lte" | "lt", wanted: number): Check {
  return (values) => {
    const n = values[at];
    if (n === UNSURE || n === OPEN) return PERHAPS;
    if (typeof n !== "number") return NO;
    return (op === "gte" ? n >= wanted : op === "gt" ? n > wanted : op === "lte" ? n <= wanted : n < wanted)
      ? YES
      : NO;
  };
}

/** Every comparison in a condition, from left to right. */
export function comparisonsOf(condition: Condition): Comparison[] {
  if ("all" in condition) return condition.all.flatMap(comparisonsOf);
  if ("any" in condition) return condition.any.flatMap(comparisonsOf);
  if ("not" in condition) return comparisonsOf(condition.not);
  return [condition];
}

/** Every fact a condition reads. */
export const factsOf = (condition: Condition): string[] => [
  ...new Set(comparisonsOf(condition).map(({ f }) => f)),
];
