import type { Route } from "../../care/care.ts";
import type { Norms } from "../../care/norms.ts";
import type { Campaign, StockCount, Store } from "../../items/campaign.ts";
import { type MeasuredUse, measuredUses } from "./measured-use.ts";
import { pastUses, sumOf, usedBetween } from "./past-use.ts";

export interface StockNow {
  /** As it was, with what is on hand this morning and the team's own use; the counts are reckoned in and no longer there. */
  readonly campaign: Campaign;
  readonly measured: readonly MeasuredUse[];
  /** Store → its last count and what work has used since. */
  readonly counts: ReadonlyMap<string, { readonly count: StockCount; readonly usedSince: number }>;
}

/**
 * What is on hand this morning: the last count with what has come since, less what work has used since by the norms and the team's own
 * measured use. The count of a day is one of its morning, so that the day's own work is taken off: less, not more, is reckoned with.
 * Stores without a count are taken as they are written.
 * @param worked routes of the worked items as if nothing had been done yet
 */
export function stockNow(campaign: Campaign, worked: readonly Route[], norms: Norms): StockNow {
  const past = pastUses(campaign, worked, norms);
  const measured = measuredUses(campaign, past);
  const factors = Object.fromEntries(measured.map(({ use, factor }) => [use, factor]));
  const counts = new Map<string, { count: StockCount; usedSince: number }>();
  const stores = campaign.stores.map((store) => {
    const count = campaign.stockCounts?.findLast((each) => each.store === store.id);
    if (count === undefined) return store;
    const since = usedBetween(past.get(store.use) ?? [], count.day, campaign.planFrom);
    const usedSince = sumOf(since) * (factors[store.use] ?? 1) * shareOf(campaign, store);
    counts.set(store.id, { count, usedSince });
    return { ...store, onHand: Math.max(0, store.onHand - usedSince) };
  });
  const { stockCounts: _, ...rest } = campaign;
  const useAgainstNorm = measured.length > 0 ? { useAgainstNorm: factors } : {};
  return { campaign: { ...rest, stores, ...useAgainstNorm }, measured, counts };
}

/** Stores of one use are drawn from in proportion to what each has. */
function shareOf({ stores }: Campaign, store: Store): number {
  const same = stores.filter(({ use }) => use === store.use);
  const sum = same.reduce((all, { onHand }) => all + onHand, 0);
  return sum > 0 ? store.onHand / sum : 1 / same.length;
}
