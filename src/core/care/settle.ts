import type { Forbid, Ruling } from "./care.ts";
import type { Firing } from "./evaluate.ts";
import type { Reason, Until } from "./reason.ts";
import type { Consequence, Rule, RuleBook } from "./rule-book.ts";

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
}

interface Fired {
  readonly rule: Rule;
  readonly consequence: Consequence;
  readonly reason: Reason;
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
  const settled = settleFired(book, [...expand(own, false), ...expand(others, true)], cleaning);
  kept.set(key, settled);
  return settled;
}

const keyOf = (firings: readonly Firing[]): string => {
  let key = "";
  for (const { rule, unsure } of firings) key += String.fromCharCode(2 * rule.at + (unsure ? 1 : 0));
  return key;
};

const expand = (firings: readonly Firing[], onlyItem: boolean): Fired[] =>
  firings.flatMap(({ rule, unsure }) => {
    const reason = { ...rule.reason, fromUnsure: unsure };
    return rule.consequences
      .filter((each) => !onlyItem || each.reach === "item")
      .map((consequence) => ({ rule, consequence, reason }));
  });

function settleFired(book: RuleBook, fired: readonly Fired[], cleaning: boolean): Settled {
  const saying = (verb: Consequence["verb"]): Fired[] =>
    fired.filter((each) => each.consequence.verb === verb);
  const forbids = forbidsOf(book, saying("forbid"));
  const requires = rulings(saying("require"));
  const commands = rulings(
    saying("require").filter(({ consequence }) => !consequence.before && !consequence.after),
  );
  for (const [action, ruling] of commands) {
    const forbid = forbids.get(action);
    if (forbid && tierOf(ruling) < tierOf(forbid)) forbids.delete(action);
  }
  const escalate = rulings(saying("escalate"));
  const stuck = cleaning ? noMethodLeft(forbids) : null;
  if (stuck?.forGood && !escalate.has("ask_conservator"))
    escalate.set("ask_conservator", { action: "ask_conservator", reasons: stuck.reasons, details: {} });
  const asFound = stuck?.forGood === true && requires.has("image_as_found");
  if (stuck && !asFound && !requires.has("hold_item"))
    requires.set("hold_item", {
      action: "hold_item",
      reasons: stuck.reasons,
      details: { passes: !stuck.forGood },
    });
  return {
    require: [...requires.values()].filter((each) => !forbids.has(each.action)),
    forbid: [...forbids.values()],
    prefer: [...rulings(saying("prefer")).values()].filter(
      (each) => !forbids.has(each.action) && !requires.has(each.action),
    ),
    warn: [...rulings(saying("warn")).values()],
    escalate: [...escalate.values()],
    later: [...requires.values()].filter((each) => forbids.has(each.action)),
    order: orderOf(fired),
    hold: requires.has("hold_item"),
    banned: forbids,
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

/** Bans by action, a ban on a family spread over its members. */
function forbidsOf(book: RuleBook, fired: readonly Fired[]): Map<string, Forbid> {
  const found = new Map<string, { action: string; reasons: Reason[]; until: Until[]; details: object }>();
  for (const { rule, consequence, reason } of fired)
    for (const action of membersOf(book, consequence.action)) {
      const known = found.get(action) ?? { action, reasons: [], until: [], details: {} };
      found.set(action, known);
      if (!known.reasons.some((each) => each.rule === rule.id)) known.reasons.push(reason);
      if (!known.until.includes(consequence.until)) known.until.push(consequence.until);
    }
  return found as Map<string, Forbid>;
}

/** An action, the members of its family, and theirs. */
export function membersOf(book: Pick<RuleBook, "families">, action: string): ReadonlySet<string> {
  const members = new Set([action]);
  for (const each of members) for (const member of book.families.get(each) ?? []) members.add(member);
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

function orderOf(fired: readonly Fired[]): (readonly [string, string])[] {
  const pairs = new Map<string, readonly [string, string]>();
  for (const { consequence } of fired) {
    const { action, before, after, verb } = consequence;
    const pair = before ? ([action, before] as const) : after ? ([after, action] as const) : null;
    if (pair && verb !== "forbid") pairs.set(pair.join(">"), pair);
  }
  return [...pairs.values()];
}
