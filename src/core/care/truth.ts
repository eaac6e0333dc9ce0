import { type FactValue, UNSURE } from "../items/facts.ts";

/** Kleene's three values as numbers, so that "and" is the smaller, "or" the larger. */
export const NO = 0;
export const PERHAPS = 1;
export const YES = 2;
export type Truth = 0 | 1 | 2;

export const not = (a: Truth): Truth => (2 - a) as Truth;

/** Looks a fact up by its dotted name; undefined is "not tested". */
export type Lookup = (fact: string) => FactValue | undefined;

export type Condition =
  | { readonly f: string; readonly op: Op; readonly v: FactValue }
  | { readonly all: readonly Condition[] }
  | { readonly any: readonly Condition[] }
  | { readonly not: Condition };

export const OPS = ["eq", "in", "has", "hasAny", "gte", "gt", "lte", "lt", "exists"] as const;
export type Op = (typeof OPS)[number];

type Check = (facts: Lookup) => Truth;

/** A condition as a function of the facts. Not tested is "no"; `unsure` is "perhaps" unless the condition asks for it by name. */
export function compile(condition: Condition): Check {
  if ("all" in condition) {
    const parts = condition.all.map(compile);
    return (facts) => {
      let worst: Truth = YES;
      for (const part of parts) {
        const t = part(facts);
        if (t === NO) return NO;
        if (t < worst) worst = t;
      }
      return worst;
    };
  }
  if ("any" in condition) {
    const parts = condition.any.map(compile);
    return (facts) => {
      let best: Truth = NO;
      for (const part of parts) {
        const t = part(facts);
        if (t === YES) return YES;
        if (t > best) best = t;
      }
      return best;
    };
  }
  if ("not" in condition) {
    const part = compile(condition.not);
    return (facts) => not(part(facts));
  }
  const { f, op, v } = condition;
  return (facts) => compare(facts(f), op, v);
}

function compare(given: FactValue | undefined, op: Op, wanted: FactValue): Truth {
  if (given === undefined) return NO;
  if (op === "exists") return given === "" || plain(given) === "no" ? NO : YES;
  if (op === "gte" || op === "gt" || op === "lte" || op === "lt")
    return compareNumber(given, op, Number(wanted));
  const names = Array.isArray(wanted) ? wanted : [wanted];
  const values = Array.isArray(given) ? given : [given];
  if (values.some((value) => names.some((name) => same(value, name)))) return YES;
  return values.includes(UNSURE) ? PERHAPS : NO;
}

/** Cases are written with `yes` or `true` for the same thing. */
const same = (a: unknown, b: unknown): boolean => plain(a) === plain(b);
const plain = (value: unknown): unknown => (value === true ? "yes" : value === false ? "no" : value);

function compareNumber(given: FactValue, op: "gte" | "gt" | "lte" | "lt", wanted: number): Truth {
  if (given === UNSURE) return PERHAPS;
  const n = typeof given === "number" ? given : Number.NaN;
  const holds =
    op === "gte" ? n >= wanted : op === "gt" ? n > wanted : op === "lte" ? n <= wanted : n < wanted;
  return holds ? YES : NO;
}

/** Every fact a condition reads. */
export function factsOf(condition: Condition): string[] {
  if ("all" in condition) return condition.all.flatMap(factsOf);
  if ("any" in condition) return condition.any.flatMap(factsOf);
  if ("not" in condition) return factsOf(condition.not);
  return [condition.f];
}
