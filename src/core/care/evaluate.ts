import type { Facts, FactValue } from "../items/facts.ts";
import type { Reason } from "./reason.ts";
import type { Rest, Rule, RuleBook } from "./rule-book.ts";
import { NO, OPEN, PERHAPS, plain, type Values, YES } from "./truth.ts";

/** A rule that acts, and whether only because an `unsure` counts as the safer side. */
export interface Firing {
  readonly rule: Rule;
  readonly unsure: boolean;
  readonly reason: Reason;
}

/** What the rules say to one set of facts, before conflicts are settled. */
export interface Evaluation {
  readonly facts: Facts;
  readonly conditions: readonly string[];
  /** Conditions that an `unsure` leaves open. */
  readonly unsureConditions: readonly string[];
  readonly missingTests: readonly string[];
  readonly fired: readonly Firing[];
  /** Rules that wait on an `unsure`. */
  readonly waiting: readonly Rule[];
  /** Resting states that apply, first of the list first. */
  readonly rests: readonly Rest[];
}

/**
 * Runs the rules over facts named `obs.…`, `item.…`, `state.…`, `site.…`, `person.…`, `task.…`, `plan.…` and so on.
 * What is absent was not tested: it makes a comparison false, and a must-ask test keeps the item at the Door (N01).
 */
export function evaluate(book: RuleBook, facts: Facts): Evaluation {
  const missingTests = missingTestsOf(book, facts);
  const values = valuesOf(book, facts, missingTests);
  const conditions: string[] = [];
  const unsureConditions: string[] = [];
  for (const each of book.derivations) {
    const truth = each.holds(values);
    if (truth === NO) continue;
    (truth === YES ? conditions : unsureConditions).push(each.condition);
    values[book.places.get(`cond.${each.condition}`) as number] = truth === YES ? "yes" : "unsure";
  }
  const fired: Firing[] = [];
  const waiting: Rule[] = [];
  for (const rule of book.rules) {
    const truth = rule.holds(values);
    if (truth === NO) continue;
    if (truth === PERHAPS && rule.unsure === "hold") waiting.push(rule);
    else fired.push(firing(rule, truth === PERHAPS));
  }
  const rests = book.rests.filter((rest) => rest.holds(values) !== NO);
  return { facts, conditions, unsureConditions, missingTests, fired, waiting, rests };
}

/** The facts as the checks read them, conditions as they came out. */
export function valuesWith(book: RuleBook, { facts, conditions, unsureConditions }: Found): Values {
  const values = valuesOf(book, facts, []);
  for (const name of conditions) values[book.places.get(`cond.${name}`) as number] = "yes";
  for (const name of unsureConditions) values[book.places.get(`cond.${name}`) as number] = "unsure";
  return values;
}
type Found = Pick<Evaluation, "facts" | "conditions" | "unsureConditions">;

function valuesOf(book: RuleBook, facts: Facts, missing: readonly string[]): (FactValue | undefined)[] {
  const values = new Array<FactValue | undefined>(book.places.size).fill(undefined);
  for (const name in facts) {
    const at = book.places.get(name);
    if (at !== undefined) values[at] = plain(facts[name] as FactValue);
  }
  const door = book.places.get("state.required_tests_missing");
  if (door !== undefined) values[door] ??= missing.length > 0 ? "yes" : "no";
  return values;
}

function missingTestsOf(book: RuleBook, facts: Facts): string[] {
  const format = facts["item.format"];
  if (typeof format !== "string") return [];
  const asked = [...(book.requiredTests["*"] ?? []), ...(book.requiredTests[format] ?? [])];
  return asked.filter((test) => facts[`obs.${test}`] === undefined);
}

/** Where an open answer stands (`OPEN`), the rules that may still go either way, and the facts they may hang on. */
export function undecided(
  book: RuleBook,
  facts: Facts,
  open: ReadonlySet<string>,
): { readonly rules: Rule[]; readonly loose: ReadonlySet<string> } {
  const values = valuesOf(book, facts, []);
  const loose = new Set(open);
  for (const each of book.derivations) {
    const truth = each.holds(values);
    const name = `cond.${each.condition}`;
    if (truth === NO) continue;
    const hangs = truth === PERHAPS && each.reads.some((fact) => loose.has(fact));
    if (hangs) loose.add(name);
    values[book.places.get(name) as number] = hangs ? OPEN : truth === YES ? "yes" : "unsure";
  }
  const rules = book.rules.filter(
    (rule) => rule.holds(values) === PERHAPS && rule.reads.some((fact) => loose.has(fact)),
  );
  return { rules, loose };
}

const firings = new WeakMap<Rule, readonly [Firing, Firing]>();

function firing(rule: Rule, unsure: boolean): Firing {
  let both = firings.get(rule);
  if (!both) {
    const of = (fromUnsure: boolean): Firing => ({
      rule,
      unsure: fromUnsure,
      reason: { ...rule.reason, fromUnsure },
    });
    both = [of(false), of(true)];
    firings.set(rule, both);
  }
  return both[unsure ? 1 : 0];
}

/** Whether a rule's own condition holds for the facts of an example, conditions derived first. */
export function truthOfRule(book: RuleBook, rule: Rule, facts: Facts): "yes" | "no" | "unsure" {
  const values = valuesOf(book, facts, missingTestsOf(book, facts));
  for (const each of book.derivations) {
    const at = book.places.get(`cond.${each.condition}`) as number;
    if (values[at] !== undefined) continue;
    const truth = each.holds(values);
    if (truth !== NO) values[at] = truth === YES ? "yes" : "unsure";
  }
  return wordFor(rule, values);
}

const wordFor = (rule: Rule, values: Values): "yes" | "no" | "unsure" => {
  const truth = rule.holds(values);
  return truth === YES ? "yes" : truth === PERHAPS ? "unsure" : "no";
};
