import type { Delivery, Store } from "../../items/campaign.ts";
import { addDays, type Day, daysBetween } from "../../units/day.ts";
import { ROUNDING } from "./need.ts";
import { type Arrival, runDown } from "./run-down.ts";

/** A delivery on its way, and what it may do without harm. */
export interface OnTheWay {
  readonly day: Day;
  readonly quantity: number;
  /** The day on which the store would be short without it; null: it would last all the same. */
  readonly outWithout: Day | null;
  /** Units of it that must come for the store to last until an order sent this morning could be here, or to the end. */
  readonly least: number;
}

/** What of the deliveries comes within the plan, as its days. */
export const arrivalsOf = (deliveries: readonly Delivery[], planFrom: Day): Arrival[] =>
  deliveries
    .map(({ day, quantity }) => ({ at: daysBetween(planFrom, day), quantity }))
    .filter(({ at }) => at >= 0);

/** Each delivery of a store taken away in turn.   @param need what will have been used by each evening */
export function onTheWay(
  store: Store,
  deliveries: readonly Delivery[],
  need: Float64Array,
  planFrom: Day,
): OnTheWay[] {
  const coming = deliveries.filter(({ day }) => day >= planFrom).sort((a, b) => a.day.localeCompare(b.day));
  const orderHere = Math.min(need.length, daysBetween(planFrom, addDays(planFrom, store.leadDays)));
  return coming.map((delivery) => {
    const others = coming.filter((each) => each !== delivery);
    const without = runDown(store, arrivalsOf(others, planFrom), need, planFrom);
    const until = Math.max(orderHere, daysBetween(planFrom, delivery.day) + 1);
    const short = without.short[Math.min(until, need.length) - 1] ?? 0;
    return {
      day: delivery.day,
      quantity: delivery.quantity,
      outWithout: without.outOn === null ? null : addDays(planFrom, without.outOn),
      least: short > ROUNDING ? Math.min(short, delivery.quantity) : 0,
    };
  });
}
