import type { Facts, FactValue } from "../items/facts.ts";
import type { Care, Forbid, Reason, Ruling, Until } from "./care.ts";
import type { Consequence, Rule, RuleBook } from "./rule-book.ts";
import { type Lookup, NO, PERHAPS, YES } from "./truth.ts";

/** The ways of cleaning a team has, gentlest first (C05). */
export const METHODS = ["clean_puffer", "clean_brush", "clean_vacuum_mesh", "clean_sponge"] as const;

interface Fired {
  readonly rule: Rule;
  readonly consequence: Consequence;
  readonly reason: Reason;
}

/**
 * The care for one set of facts, named `obs.…`, `item.…`, `state.…`, `site.…`, `person.…`, `task.…`, `plan.…` and so on.
 * What is absent was not tested: it makes a condition false, and a must-ask test keeps the item at the Door (N01).
 */
export function decide(book: RuleBook, known: Facts): Care {
  const missingTests = missingTestsOf(book, known);
  const facts = new Map<string, FactValue>(Object.entries(known));
  if (!facts.has("state.required_tests_missing"))
    facts.set("state.required_tests_missing", missingTests.length > 0);
  const lookup: Lookup = (name) => facts.get(name);
  const conditions: string[] = [];
  const unsureConditions: string[] = [];
  for (const each of book.derivations) {
    const truth = each.holds(lookup);
    if (truth === YES) conditions.push(each.condition);
    if (truth === PERHAPS) unsureConditions.push(each.condition);
    if (truth !== NO) facts.set(`cond.${each.condition}`, truth === YES ? "yes" : "unsure");
  }
  const fired: Fired[] = [];
  const waiting: { rule: string; facts: string[] }[] = [];
  for (const rule of book.rules) {
    const truth = rule.holds(lookup);
    if (truth === NO) continue;
    if (truth === PERHAPS && rule.unsure === "hold") {
      waiting.push({ rule: rule.id, facts: rule.reads.filter((name) => lookup(name) === "unsure") });
      continue;
    }
    const reason = reasonOf(rule, lookup, truth === PERHAPS);
    for (const consequence of rule.consequences) fired.push({ rule, consequence, reason });
  }
  return { conditions, unsureConditions, missingTests, waiting, ...settle(book, fired, lookup) };
}

function missingTestsOf(book: RuleBook, facts: Facts): string[] {
  const format = facts["item.format"];
  if (typeof format !== "string") return [];
  const asked = [...(book.requiredTests["*"] ?? []), ...(book.requiredTests[format] ?? [])];
  return asked.filter((test) => facts[`obs.${test}`] === undefined);
}

/** Reasons already given, so that thousands of items with the same findings share one. */
const MOST_SHARED = 2000;
const given = new WeakMap<Rule, Map<string, Reason>>();

function reasonOf(rule: Rule, lookup: Lookup, fromUnsure: boolean): Reason {
  let key = fromUnsure ? "?" : "";
  for (const name of rule.reads) key += `|${lookup(name) ?? ""}`;
  const known = given.get(rule) ?? new Map<string, Reason>();
  given.set(rule, known);
  const reason = known.get(key) ?? { ...rule.reason, because: becauseOf(rule, lookup), fromUnsure };
  if (known.size >= MOST_SHARED) known.clear();
  known.set(key, reason);
  return reason;
}

function becauseOf(rule: Rule, lookup: Lookup): string[] {
  return rule.reads.flatMap((name) => {
    const value = lookup(name);
    return value === undefined ? [] : [`${name} = ${Array.isArray(value) ? value.join(" + ") : value}`];
  });
}

/**
 * Conflicts: the lower tier number wins; in one tier a forbid beats a require; any forbid beats a prefer (so that a custodian's limit holds);
 * a require with `before` or `after` is an order, never a command against a forbid; warnings and escalations always show.
 */
function settle(book: RuleBook, fired: readonly Fired[], lookup: Lookup) {
  const forbids = forbidsOf(book, fired);
  const requires = rulings(fired.filter((each) => each.consequence.verb === "require"));
  const commands = rulings(
    fired.filter(
      (each) => each.consequence.verb === "require" && !each.consequence.before && !each.consequence.after,
    ),
  );
  for (const [action, ruling] of commands) {
    const forbid = forbids.get(action);
    if (forbid && tierOf(ruling) < tierOf(forbid)) forbids.delete(action);
  }
  const require = [...requires.values()].filter((each) => !forbids.has(each.action));
  const later = [...requires.values()].filter((each) => forbids.has(each.action));
  const prefer = [...rulings(fired.filter((each) => each.consequence.verb === "prefer")).values()].filter(
    (each) => !forbids.has(each.action) && !requires.has(each.action),
  );
  const escalate = rulings(fired.filter((each) => each.consequence.verb === "escalate"));
  const stuck = noMethodLeft(forbids, lookup);
  if (stuck?.forGood && !escalate.has("ask_conservator"))
    escalate.set("ask_conservator", { action: "ask_conservator", reasons: stuck.reasons, details: {} });
  const hold = requires.has("hold_item") || stuck !== null;
  if (stuck && !requires.has("hold_item"))
    require.push({ action: "hold_item", reasons: stuck.reasons, details: {} });
  return {
    require,
    forbid: [...forbids.values()],
    prefer,
    warn: [...rulings(fired.filter((each) => each.consequence.verb === "warn")).values()],
    escalate: [...escalate.values()],
    later,
    order: orderOf(fired),
    hold,
  };
}

const tierOf = (ruling: Ruling): number => Math.min(...ruling.reasons.map((reason) => reason.tier));

function rulings(fired: readonly Fired[]): Map<string, Ruling> {
  const found = new Map<string, { action: string; reasons: Reason[]; details: Record<string, unknown> }>();
  for (const { consequence, reason } of fired) {
    const known = found.get(consequence.action);
    if (!known)
      found.set(consequence.action, {
        action: consequence.action,
        reasons: [reason],
        details: { ...consequence.details },
      });
    else {
      known.reasons.push(reason);
      Object.assign(known.details, { ...consequence.details, ...known.details });
    }
  }
  return found;
}

function forbidsOf(book: RuleBook, fired: readonly Fired[]): Map<string, Forbid> {
  const found = new Map<
    string,
    { action: string; reasons: Reason[]; until: Until[]; details: Record<string, unknown> }
  >();
  const add = (action: string, each: Fired): void => {
    const known = found.get(action) ?? { action, reasons: [], until: [], details: {} };
    found.set(action, known);
    if (!known.reasons.some((reason) => reason.rule === each.rule.id)) known.reasons.push(each.reason);
    if (!known.until.includes(each.consequence.until)) known.until.push(each.consequence.until);
  };
  for (const each of fired) {
    if (each.consequence.verb !== "forbid") continue;
    const open = [each.consequence.action];
    const seen = new Set(open);
    for (let action = open.pop(); action !== undefined; action = open.pop()) {
      add(action, each);
      for (const member of book.families.get(action) ?? []) {
        if (seen.has(member)) continue;
        seen.add(member);
        open.push(member);
      }
    }
  }
  return found;
}

/** A cleaning step with no method left holds the item; when a ban does not end by the team's own work, a conservator is asked. */
function noMethodLeft(
  forbids: ReadonlyMap<string, Forbid>,
  lookup: Lookup,
): { reasons: Reason[]; forGood: boolean } | null {
  const step = lookup("plan.step");
  if (step !== "clean" && !(Array.isArray(step) && step.includes("clean"))) return null;
  const bans = METHODS.map((method) => forbids.get(method));
  if (bans.some((ban) => ban === undefined)) return null;
  const all = bans.flatMap((ban) => ban?.until ?? []);
  const ownWork = new Set(["dry_shown", "tests_answered", "cleaned", "wrapped", "covers_pictured"]);
  return {
    reasons: [...new Set(bans.flatMap((ban) => ban?.reasons ?? []))],
    forGood: !all.every((until) => ownWork.has(until)),
  };
}

function orderOf(fired: readonly Fired[]): [string, string][] {
  const pairs = new Map<string, [string, string]>();
  for (const { consequence } of fired) {
    const pair: [string, string] | null = consequence.before
      ? [consequence.action, consequence.before]
      : consequence.after
        ? [consequence.after, consequence.action]
        : null;
    if (pair && consequence.verb !== "forbid") pairs.set(pair.join(">"), pair);
  }
  return [...pairs.values()];
}
