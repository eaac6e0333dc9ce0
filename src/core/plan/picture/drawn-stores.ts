import type { Campaign, Store } from "../../items/campaign.ts";
import { type Day, daysBetween } from "../../units/day.ts";
import type { Plan } from "../plan.ts";

/** A store running down: what is there at the end of each day with nothing more ordered. */
export interface DrawnStore {
  readonly name: string;
  readonly unit: string;
  /** What the shelf holds at its fullest. */
  readonly full: number;
  /** Never below nought: what is missing then waits for an order. */
  readonly level: readonly number[];
  readonly deliveries: readonly { readonly day: number; readonly quantity: number }[];
  /** First day on which it would be gone; null: it lasts. */
  readonly out: number | null;
  /** Last day to send an order. */
  readonly orderBy: number | null;
}

/** How many stores the picture has room for. */
const MOST = 5;

/** The stores that matter most: those that run out, soonest first, then those that run lowest. Stores of one use are one. */
export function storesToDraw(
  of: { readonly campaign: Campaign; readonly plan: Plan; readonly use: ReadonlyMap<string, Float64Array> },
  days: readonly Day[],
): DrawnStore[] {
  const uses = [...new Set(of.campaign.stores.map(({ use }) => use))];
  const drawn = uses.flatMap((use) => {
    const series = of.use.get(use);
    return series?.some((quantity) => quantity > 0) ? [drawnStore(of, use, series, days)] : [];
  });
  const lowest = ({ level }: DrawnStore): number => Math.min(...level) / Math.max(1e-9, ...level);
  return drawn
    .sort((a, b) => (a.out ?? days.length) - (b.out ?? days.length) || lowest(a) - lowest(b))
    .slice(0, MOST);
}

function drawnStore(
  { campaign, plan }: { readonly campaign: Campaign; readonly plan: Plan },
  use: string,
  series: Float64Array,
  days: readonly Day[],
): DrawnStore {
  const stores = campaign.stores.filter((store) => store.use === use);
  const ids = new Set(stores.map(({ id }) => id));
  const deliveries = campaign.deliveries
    .filter(({ store, day }) => ids.has(store) && day >= plan.planFrom)
    .map(({ day, quantity }) => ({ day: daysBetween(plan.planFrom, day), quantity }))
    .filter(({ day }) => day < days.length);
  let left = stores.reduce((sum, { onHand }) => sum + onHand, 0);
  let full = left;
  let out: number | null = null;
  const level = days.map((_, d) => {
    for (const delivery of deliveries) if (delivery.day === d) left += delivery.quantity;
    full = Math.max(full, left);
    left -= series[d] ?? 0;
    if (left < -1e-6) out ??= d;
    return Math.max(0, left);
  });
  const orders = plan.orders.filter(({ store }) => ids.has(store)).map(({ orderBy }) => orderBy);
  const first = [...orders].sort()[0];
  const { name, unit } = stores[0] as Store;
  return {
    name,
    unit,
    full,
    level,
    deliveries,
    out,
    orderBy: first === undefined ? null : Math.max(0, daysBetween(plan.planFrom, first)),
  };
}
