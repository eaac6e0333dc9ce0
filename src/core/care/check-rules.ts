import type { Facts } from "../items/facts.ts";
import { truthOfRule } from "./evaluate.ts";
import type { Consequence, Rule, RuleBook } from "./rule-book.ts";
import { factsOf } from "./truth.ts";

type FaultIn = (file: string, where: string, got: unknown, expected: string) => void;

/** What can be wrong with a book whose every rule reads well by itself. */
export function faultsOfBook(book: RuleBook, fault: FaultIn): void {
  for (const rule of book.rules) {
    const here = (got: unknown, expected: string): void => {
      fault(rule.local ? "local" : `data/rules/${rule.theme}.json`, rule.id, got, expected);
    };
    if (book.rules.some((other) => other.id === rule.id && other.at < rule.at))
      here(`a second ${rule.id}`, "an id used once");
    wrongSideOfUnsure(book, rule, here);
    if (rule.local) weakening(book, rule, here);
    wrongExamples(book, rule, here);
  }
  for (const each of unusedConditions(book))
    fault("data/derivations.json", each, "a condition no rule reads", "a rule that reads it, or none of it");
}

type Here = (got: unknown, expected: string) => void;

/** Whether a consequence guards people or item; the rest prefers or frees. */
export const guards = (book: Pick<RuleBook, "freeing">, { verb, action }: Consequence): boolean =>
  verb !== "prefer" && !(verb === "forbid" && book.freeing.has(action));

/**
 * An unsure must never come out milder than yes or no: a rule that guards acts on `unsure`, a rule that frees a guard waits.
 * A requirement that only prepares what the same rule prefers may wait with it.
 */
function wrongSideOfUnsure(book: RuleBook, rule: Rule, here: Here): void {
  const prefers = rule.consequences.some((each) => each.verb === "prefer");
  const must = rule.consequences.filter(
    (each) => guards(book, each) && !(prefers && each.verb === "require" && tierOf(rule) > 1),
  );
  if (must.length > 0 && rule.unsure === "hold")
    here(`unsure: hold with ${must[0]?.verb} ${must[0]?.action}`, "unsure: fire, for it guards");
  const frees = rule.consequences.find((each) => each.verb === "forbid" && book.freeing.has(each.action));
  if (frees && rule.unsure === "fire")
    here(`unsure: fire with forbid ${frees.action}`, "unsure: hold, for it lifts a safeguard");
}

const tierOf = (rule: Rule): number => rule.reason.tier;

/** A campaign's own rule adds limits. A command to do something in tier 1 or 2 could lift a ban; a ban on a safeguard would. */
function weakening(book: RuleBook, rule: Rule, here: Here): void {
  for (const each of rule.consequences) {
    if (each.verb === "require" && tierOf(rule) < 3)
      here(
        `require ${each.action} in tier ${tierOf(rule)}`,
        "tier 3 or 4 for what a local rule requires: it may not lift a ban for people or item",
      );
    if (each.verb === "forbid" && book.freeing.has(each.action))
      here(`forbid ${each.action}`, "a ban that guards: local rules never lift a safeguard");
    if (each.verb === "forbid" && book.rules.some((other) => !other.local && protects(other, each.action)))
      here(`forbid ${each.action}`, "no ban on what a rule for people or item requires");
  }
}

/** A command, not an order between two acts: those a custodian may keep back. */
const protects = (rule: Rule, action: string): boolean =>
  tierOf(rule) <= 2 &&
  rule.consequences.some(
    (each) => each.verb === "require" && each.action === action && !each.before && !each.after,
  );

/** Each rule has an example for yes, no and unsure, as far as its condition can come out so; each must come out as said. */
function wrongExamples(book: RuleBook, rule: Rule, here: Here): void {
  const doubtful = rule.reads.some((fact) => book.facts.get(fact)?.type !== "text");
  const kinds = rule.reads.length === 0 ? ["yes"] : doubtful ? ["yes", "no", "unsure"] : ["yes", "no"];
  for (const wanted of kinds)
    if (!rule.examples.some((each) => each.expect === wanted))
      here(`no example for ${wanted}`, "an example each for yes, no and unsure");
  for (const { given, expect } of rule.examples) {
    const unknown = Object.keys(given).find((fact) => !book.facts.has(fact));
    if (unknown) here(unknown, "a fact of data/facts.json, a test (obs.…) or a condition (cond.…)");
    const truth = truthOfRule(book, rule, given as Facts);
    if (truth !== expect) here(`${truth} for ${JSON.stringify(given)}`, `${expect}, as its example says`);
  }
}

function unusedConditions(book: RuleBook): string[] {
  const read = new Set(
    [...book.rules, ...book.derivations, ...book.rests].flatMap((each) => factsOf(each.when)),
  );
  return book.derivations.map((each) => each.condition).filter((each) => !read.has(`cond.${each}`));
}
