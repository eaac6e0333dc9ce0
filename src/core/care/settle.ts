import type { Forbid, Ruling } from "./care.ts";
import type { Firing } from "./evaluate.ts";
import type { Reason, Until } from "./reason.ts";
import type { Consequence, RuleBook } from "./rule-book.ts";

/** The ways of cleaning a team has, gentlest first (C05). */
export const METHODS = ["clean_puffer", "clean_brush", "clean_vacuum_mesh", "clean_sponge"] as const;
/** Endings a team reaches by its own ordinary work: a ban with one of these is a wait, not a stop. */
export const OWN_WORK: ReadonlySet<Until> = new Set([
  "dry_shown",
  "tests_answered",
  "cleaned",
  "wrapped",
  "covers_pictured",
]);

/** Rulings after conflicts are settled. Items whose rules fire alike share one. */
export interface Settled {
  readonly require: readonly Ruling[];
  readonly forbid: readonly Forbid[];
  readonly prefer: readonly Ruling[];
  readonly warn: readonly Ruling[];
  readonly escalate: readonly Ruling[];
  readonly later: readonly Ruling[];
  readonly order: readonly (readonly [string, string])[];
  readonly hold: boolean;
  readonly banned: ReadonlyMap<string, Forbid>;
  /** Every ruling but bans, by verb and action, whether a ban keeps it back or not. */
  readonly said: ReadonlyMap<string, ReadonlyMap<string, Ruling>>;
}

const MOST_KEPT = 5000;
const settledBefore = new WeakMap<RuleBook, Map<string, Settled>>();

/**
 * Conflicts: the lower tier number wins; in one tier a forbid beats a require; any forbid beats a prefer (so that a custodian's limit holds);
 * a require with `before` or `after` is an order, never a command against a forbid; warnings and escalations always show.
 * A cleaning step with no method left holds the item; when none of them comes free by the team's own work, a conservator is asked, and
 * the item may go to the camera as it was found where a rule says so.
 * @param own rules fired by the facts of this part
 * @param others rules fired by the other parts, of which only what reaches the whole item counts here
 * @param cleaning whether the step asked about includes cleaning
 */
export function settle(
  book: RuleBook,
  own: readonly Firing[],
  others: readonly Firing[],
  cleaning: boolean,
): Settled {
  const kept = settledBefore.get(book) ?? new Map<string, Settled>();
  settledBefore.set(book, kept);
  const key = `${cleaning}|${keyOf(own)}|${keyOf(others)}`;
  const before = kept.get(key);
  if (before) return before;
  if (kept.size >= MOST_KEPT) kept.clear();
  const settled = weigh(gather(own, others), cleaning);
  kept.set(key, settled);
  return settled;
}

const keyOf = (firings: readonly Firing[]): string => {
  let key = "";
  for (const { rule, unsure } of firings) key += String.fromCharCode(2 * rule.at + (unsure ? 1 : 0));
  return key;
};

type Verb = Consequence["verb"];
interface Gathered {
  readonly said: Readonly<Record<Verb, Map<string, Ruling>>>;
  readonly forbids: Map<string, Forbid>;
  /** Best tier of a command: a require that is no order between two acts. */
  readonly commands: ReadonlyMap<string, number>;
  readonly order: ReadonlyMap<string, readonly [string, string]>;
}

/** Everything the fired rules say, by verb and action, a ban on a family spread over its members. */
function gather(own: readonly Firing[], others: readonly Firing[]): Gathered {
  const said = {
    require: new Map<string, Ruling>(),
    forbid: new Map<string, Ruling>(),
    prefer: new Map<string, Ruling>(),
    warn: new Map<string, Ruling>(),
    escalate: new Map<string, Ruling>(),
  };
  const forbids = new Map<string, Forbid>();
  const commands = new Map<string, number>();
  const order = new Map<string, readonly [string, string]>();
  const hear = (consequence: Consequence, reason: Reason): void => {
    const { verb, action, before, after } = consequence;
    if (verb === "forbid") {
      for (const member of consequence.members) addBan(forbids, member, consequence, reason);
      return;
    }
    addRuling(said[verb], consequence, reason);
    if (before) order.set(`${action}>${before}`, [action, before]);
    else if (after) order.set(`${after}>${action}`, [after, action]);
    else if (verb === "require")
      commands.set(action, Math.min(reason.tier, commands.get(action) ?? Number.POSITIVE_INFINITY));
  };
  for (const { rule, reason } of own) for (const each of rule.consequences) hear(each, reason);
  for (const { rule, reason } of others)
    for (const each of rule.consequences) if (each.reach === "item") hear(each, reason);
  return { said, forbids, commands, order };
}

function addBan(forbids: Map<string, Forbid>, action: string, { until }: Consequence, reason: Reason): void {
  const known = forbids.get(action);
  if (!known) {
    forbids.set(action, { action, reasons: [reason], until: [until], details: {} });
    return;
  }
  if (!known.reasons.includes(reason)) (known.reasons as Reason[]).push(reason);
  if (!known.until.includes(until)) (known.until as Until[]).push(until);
}

function addRuling(rulings: Map<string, Ruling>, { action, details }: Consequence, reason: Reason): void {
  const known = rulings.get(action);
  if (known) {
    (known.reasons as Reason[]).push(reason);
    Object.assign(known.details, { ...details, ...known.details });
  } else rulings.set(action, { action, reasons: [reason], details: { ...details } });
}

function weigh({ said, forbids, commands, order }: Gathered, cleaning: boolean): Settled {
  for (const [action, tier] of commands) {
    const forbid = forbids.get(action);
    if (forbid && tier < tierOf(forbid)) forbids.delete(action);
  }
  const { require, escalate } = said;
  const stuck = cleaning ? noMethodLeft(forbids) : null;
  if (stuck?.forGood && !escalate.has("ask_conservator"))
    escalate.set("ask_conservator", { action: "ask_conservator", reasons: stuck.reasons, details: {} });
  const asFound = stuck?.forGood === true && require.has("image_as_found");
  if (stuck && !asFound && !require.has("hold_item"))
    require.set("hold_item", {
      action: "hold_item",
      reasons: stuck.reasons,
      details: { passes: !stuck.forGood },
    });
  const all = [...require.values()];
  return {
    require: all.filter((each) => !forbids.has(each.action)),
    forbid: [...forbids.values()],
    prefer: [...said.prefer.values()].filter(
      (each) => !forbids.has(each.action) && !require.has(each.action),
    ),
    warn: [...said.warn.values()],
    escalate: [...escalate.values()],
    later: all.filter((each) => forbids.has(each.action)),
    order: [...order.values()],
    hold: require.has("hold_item"),
    banned: forbids,
    said: new Map(Object.entries(said)),
  };
}

const tierOf = (ruling: Ruling): number => Math.min(...ruling.reasons.map((reason) => reason.tier));

/** An action, the members of its family, and theirs. */
export function membersOf(
  families: ReadonlyMap<string, readonly string[]>,
  action: string,
): ReadonlySet<string> {
  const members = new Set([action]);
  for (const each of members) for (const member of families.get(each) ?? []) members.add(member);
  return members;
}

function noMethodLeft(
  forbids: ReadonlyMap<string, Forbid>,
): { reasons: readonly Reason[]; forGood: boolean } | null {
  const bans = METHODS.flatMap((method) => forbids.get(method) ?? []);
  if (bans.length < METHODS.length) return null;
  const reasons = new Map(bans.flatMap((ban) => ban.reasons).map((reason) => [reason.rule, reason]));
  const waits = bans.some((ban) => ban.until.every((until) => OWN_WORK.has(until) && until !== "cleaned"));
  return { reasons: [...reasons.values()], forGood: !waits };
}
