import type { Facts } from "../items/facts.ts";
import type { Care } from "./care.ts";
import { type Evaluation, evaluate } from "./evaluate.ts";
import type { Rule, RuleBook } from "./rule-book.ts";
import { settle } from "./settle.ts";

/** The care for one set of facts. */
export const decide = (book: RuleBook, facts: Facts): Care => {
  const [care] = decideParts(book, [evaluate(book, facts)]);
  return care as Care;
};

/**
 * The care of each part of one item. What a part's rules say about its own surface stays with that part; what they say about the whole
 * item (holds, bans on the camera or on all cleaning, protection of people, whom to ask) reaches every part: the strictest counts.
 */
export function decideParts(book: RuleBook, parts: readonly Evaluation[]): Care[] {
  return parts.map((part) => {
    const others = parts.length === 1 ? [] : firedElsewhere(part, parts);
    const { conditions, unsureConditions, missingTests, facts } = part;
    const { banned, said: _, ...settled } = settle(book, part.fired, others, asksForCleaning(facts));
    const rest = part.rests.find(({ acts }) => !acts.some((act) => banned.has(act))) ?? null;
    return {
      facts,
      conditions,
      unsureConditions,
      missingTests,
      fired: part.fired,
      waiting: part.waiting.map((rule) => ({ rule: rule.id, facts: unsureFactsOf(rule, facts) })),
      ...settled,
      banned,
      rest,
    };
  });
}

function firedElsewhere(part: Evaluation, parts: readonly Evaluation[]) {
  const own = new Set(part.fired.map((each) => each.rule.at));
  const found = new Map<number, Evaluation["fired"][number]>();
  for (const other of parts)
    if (other !== part)
      for (const each of other.fired)
        if (!own.has(each.rule.at) && (!found.has(each.rule.at) || !each.unsure))
          found.set(each.rule.at, each);
  return [...found.values()].sort((a, b) => a.rule.at - b.rule.at);
}

function asksForCleaning(facts: Facts): boolean {
  const step = facts["plan.step"];
  return step === "clean" || (Array.isArray(step) && step.includes("clean"));
}

const unsureFactsOf = (rule: Rule, facts: Facts): string[] =>
  rule.reads.filter((name) => facts[name] === "unsure");
