import type { Store } from "../../items/campaign.ts";
import { addDays, type Day, daysBetween } from "../../units/day.ts";
import type { Assignment, Order } from "../plan.ts";
import type { Fault } from "./fault.ts";
import { groupedBy, type PlanOnPaper } from "./plan-on-paper.ts";
import { usesOfAct, usesOfExposedDay } from "./uses.ts";

/** Pieces by which rounding may lift a sum. */
const ROUNDING = 1e-3;

/** No store below nothing before an order could be here; lines and orders agree with what the plan uses. */
export function storeFaults(paper: PlanOnPaper): Fault[] {
  const used = usedByDay(paper);
  const faults: Fault[] = [];
  for (const [use, stores] of groupedBy(paper.campaign.stores, (store) => store.use)) {
    const drawn = used.get(use) ?? new Map<Day, number>();
    const run = runDown(paper, stores, drawn);
    const here = hereFrom(paper, stores);
    if (run.below && run.below < here) faults.push(shortFault(stores, run.below, run.lowBefore(here)));
    faults.push(...lineFaults(paper, stores, drawn), ...orderFaults(paper, stores, run.below, run.lowest));
  }
  return [...faults, ...(paper.plan.orders ?? []).flatMap((order) => ownFaults(paper, order))];
}

const shortFault = (stores: readonly Store[], day: Day, got: number): Fault => ({
  code: "store-short",
  day,
  store: (stores[0] as Store).id,
  got: Math.round(got * 10) / 10,
  limit: 0,
  source: "stores and deliveries",
});

/** Use → day → quantity. */
function usedByDay(paper: PlanOnPaper): Map<string, Map<Day, number>> {
  const used = new Map<string, Map<Day, number>>();
  const add = (uses: Readonly<Record<string, number>>, day: Day): void => {
    for (const [use, quantity] of Object.entries(uses)) {
      const days = used.get(use) ?? new Map<Day, number>();
      used.set(use, days);
      days.set(day, (days.get(day) ?? 0) + quantity * (paper.campaign.useAgainstNorm?.[use] ?? 1));
    }
  };
  const session = usesOfExposedDay(paper);
  for (const sheet of paper.sheets.values())
    if (sheet.some((each) => each.exposed)) add(session, (sheet[0] as Assignment).day);
  for (const [item, passings] of paper.passings) {
    const care = paper.care.get(item);
    if (care) for (const { act, first } of passings) add(usesOfAct(paper, care, act), first);
  }
  return used;
}

/** The first day on which an order sent on the plan's first morning could be here. */
function hereFrom({ campaign }: PlanOnPaper, stores: readonly Store[]): Day {
  const { planFrom, end } = campaign;
  const never = addDays(end, 1);
  return stores
    .map(({ orderBy, leadDays }) => (orderBy && orderBy < planFrom ? never : addDays(planFrom, leadDays)))
    .reduce((a, b) => (a < b ? a : b));
}

/** What is left of a use on each day it changes: when it first falls below nothing, and how far. */
function runDown({ campaign }: PlanOnPaper, stores: readonly Store[], used: ReadonlyMap<Day, number>) {
  const ids = new Set(stores.map(({ id }) => id));
  const change = new Map<Day, number>();
  const add = (day: Day, quantity: number): void => {
    change.set(day, (change.get(day) ?? 0) + quantity);
  };
  for (const { store, day, quantity } of campaign.deliveries)
    if (ids.has(store) && day >= campaign.planFrom) add(day, quantity);
  for (const [day, quantity] of used) add(day, -quantity);
  const levels: { day: Day; left: number }[] = [];
  let left = stores.reduce((sum, { onHand }) => sum + onHand, 0);
  for (const day of [...change.keys()].sort()) {
    left += change.get(day) ?? 0;
    levels.push({ day, left });
  }
  const lowBefore = (limit: Day): number =>
    Math.min(0, ...levels.filter(({ day }) => day < limit).map((each) => each.left));
  return {
    below: levels.find((each) => each.left < -ROUNDING)?.day ?? null,
    lowest: Math.min(0, ...levels.map((each) => each.left)),
    lowBefore,
  };
}

/** What the stores' page says was used of these stores. */
function lineFaults(paper: PlanOnPaper, stores: readonly Store[], used: ReadonlyMap<Day, number>): Fault[] {
  if (!paper.plan.stores) return [];
  const ids = new Set(stores.map(({ id }) => id));
  const lines = paper.plan.stores.filter(({ store }) => ids.has(store));
  const got = lines.reduce((sum, line) => sum + line.used, 0);
  const limit = [...used.values()].reduce((sum, quantity) => sum + quantity, 0);
  if (lines.length === stores.length && Math.abs(got - limit) <= 0.01 + limit * ROUNDING) return [];
  return [
    {
      code: "store-line",
      store: (stores[0] as Store).id,
      figure: "used",
      got,
      limit,
      source: "the plan's own work",
    },
  ];
}

/** What runs out has an order, soon enough and large enough. */
function orderFaults(
  paper: PlanOnPaper,
  stores: readonly Store[],
  below: Day | null,
  lowest: number,
): Fault[] {
  const { orders } = paper.plan;
  if (!orders || !below) return [];
  const ids = new Set(stores.map(({ id }) => id));
  const own = orders.filter(({ store }) => ids.has(store));
  const quantity = own.reduce((sum, order) => sum + order.quantity, 0);
  const inTime = own.some(({ neededBy }) => neededBy <= below);
  if (inTime && quantity >= -lowest - ROUNDING) return [];
  return [
    {
      code: "order-missing",
      day: below,
      store: (stores[0] as Store).id,
      got: inTime ? quantity : 0,
      limit: Math.ceil(-lowest),
      source: "stores and deliveries",
    },
  ];
}

/** Units in the packs of an order; a pack that is not sold holds none. */
function unitsIn(store: Store, { packs, packing }: Order): number {
  if (!packing) return packs * store.pack;
  const sold = new Set([store.pack, ...(store.packs ?? []).map(({ size }) => size)]);
  const known = packing.packs.filter(({ size }) => sold.has(size));
  const count = known.reduce((sum, each) => sum + each.count, 0);
  return count === packs ? known.reduce((sum, { size, count }) => sum + size * count, 0) : 0;
}

/** Whether an order can be sent, and can be here, as it says. */
function ownFaults({ campaign }: PlanOnPaper, order: Order): Fault[] {
  const { planFrom, stores } = campaign;
  const store = stores.find(({ id }) => id === order.store);
  const faults: Fault[] = [];
  const wrong = (figure: string, got: number | string, limit: number | string): void => {
    faults.push({
      code: "order-wrong",
      store: order.store,
      day: order.orderBy,
      figure,
      got,
      limit,
      source: "stores",
    });
  };
  if (!store) {
    wrong("store", order.store, "stores table");
    return faults;
  }
  const late = addDays(planFrom, store.leadDays) > order.neededBy;
  if (order.orderBy < planFrom) wrong("orderBy", order.orderBy, planFrom);
  if (order.late !== late) wrong("late", String(order.late), String(late));
  if (!late && daysBetween(order.orderBy, order.neededBy) < store.leadDays)
    wrong("orderBy", order.orderBy, addDays(order.neededBy, -store.leadDays));
  const inPacks = unitsIn(store, order);
  if (Math.abs(order.quantity - inPacks) > ROUNDING) wrong("quantity", order.quantity, inPacks);
  return faults;
}
