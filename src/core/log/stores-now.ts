import type { Campaign, Delivery, Store } from "../items/campaign.ts";
import { inOrder } from "./event.ts";
import type { From } from "./findings-now.ts";
import type { Filed } from "./kinds.ts";
import { isOf, type Matter, type Standing } from "./standing.ts";

/** Stores as last counted with what has come since, and what is still on its way. What work has used up since the count is not taken off. */
export function storesIn(stores: readonly Standing[]): Pick<Campaign, "stores" | "deliveries"> {
  const listed = stores.flatMap((now) => {
    const store = storeIn(now);
    return store === null ? [] : [{ now, store }];
  });
  return {
    stores: inLogOrder(listed.map(({ store }) => store)),
    deliveries: inLogOrder(listed.flatMap(({ now }) => [...now.matters.values()].flatMap(expectedIn))),
  };
}

const inLogOrder = <T>(values: From<T>[]): T[] =>
  values.sort((a, b) => inOrder(a.event, b.event)).map(({ value }) => value);

function storeIn({ counted, matters }: Standing): From<Store> | null {
  const event = counted.find((each) => isOf(each, "storeListed"));
  const listed = matters.get("listing")?.standing.findLast((each) => isOf(each, "storeListed"));
  if (!event || !listed) return null;
  const { store: id, ...rest } = listed.payload;
  const count = matters.get("stock")?.standing.findLast((each) => isOf(each, "stockCounted"));
  const since = [...matters.values()].reduce((sum, matter) => sum + arrivedSince(matter, count), 0);
  return { event, value: { id, ...rest, onHand: (count?.payload.quantity ?? 0) + since } };
}

/** What came of one delivery after the count, or on its day but written down after it. */
function arrivedSince(
  { standing }: Matter,
  count: Extract<Filed, { kind: "stockCounted" }> | undefined,
): number {
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
