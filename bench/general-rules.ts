import { Engine } from "json-rules-engine";
import type { RuleBook } from "../src/core/care/rule-book.ts";
import type { Comparison, Condition } from "../src/core/care/truth.ts";
import type { Facts, FactValue } from "../src/core/items/facts.ts";

/** The same conditions in a general-purpose rules library. It knows yes and no only, so `unsure` is a value like any other there. */
export function generalEngine(book: RuleBook): (facts: Facts) => Promise<number> {
  const engine = new Engine([], { allowUndefinedFacts: true });
  engine.addOperator("among", (given: FactValue | undefined, wanted: unknown) =>
    [given].flat().some((each) => (wanted as unknown[]).includes(each)),
  );
  engine.addOperator("at", (given: FactValue | undefined, wanted: unknown) => {
    const [op, limit] = wanted as [string, number];
    if (typeof given !== "number") return false;
    return op === "gte"
      ? given >= limit
      : op === "gt"
        ? given > limit
        : op === "lte"
          ? given <= limit
          : given < limit;
  });
  const derived = new Map(book.derivations.map((each) => [each.condition, each.when]));
  for (const rule of book.rules)
    engine.addRule({
      conditions: { all: [asTheirs(rule.when, derived)] } as never,
      event: { type: rule.id },
    });
  return async (facts) => (await engine.run({ ...facts })).events.length;
}

function asTheirs(condition: Condition, derived: ReadonlyMap<string, Condition>): object {
  if ("all" in condition) return { all: condition.all.map((each) => asTheirs(each, derived)) };
  if ("any" in condition) return { any: condition.any.map((each) => asTheirs(each, derived)) };
  if ("not" in condition) return { not: asTheirs(condition.not, derived) };
  const when = condition.f.startsWith("cond.") ? derived.get(condition.f.slice(5)) : undefined;
  return when ? asTheirs(when, derived) : comparison(condition);
}

function comparison({ f, op, v }: Comparison): object {
  const numeric = ["gte", "gt", "lte", "lt"].includes(op);
  const wanted = [v].flat().flatMap((each: unknown) => (each === true ? ["yes", true] : [each]));
  return numeric
    ? { fact: f, operator: "at", value: [op, v] }
    : { fact: f, operator: "among", value: wanted };
}
