import type { RuleBook } from "../src/core/care/rule-book.ts";
import type { Condition } from "../src/core/care/truth.ts";
import type { Facts, FactValue } from "../src/core/items/facts.ts";

/** The same rules read naively: every condition walked as it is written, derived conditions worked out again wherever they are read. */
export function firedNaively(book: RuleBook, facts: Facts): string[] {
  const lookup = (name: string): FactValue | undefined => {
    if (name === "state.required_tests_missing") return facts[name] ?? missing(book, facts);
    if (!name.startsWith("cond.")) return facts[name];
    const derivation = book.derivations.find((each) => each.condition === name.slice(5));
    const truth = derivation ? walk(derivation.when, lookup) : 0;
    return truth === 0 ? undefined : truth === 2 ? "yes" : "unsure";
  };
  return book.rules
    .filter((rule) => {
      const truth = walk(rule.when, lookup);
      return truth === 2 || (truth === 1 && rule.unsure === "fire");
    })
    .map((rule) => rule.id);
}

function missing(book: RuleBook, facts: Facts): boolean {
  const format = String(facts["item.format"]);
  if (facts["item.format"] === undefined) return false;
  const asked = [...(book.requiredTests["*"] ?? []), ...(book.requiredTests[format] ?? [])];
  return asked.some((test) => facts[`obs.${test}`] === undefined);
}

type Lookup = (name: string) => FactValue | undefined;

function walk(condition: Condition, lookup: Lookup): 0 | 1 | 2 {
  if ("all" in condition)
    return condition.all.reduce<0 | 1 | 2>((worst, each) => least(worst, walk(each, lookup)), 2);
  if ("any" in condition)
    return condition.any.reduce<0 | 1 | 2>((best, each) => most(best, walk(each, lookup)), 0);
  if ("not" in condition) return (2 - walk(condition.not, lookup)) as 0 | 1 | 2;
  const given = plain(lookup(condition.f));
  const wanted = (Array.isArray(condition.v) ? condition.v : [condition.v]).map(plain);
  if (given === undefined) return 0;
  if (condition.op === "exists") return given === "" || given === "no" ? 0 : 2;
  if (["gte", "gt", "lte", "lt"].includes(condition.op)) {
    if (given === "unsure") return 1;
    const [n, limit] = [Number(given), Number(wanted[0])];
    const holds = { gte: n >= limit, gt: n > limit, lte: n <= limit, lt: n < limit }[condition.op as "gte"];
    return holds ? 2 : 0;
  }
  const values = Array.isArray(given) ? given : [given];
  if (values.some((value) => wanted.includes(value))) return 2;
  return values.includes("unsure") ||
    (Array.isArray(given) && given.includes("unknown") && !wanted.includes("unknown"))
    ? 1
    : 0;
}

const least = (a: 0 | 1 | 2, b: 0 | 1 | 2): 0 | 1 | 2 => (a < b ? a : b);
const most = (a: 0 | 1 | 2, b: 0 | 1 | 2): 0 | 1 | 2 => (a > b ? a : b);
const plain = (value: FactValue | undefined): FactValue | undefined =>
  value === true ? "yes" : value === false ? "no" : value;
