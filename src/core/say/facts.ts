import type { FactKind } from "../care/rule-book.ts";
import type { Comparison, Condition } from "../care/truth.ts";
import type { FactValue } from "../items/facts.ts";
import { sayCondition } from "./conditions.ts";

type Kinds = ReadonlyMap<string, FactKind>;

/** A fact as a person reads it: `bag reading: 62 % RH`, `writing and colour: pencil, stamp ink`. */
export function sayFact(kinds: Kinds, fact: string, value: FactValue): string {
  const kind = kinds.get(fact);
  return `${kind?.says ?? fact}: ${sayValue(kind, value)}`;
}

function sayValue(kind: FactKind | undefined, value: FactValue): string {
  if (Array.isArray(value)) return value.map((each) => sayValue(kind, each)).join(", ");
  if (value === true) return "yes";
  if (value === false) return "no";
  const words = String(value).replaceAll("_", " ");
  return typeof value === "number" && kind?.unit && kind.unit !== "year" ? `${words} ${kind.unit}` : words;
}

const JOINED = { all: " and ", any: " or " } as const;

/** A condition in words: `growth seen and not: bag reading 60 % RH or more`. */
export function sayWhen(kinds: Kinds, condition: Condition, inner = false): string {
  if ("not" in condition) return `not: ${sayWhen(kinds, condition.not, true)}`;
  for (const join of ["all", "any"] as const)
    if (join in condition) {
      const parts = (condition as Record<string, readonly Condition[]>)[join] ?? [];
      if (parts.length === 0) return join === "all" ? "always" : "never";
      const words = parts.map((part) => sayWhen(kinds, part, true)).join(JOINED[join]);
      return inner && parts.length > 1 ? `(${words})` : words;
    }
  return sayComparison(kinds, condition as Comparison);
}

function sayComparison(kinds: Kinds, { f, op, v }: Comparison): string {
  if (f.startsWith("cond.")) return sayCondition(f.slice(5)).toLowerCase();
  const kind = kinds.get(f);
  const says = kind?.says ?? f;
  const values = (Array.isArray(v) ? v : [v]) as FactValue[];
  const [first] = values;
  if (op === "exists" || (values.length === 1 && (first === true || first === "yes"))) return says;
  const words = values.map((each) => sayValue(kind, each)).join(" or ");
  if (op === "gt" || op === "lt") return `${says} ${op === "gt" ? "over" : "under"} ${words}`;
  if (op === "gte" || op === "lte") return `${says} ${words} or ${op === "gte" ? "more" : "less"}`;
  return `${says}: ${words}`;
}
