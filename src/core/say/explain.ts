import type { Care, Route } from "../care/care.ts";
import type { ItemCare } from "../care/item-care.ts";
import { nextQuestion } from "../care/questions.ts";
import type { Reason, Tier } from "../care/reason.ts";
import type { Consequence, Derivation, Rule, RuleBook } from "../care/rule-book.ts";
import { type Grade, gradeOf, severitiesOf, type Urgency, urgencyOf } from "../care/severity.ts";
import type { FactValue } from "../items/facts.ts";
import { hasWords, sayDo, sayNot } from "./actions.ts";
import { sayAct, sayCondition } from "./conditions.ts";
import { sayFact } from "./facts.ts";

/** One rule as it bears on one item. */
export interface RuleSaid {
  readonly rule: string;
  readonly text: string;
  readonly why: string;
  /** What was seen that brought it in. */
  readonly because: readonly string[];
  readonly says: readonly string[];
  readonly source: string;
  readonly trust: string;
  readonly fromUnsure: boolean;
}

/** Why an item is treated as it is, in sentences. */
export interface Explanation {
  readonly item: string;
  readonly title: string;
  readonly grade: Grade;
  readonly urgency: Urgency;
  readonly outcome: string;
  readonly rest: string;
  readonly steps: readonly string[];
  readonly parts: readonly PartExplained[];
}

export interface PartExplained {
  /** Empty: the body of the item. */
  readonly name: string;
  readonly saw: readonly string[];
  readonly follows: readonly {
    readonly condition: string;
    readonly because: string;
    readonly trust: string;
  }[];
  readonly tiers: readonly { readonly tier: Tier; readonly rules: readonly RuleSaid[] }[];
  readonly open: readonly string[];
  /** Nothing that could still be found at the Door would change this. */
  readonly settled: boolean;
}

export const TIER_WORDS: Readonly<Record<Tier, string>> = {
  1: "For people",
  2: "For the item",
  3: "For evidence, order and the custodian",
  4: "For pace and cost",
};

/** Everything there is to say about one item: what was seen, what follows, what is forbidden and until when, by which rule and source. */
export function explain(book: RuleBook, care: ItemCare, route: Route): Explanation {
  const all = [{ name: "", care: care.whole }, ...care.parts];
  const severities = all.flatMap((part) => severitiesOf(book, part.care));
  return {
    item: care.item.id,
    title: care.item.title,
    grade: gradeOf(route, severities),
    urgency: urgencyOf(severities.map((each) => each.condition)),
    outcome: outcomeOf(route),
    rest: care.whole.rest?.says ?? "",
    steps: route.steps.map((step) => `${step.room}: ${sayAct(step.act).toLowerCase()}`),
    parts: all.map((part) => explainPart(book, part.name, part.care)),
  };
}

function outcomeOf({ destiny, stoppedBy, askWho }: Route): string {
  const asks = askWho.map((who) => sayDo(who).toLowerCase()).join(", ");
  switch (destiny) {
    case "done":
      return "It is boxed.";
    case "at the Door":
      return "It stays at the Door: a must-ask test has no answer.";
    case "set aside":
      return `It is set aside: ${stoppedBy[0]?.text ?? "a rule stops it"}${asks ? ` Now: ${asks}.` : ""}`;
    default:
      return `It is on its way${asks ? `; beside that: ${asks}` : ""}.`;
  }
}

function explainPart(book: RuleBook, name: string, care: Care): PartExplained {
  const next = nextQuestion(book, care.facts);
  return {
    name,
    saw: seen(book, care),
    follows: followsOf(book, care),
    tiers: ([1, 2, 3, 4] as const).flatMap((tier) => {
      const rules = care.fired.filter(({ rule }) => rule.reason.tier === tier);
      return rules.length === 0
        ? []
        : [{ tier, rules: rules.map(({ rule, reason }) => said(book, rule, reason, care)) }];
    }),
    open: next.tests.map((test) => test.question),
    settled: next.settled,
  };
}

/** Answers given, properties recorded; what the plan, the place and the state add is left out. */
const seen = (book: RuleBook, { facts }: Care): string[] =>
  Object.entries(facts)
    .filter(([fact]) => (fact.startsWith("obs.") || fact.startsWith("item.")) && book.facts.has(fact))
    .map(([fact, value]) => sayFact(book.facts, fact, value));

function followsOf(book: RuleBook, care: Care): PartExplained["follows"] {
  const severities = new Map(severitiesOf(book, care).map((each) => [each.condition, each]));
  return [...care.conditions, ...care.unsureConditions].map((condition) => {
    const derivation = book.derivations.find((each) => each.condition === condition);
    const grade = severities.get(condition);
    const unsure = care.unsureConditions.includes(condition) ? "? Unsure, so handled as if it were" : "";
    return {
      condition: `${sayCondition(condition)}${unsure}${grade?.severity ? `, severity ${grade.severity} of 4${grade.words ? ` (${grade.words})` : ""}` : ""}`,
      because: becauseSaid(book, derivation?.reads ?? [], care).join("; "),
      trust: derivation ? `${derivation.id}; ${trustOf(derivation)}` : "",
    };
  });
}

const trustOf = ({ source, sourceStatus }: Derivation): string =>
  sourceStatus ? `${source} (${sourceStatus})` : source;

function said(book: RuleBook, rule: Rule, reason: Reason, care: Care): RuleSaid {
  return {
    rule: rule.id,
    text: reason.text,
    why: reason.why,
    because: becauseSaid(book, rule.reads, care),
    says: rule.consequences.map((each) => {
      const banned = each.verb === "forbid" || each.verb === "warn" ? null : care.banned.get(each.action);
      const by = banned ? ` (not now: ${banned.reasons.map((ban) => ban.rule).join(", ")})` : "";
      return `${sayConsequence(book, each)}${by}`;
    }),
    source: reason.source,
    trust: reason.sourceStatus,
    fromUnsure: reason.fromUnsure,
  };
}

/** What a rule says, in words: `Never: vacuum`, `Not yet: wrapping, until the covers are pictured`, `Better: air bulb`. */
export function sayConsequence(book: Pick<RuleBook, "endings">, said: Consequence): string {
  const { verb, action, until, before, after } = said;
  if (verb === "forbid") {
    const act = sayNot(action).toLowerCase();
    return until === "never" ? `Never: ${act}` : `Not yet: ${act}, ${book.endings[until] ?? until}`;
  }
  const mark = verb === "prefer" ? "Better: " : verb === "warn" ? "Watch: " : "";
  const order = before ? `, before: ${lower(before)}` : after ? `, after: ${lower(after)}` : "";
  return `${mark}${sayDo(action)}${order}`;
}

/** The act another one comes before or after, in either form the catalogue has words for. */
const lower = (action: string): string =>
  (hasWords(action, "require") ? sayDo(action) : sayNot(action)).toLowerCase();

/** The facts a rule read and found; a missing answer counts only where the rule asks for it, so it is not said. */
export function becauseSaid(book: RuleBook, reads: readonly string[], care: Care): string[] {
  return reads.flatMap((fact): string[] => {
    if (fact.startsWith("cond.")) {
      const name = fact.slice(5);
      if (care.conditions.includes(name)) return [sayCondition(name).toLowerCase()];
      return care.unsureConditions.includes(name) ? [`${sayCondition(name).toLowerCase()}: unsure`] : [];
    }
    if (fact === "plan.step") return [];
    const value: FactValue | undefined = care.facts[fact];
    return value === undefined ? [] : [sayFact(book.facts, fact, value)];
  });
}
