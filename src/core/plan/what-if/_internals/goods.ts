import type { Campaign, Delivery } from "../../../items/campaign.ts";
import { addDays } from "../../../units/day.ts";
import type { Change } from "../change.ts";

/** Promised deliveries shifted; an order sent from now on takes longer too, though never shorter. */
export function withDelay(campaign: Campaign, { stores, days }: Change & { change: "late" }): Campaign {
  const meant = new Set(stores);
  const shifted = (each: Delivery): Delivery => {
    if (!meant.has(each.store) || each.day < campaign.planFrom) return each;
    const day = addDays(each.day, days);
    return { ...each, day: day < campaign.planFrom ? campaign.planFrom : day };
  };
  return {
    ...campaign,
    deliveries: campaign.deliveries.map(shifted),
    stores: campaign.stores.map((each) =>
      meant.has(each.id) ? { ...each, leadDays: each.leadDays + Math.max(0, days) } : each,
    ),
  };
}

export const withDelivery = (
  campaign: Campaign,
  { store, day, quantity }: Change & { change: "delivery" },
): Campaign => ({
  ...campaign,
  deliveries: [...campaign.deliveries, { store, day, quantity, note: "supposed" }],
});
