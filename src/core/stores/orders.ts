import type { Campaign } from "../items/campaign.ts";
import type { Order, StoreLine } from "../plan/plan.ts";
import { expectedOf, type StoreMeans, storeOutlooks } from "./projection/store-outlook.ts";

/** Use of each consumable (by its norm id) on each day of the plan, 0 being the first morning. */
export type UseByDay = ReadonlyMap<string, Float64Array>;

/** How each store runs down along the plan, and what to order when.
 *  @param means absent: without the spread of the use, and as if everything kept */
export function projectStores(
  campaign: Campaign,
  use: UseByDay,
  means?: StoreMeans,
): { lines: StoreLine[]; orders: Order[] } {
  const outlooks = storeOutlooks(campaign, use, means);
  const lines = outlooks.map(({ store, use, runsOut }) => ({
    ...{ store: store.id, name: store.name, unit: store.unit, onHand: store.onHand },
    expected: expectedOf(campaign, store),
    used: use.reduce((sum, quantity) => sum + quantity, 0),
    runsOut: runsOut.p50,
  }));
  const orders = outlooks.flatMap((each) => each.orders);
  orders.sort((a, b) => a.orderBy.localeCompare(b.orderBy) || a.store.localeCompare(b.store));
  return { lines, orders };
}
