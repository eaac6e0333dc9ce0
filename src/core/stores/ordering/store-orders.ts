import type { PackSize, Store } from "../../items/campaign.ts";
import type { Order } from "../../plan/plan.ts";
import { addDays, type Day, daysBetween } from "../../units/day.ts";
import { choosePacks } from "../packs/choose-packs.ts";
import { ROUNDING } from "../projection/need.ts";
import type { RunDown } from "../projection/run-down.ts";

/** Days beyond its lead before a store runs out by which an order goes off: the re-order point is lead and three weeks of use.
 *  Common practice, no source. */
const EARLY_DAYS = 21;
/** Spoilage and learning (`k-spoil`), share of the order. Common practice, no source. */
const BUFFER = 0.1;

/**
 * The orders by which a store lasts to the end as the plan expects: one, or where fresh packs do not keep so long one after the other.
 * The first goes off three weeks before it must, and sooner where the use that one campaign in ten goes over asks for it.
 * @param expected along the expected use; @param more along the use that one campaign in ten goes over
 * @param keepsDays of a fresh pack; null: to the end
 */
export function storeOrders(
  store: Store,
  { expected, more }: { readonly expected: RunDown; readonly more: RunDown },
  planFrom: Day,
  keepsDays: number | null,
): Order[] {
  const orders: Order[] = [];
  const last = expected.short.length - 1;
  let covered = 0;
  for (let from = expected.outOn; from !== null; from = nextShort(expected, covered)) {
    const wanted = Math.min(
      from - store.leadDays - EARLY_DAYS,
      orders.length === 0 ? earliest(store, more) : from,
    );
    const here = Math.max(store.leadDays, wanted + store.leadDays);
    const until = keepsDays === null ? last : Math.min(last, Math.max(from, Math.ceil(here) + keepsDays));
    const short = (expected.short[until] ?? 0) - covered;
    covered = expected.short[until] ?? 0;
    orders.push(orderOf(store, { short, from, wanted, planFrom, until: until < last ? until : null }));
  }
  return orders;
}

const earliest = (store: Store, more: RunDown): number =>
  (more.outOn ?? Number.POSITIVE_INFINITY) - store.leadDays;

function nextShort({ short }: RunDown, covered: number): number | null {
  const at = short.findIndex((each) => each > covered + ROUNDING);
  return at < 0 ? null : at;
}

interface Wanted {
  readonly short: number;
  readonly from: number;
  readonly wanted: number;
  readonly planFrom: Day;
  readonly until: number | null;
}

function orderOf(store: Store, { short, from, wanted, planFrom, until }: Wanted): Order {
  const packing = choosePacks(short * (1 + BUFFER), packsOf(store));
  const neededBy = addDays(planFrom, from);
  const sendBy = [
    addDays(planFrom, Math.max(0, Math.floor(wanted))),
    ...(store.orderBy ? [store.orderBy] : []),
  ].sort();
  const orderBy = sendBy[0] as Day; // there is one at least
  const late = addDays(planFrom, store.leadDays) > neededBy;
  return {
    ...{ store: store.id, name: store.name, unit: store.unit },
    packs: packing.packs.reduce((sum, { count }) => sum + count, 0),
    quantity: packing.quantity,
    packing,
    ...(until === null ? {} : { keepsUntil: addDays(planFrom, until) }),
    route: store.route,
    orderBy: orderBy > planFrom ? orderBy : planFrom,
    neededBy,
    late,
    why: whyOf(store, daysBetween(planFrom, neededBy), late),
  };
}

/** The packs it is sold in; where none are named, the usual one. */
const packsOf = ({ pack, packs = [] }: Store): readonly PackSize[] =>
  packs.length > 0 ? packs : [{ size: pack }];

const whyOf = ({ leadDays }: Store, days: number, late: boolean): string =>
  late
    ? `Runs out ${days} days from now; an order takes ${leadDays} days. The plan waits for it.`
    : `Runs out with nothing more ordered; an order takes ${leadDays} days.`;
