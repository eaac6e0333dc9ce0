import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { sayDay } from "../../core/say/dates.ts";
import { addDays, type Day, daysBetween } from "../../core/units/day.ts";
import type { BagTagView, OrderListView } from "./views.ts";

/** Tags for every item that goes into the Ward between the two days. */
export function bagTagViews(
  plan: Pick<Plan, "itemDays">,
  campaign: Campaign,
  routes: readonly Route[],
  from: Day,
  to: Day,
  locale = "en-GB",
): BagTagView[] {
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const titles = new Map(campaign.items.map((item) => [item.id, item.title]));
  return plan.itemDays.flatMap(({ item, days }) => {
    const route = routeOf.get(item);
    if (!days.admit || !route || days.admit < from || days.admit > to) return [];
    const mould = route.steps[0]?.exposed ?? false;
    const earliest = addDays(days.admit, Math.max(2, Math.ceil(route.wardDays?.low ?? 2)));
    return [
      {
        campaign: campaign.name,
        number: item,
        title: titles.get(item) ?? "",
        alsoInside: [],
        dateIn: sayDay(days.admit, locale),
        reason: route.wardWhy,
        openOnlyBy: mould ? "a person on mould work, protected, in the dirty zone" : "a person of the Ward",
        signs: mould ? ["W009", "M017", "M009", "P010"] : ["M009", "P010"],
        release: `Not before ${sayDay(earliest, locale, "tiny")}, and then only on two readings of 55 % or less, a day apart, with two signatures.`,
      },
    ];
  });
}

export function orderListView(plan: Plan, locale = "en-GB"): OrderListView {
  const packOf = (quantity: number, packs: number, unit: string): string =>
    `${packs} × ${quantity / packs} = ${quantity} ${unit}`;
  return {
    campaign: plan.campaign,
    day: sayDay(plan.planFrom, locale),
    lines: plan.orders.map((order) => ({
      store: order.name,
      packs: order.packs,
      quantity: packOf(order.quantity, order.packs, order.unit),
      orderBy: sayDay(order.orderBy, locale, "short"),
      neededBy: sayDay(order.neededBy, locale, "short"),
      route: order.route,
      why: order.why,
      late: order.late
        ? `Late: ordered today it still comes after ${sayDay(order.neededBy, locale, "tiny")}.`
        : "",
    })),
    notes: [
      `Quantities carry one tenth for spoilage and learning; each order is meant to be here a week before it is needed.`,
      `From now to the end of the campaign are ${daysBetween(plan.planFrom, plan.end)} days. Alcohol, lithium cells and aerosols travel under dangerous-goods rules: buy them locally where you can, and follow local rules.`,
    ],
  };
}
