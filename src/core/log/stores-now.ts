import type { Campaign, Delivery, StockCount, Store } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import { inOrder } from "./event.ts";
import type { From } from "./findings-now.ts";
import type { Filed } from "./kinds.ts";
import { isOf, type Matter, type Standing } from "./standing.ts";

type Counted = Extract<Filed, { kind: "stockCounted" }>;

/**
 * Stores as last counted with what has come since, every count, and what is still on its way. What work has used up since the last count
 * is taken off later, where the norms are at hand: `stockNow` in core/stores. Counts of this morning alone say nothing more.
 */
export function storesIn(
  stores: readonly Standing[],
  today: Day,
): Pick<Campaign, "stores" | "deliveries" | "stockCounts"> {
  const listed = stores.flatMap((now) => {
    const store = storeIn(now);
    return store === null ? [] : [{ now, store }];
  });
  const stockCounts = inLogOrder(listed.flatMap(({ now }) => stockCountsIn(now)));
  return {
    stores: inLogOrder(listed.map(({ store }) => store)),
    deliveries: inLogOrder(listed.flatMap(({ now }) => [...now.matters.values()].flatMap(expectedIn))),
    ...(stockCounts.some(({ day }) => day < today) ? { stockCounts } : {}),
  };
}

const inLogOrder = <T>(values: From<T>[]): T[] =>
  values.sort((a, b) => inOrder(a.event, b.event)).map(({ value }) => value);

function storeIn({ counted, matters }: Standing): From<Store> | null {
  const event = counted.find((each) => isOf(each, "storeListed"));
  const listed = matters.get("listing")?.standing.findLast((each) => isOf(each, "storeListed"));
  if (!event || !listed) return null;
  const { store: id, ...rest } = listed.payload;
  const count = countsIn(counted).at(-1);
  const since = cameSince(matters, count);
  return { event, value: { id, ...rest, onHand: (count?.payload.quantity ?? 0) + since } };
}

/** Counts by their day, then in the order of the log: one written down late is of its own day. */
const countsIn = (counted: Standing["counted"]): Counted[] =>
  counted
    .filter((each) => isOf(each, "stockCounted"))
    .sort((a, b) => a.payload.day.localeCompare(b.payload.day) || inOrder(a, b));

function stockCountsIn({ counted, matters }: Standing): From<StockCount>[] {
  const counts = countsIn(counted);
  return counts.map((event, at) => {
    const came = at === 0 ? 0 : cameSince(matters, counts[at - 1]) - cameSince(matters, event);
    return { event, value: { ...event.payload, came } };
  });
}

const cameSince = (matters: Standing["matters"], count: Counted | undefined): number =>
  [...matters.values()].reduce((sum, matter) => sum + arrivedSince(matter, count), 0);

/** What came of one delivery after the count, or on its day but written down after it. */
function arrivedSince({ standing }: Matter, count: Counted | undefined): number {
  const arrived = standing.findLast((event) => isOf(event, "deliveryArrived"));
  if (arrived === undefined) return 0;
  const { day, quantity } = arrived.payload;
  const isAfter =
    count === undefined ||
    day > count.payload.day ||
    (day === count.payload.day && inOrder(arrived, count) > 0);
  return isAfter ? quantity : 0;
}

function expectedIn({ standing }: Matter): From<Delivery>[] {
  if (standing.some((event) => isOf(event, "deliveryArrived"))) return [];
  const event = standing.findLast((each) => isOf(each, "deliveryExpected"));
  if (event === undefined) return [];
  const { delivery: _, ...value } = event.payload;
  return [{ event, value }];
}
