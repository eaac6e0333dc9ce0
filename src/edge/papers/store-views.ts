import type { Route } from "../../core/care/care.ts";
import type { Campaign, Store } from "../../core/items/campaign.ts";
import type { Order, Plan } from "../../core/plan/plan.ts";
import { sayDay } from "../../core/say/dates.ts";
import { ORDER_NOTES, sayPacks, saySubstitute } from "../../core/say/stores.ts";
import { type Goods, NO_GOODS } from "../../core/stores/goods/goods.ts";
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

/** @param known stores and what is published of them: what may stand in, and what carriers ask */
export function orderListView(
  plan: Plan,
  known: { readonly stores: readonly Store[]; readonly goods: Goods } = { stores: [], goods: NO_GOODS },
  locale = "en-GB",
): OrderListView {
  const useOf = new Map(known.stores.map(({ id, use }) => [id, use]));
  const uses = [...new Set(plan.orders.map(({ store }) => useOf.get(store) ?? ""))];
  return {
    campaign: plan.campaign,
    day: sayDay(plan.planFrom, locale),
    lines: plan.orders.map((order) => ({
      store: order.name,
      packs: order.packs,
      quantity: quantityOf(order),
      orderBy: sayDay(order.orderBy, locale, "short"),
      neededBy: sayDay(order.neededBy, locale, "short"),
      route: order.route,
      why: [
        order.why,
        ...(order.keepsUntil ? [ORDER_NOTES.keeps(sayDay(order.keepsUntil, locale))] : []),
        ...(order.late
          ? [saySubstitute(order.name, known.goods.substitute(useOf.get(order.store) ?? ""))]
          : []),
      ].join(" "),
      late: order.late ? ORDER_NOTES.late(sayDay(order.neededBy, locale, "tiny")) : "",
    })),
    notes: [
      ORDER_NOTES.buffer,
      ...(plan.orders.some(({ packing }) => packing && packing.cost === null) ? [ORDER_NOTES.unpriced] : []),
      ...uses.flatMap((use) => known.goods.carriage(use)).map(({ text, status }) => `${text} (${status})`),
      ORDER_NOTES.carriage(daysBetween(plan.planFrom, plan.end)),
    ],
  };
}

const quantityOf = ({ packing, packs, quantity, unit }: Order): string =>
  `${packing ? sayPacks(packing) : `${packs} × ${quantity / packs}`} = ${quantity} ${unit}`;
