import type { Campaign, StockCount, Store } from "../../items/campaign.ts";
import { FEW_SESSIONS } from "../../plan/pace.ts";
import type { Day } from "../../units/day.ts";
import { type PastUse, sumOf, usedBetween } from "./past-use.ts";

/** How much of one consumable the team uses, from counts of its stores and the work between them. */
export interface MeasuredUse {
  readonly use: string;
  /** Pieces of work between the counts: people's exposed days, or items. */
  readonly sessions: number;
  /** What went, and what the norm would have taken. */
  readonly used: number;
  readonly atNorm: number;
  /** What the plan reckons with: used over norm, drawn toward 1 while few sessions were measured. */
  readonly factor: number;
}

/** No measured use moves a norm further than this, either way: a wrong count must not. House. */
const MOST = 3;

/**
 * The team's own use against the norm, on a log scale with a weight of 15 norms, as for its pace (common practice, no source).
 * Between two counts more may not have come to light than went: such a stretch says nothing, a delivery was not written down.
 */
export function measuredUses(
  campaign: Pick<Campaign, "stores" | "stockCounts">,
  past: ReadonlyMap<string, readonly PastUse[]>,
): MeasuredUse[] {
  return [...new Set(campaign.stores.map(({ use }) => use))].flatMap((use) => {
    const own = campaign.stores.filter((store) => store.use === use);
    const measured = overStretches(stretchesOf(own, campaign.stockCounts ?? []), past.get(use) ?? []);
    if (measured.atNorm <= 0) return [];
    const ratio = Math.log(Math.max(1 / MOST, Math.min(MOST, measured.used / measured.atNorm)));
    const factor = Math.exp((ratio * measured.sessions) / (measured.sessions + FEW_SESSIONS));
    return [{ use, ...measured, factor }];
  });
}

interface Stretch {
  readonly from: Day;
  readonly to: Day;
  readonly used: number;
}

/** From count to count of all stores that serve the use: days on which each of them was counted. */
function stretchesOf(stores: readonly Store[], counts: readonly StockCount[]): Stretch[] {
  const ids = new Set(stores.map(({ id }) => id));
  const own = counts.filter(({ store }) => ids.has(store));
  const days = [...new Set(own.map(({ day }) => day))].sort();
  const whole = days.filter((day) =>
    stores.every(({ id }) => own.some((c) => c.store === id && c.day === day)),
  );
  return whole.slice(1).map((to, at) => {
    const from = whole[at] as Day; // one before it
    const came = own.filter(({ day }) => from < day && day <= to).reduce((sum, each) => sum + each.came, 0);
    return { from, to, used: countedOn(own, from) + came - countedOn(own, to) };
  });
}

/** Of several counts of a store on one day the last is its count. */
const countedOn = (counts: readonly StockCount[], day: Day): number => {
  const last = new Map(counts.filter((each) => each.day === day).map((each) => [each.store, each.quantity]));
  return [...last.values()].reduce((sum, quantity) => sum + quantity, 0);
};

function overStretches(stretches: readonly Stretch[], past: readonly PastUse[]) {
  const sums = { sessions: 0, used: 0, atNorm: 0 };
  for (const { from, to, used } of stretches) {
    const work = usedBetween(past, from, to);
    if (used < 0 || work.length === 0) continue;
    sums.sessions += work.length;
    sums.used += used;
    sums.atNorm += sumOf(work);
  }
  return sums;
}
