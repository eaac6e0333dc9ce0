import type { FactValue } from "../items/facts.ts";
import type { Care, Forbid, Ruling } from "./care.ts";
import { decide } from "./decide.ts";
import type { RuleBook } from "./rule-book.ts";

const GROUPS = [
  "item",
  "obs",
  "state",
  "person",
  "room",
  "site",
  "task",
  "tool",
  "station",
  "plan",
  "stock",
  "record",
] as const;

/** The answer to one case, as plain JSON. */
export interface CaseAnswer {
  readonly id?: string;
  readonly conditions: readonly string[];
  readonly unsureConditions: readonly string[];
  readonly require: readonly string[];
  readonly forbid: readonly string[];
  readonly prefer: readonly string[];
  readonly warn: readonly string[];
  readonly escalate: readonly string[];
  readonly order: readonly (readonly [string, string])[];
  readonly later: readonly string[];
  readonly hold: boolean;
  readonly missingTests: readonly string[];
  readonly until: Readonly<Record<string, string>>;
  /** Where it stays meanwhile. */
  readonly rest: string;
  readonly reasons: readonly {
    readonly verb: string;
    readonly action: string;
    readonly rule: string;
    readonly tier: number;
    readonly text: string;
    readonly why: string;
    readonly source: string;
    readonly sourceStatus: string;
    readonly because: readonly string[];
    readonly fromUnsure: boolean;
  }[];
}

/** Facts of a case `{ item: {…}, obs: {…}, state: {…}, … }` under their dotted names. */
export function factsOfCase(given: Readonly<Record<string, unknown>>): Record<string, FactValue> {
  const facts: Record<string, FactValue> = {};
  for (const group of GROUPS) {
    const values = given[group];
    if (typeof values !== "object" || values === null) continue;
    for (const [name, value] of Object.entries(values))
      if (value !== null && value !== undefined) facts[`${group}.${name}`] = value as FactValue;
  }
  return facts;
}

/** Decides one case and says why, rule by rule. */
export function decideCase(book: RuleBook, given: Readonly<Record<string, unknown>>): CaseAnswer {
  const care = decide(book, factsOfCase(given));
  const names = (rulings: readonly Ruling[]): string[] => rulings.map((ruling) => ruling.action);
  return {
    ...(given.id === undefined ? {} : { id: String(given.id) }),
    conditions: care.conditions,
    unsureConditions: care.unsureConditions,
    require: names(care.require),
    forbid: names(care.forbid),
    prefer: names(care.prefer),
    warn: names(care.warn),
    escalate: names(care.escalate),
    order: care.order,
    later: names(care.later),
    hold: care.hold,
    missingTests: care.missingTests,
    until: Object.fromEntries(care.forbid.map((each) => [each.action, untilWords(book, each)])),
    rest: care.rest?.says ?? "",
    reasons: reasonsOf(book, care),
  };
}

/** A ban that never ends for the team is said as that alone; others say all that must happen first. */
function untilWords(book: RuleBook, ban: Forbid): string {
  const ends = ban.until.includes("never") ? ["never"] : ban.until;
  return ends.map((until) => book.endings[until] ?? until).join("; ");
}

function reasonsOf(book: RuleBook, care: Care): CaseAnswer["reasons"] {
  const verbs = ["require", "forbid", "prefer", "warn", "escalate"] as const;
  const rules = new Map(book.rules.map((rule) => [rule.id, rule]));
  return verbs.flatMap((verb) =>
    care[verb].flatMap((ruling) =>
      ruling.reasons.map((reason) => ({
        verb,
        action: ruling.action,
        ...reason,
        because: becauseOf(rules.get(reason.rule)?.reads ?? [], care),
      })),
    ),
  );
}

/** The facts a rule read and found, as `obs.rub_mark = clear`; conditions as what they came out as. */
export function becauseOf(reads: readonly string[], care: Care): string[] {
  return reads.flatMap((name) => {
    const value = name.startsWith("cond.") ? conditionWord(name.slice(5), care) : care.facts[name];
    return value === undefined ? [] : [`${name} = ${Array.isArray(value) ? value.join(" + ") : value}`];
  });
}

const conditionWord = (condition: string, care: Care): FactValue | undefined =>
  care.conditions.includes(condition)
    ? "yes"
    : care.unsureConditions.includes(condition)
      ? "unsure"
      : undefined;
