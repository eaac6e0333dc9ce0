import type { Campaign, Store } from "../items/campaign.ts";
import type { Order, StoreLine } from "../plan/plan.ts";
import { addDays, type Day, daysBetween } from "../units/day.ts";

/** Days before the need by which an order should be in the building. Common practice, no source. */
const EARLY_DAYS = 7;
/** Spoilage and learning (`k-spoil`), share of the order. */
const BUFFER = 0.1;

/** Use of each consumable (by its norm id) on each day of the plan, 0 being the first morning. */
export type UseByDay = ReadonlyMap<string, Float64Array>;

/** How each store runs down along the plan, and what to order when. */
export function projectStores(campaign: Campaign, use: UseByDay): { lines: StoreLine[]; orders: Order[] } {
  const lines: StoreLine[] = [];
  const orders: Order[] = [];
  for (const store of campaign.stores) {
    const series = use.get(store.use);
    const share = series ? shareOf(campaign, store) : 0;
    const { line, short } = lineOf(campaign, store, series ?? new Float64Array(0), share);
    lines.push(line);
    const order = line.runsOut ? orderOf(campaign, store, short, line.runsOut) : null;
    if (order) orders.push(order);
  }
  orders.sort((a, b) => a.orderBy.localeCompare(b.orderBy) || a.store.localeCompare(b.store));
  return { lines, orders };
}

/** Stores that serve the same use carry it in proportion to what each has and expects; alone, all of it. */
function shareOf(campaign: Campaign, store: Store): number {
  const has = (each: Store): number => each.onHand + expectedOf(campaign, each) + 1e-9;
  const same = campaign.stores.filter((each) => each.use === store.use);
  return has(store) / same.reduce((sum, each) => sum + has(each), 0);
}

const expectedOf = (campaign: Campaign, store: Store): number =>
  campaign.deliveries
    .filter((delivery) => delivery.store === store.id && delivery.day >= campaign.planFrom)
    .reduce((sum, delivery) => sum + delivery.quantity, 0);

/** The store's line, and how much is short on its worst day. */
function lineOf(
  campaign: Campaign,
  store: Store,
  series: Float64Array,
  share: number,
): { line: StoreLine; short: number } {
  const arrivals = campaign.deliveries.filter((delivery) => delivery.store === store.id);
  let left = store.onHand;
  let used = 0;
  let short = 0;
  let runsOut: Day | null = null;
  series.forEach((quantity, d) => {
    const day = addDays(campaign.planFrom, d);
    for (const delivery of arrivals) if (delivery.day === day) left += delivery.quantity;
    left -= quantity * share;
    used += quantity * share;
    short = Math.max(short, -left);
    if (left < -1e-6 && !runsOut) runsOut = day;
  });
  const line = {
    store: store.id,
    name: store.name,
    unit: store.unit,
    onHand: store.onHand,
    expected: expectedOf(campaign, store),
    used,
    runsOut,
  };
  return { line, short };
}

function orderOf(campaign: Campaign, store: Store, short: number, neededBy: Day): Order | null {
  const packs = Math.max(1, Math.ceil((short * (1 + BUFFER)) / store.pack));
  const wanted = addDays(neededBy, -store.leadDays - EARLY_DAYS);
  const orderBy = [wanted, ...(store.orderBy ? [store.orderBy] : [])].sort()[0] as Day;
  const late = addDays(campaign.planFrom, store.leadDays) > neededBy;
  return {
    store: store.id,
    name: store.name,
    unit: store.unit,
    packs,
    quantity: packs * store.pack,
    route: store.route,
    orderBy: orderBy > campaign.planFrom ? orderBy : campaign.planFrom,
    neededBy,
    late,
    why: late
      ? `Runs out ${daysBetween(campaign.planFrom, neededBy)} days from now; an order takes ${store.leadDays} days. The plan waits for it.`
      : `Runs out with nothing more ordered; an order takes ${store.leadDays} days.`,
  };
}
