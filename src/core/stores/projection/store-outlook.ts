import type { Norms } from "../../care/norms.ts";
import type { Campaign, Store } from "../../items/campaign.ts";
import type { DayRange, Finish, Order } from "../../plan/plan.ts";
import { addDays, type Day } from "../../units/day.ts";
import type { Goods } from "../goods/goods.ts";
import { storeOrders } from "../ordering/store-orders.ts";
import type { MeasuredUse } from "../use/measured-use.ts";
import { needOf } from "./need.ts";
import { arrivalsOf, type OnTheWay, onTheWay } from "./on-the-way.ts";
import { type RunDown, runDown } from "./run-down.ts";
import { NO_SPREAD, planSpread, type UseSpread, useSpread } from "./spread.ts";

/** What an outlook asks besides the campaign and its plan's use. */
export interface StoreMeans {
  readonly norms: Norms;
  readonly goods: Goods;
  readonly measured: readonly MeasuredUse[];
  /** Of the plan; absent: its own spread is not reckoned with. */
  readonly finish?: Finish;
}

/** How one store goes along the plan. */
export interface StoreOutlook {
  readonly store: Store;
  /** What the plan takes of it on each day. */
  readonly use: Float64Array;
  /** Use of one week, over the four weeks to come. */
  readonly aWeek: number;
  /** What is left each evening: as expected, and where more or less is used than in all but one campaign in ten. */
  readonly expected: RunDown;
  readonly more: RunDown;
  readonly less: RunDown;
  /** When it runs out with nothing more ordered; null: not by the end. */
  readonly runsOut: DayRange;
  /** Reckoned with the use that one campaign in ten goes over: a delivery that may be late must not be counted on. */
  readonly onTheWay: readonly OnTheWay[];
  readonly orders: readonly Order[];
}

const FOUR_WEEKS = 28;

/** @param use what the plan takes of each consumable by day; @param means absent: without spread, and as if everything kept */
export function storeOutlooks(
  campaign: Campaign,
  use: ReadonlyMap<string, Float64Array>,
  means?: StoreMeans,
): StoreOutlook[] {
  const ofPlan = means?.finish ? planSpread(means.finish, campaign.planFrom) : 0;
  return campaign.stores.map((store) => {
    const share = shareOf(campaign, store);
    const series = (use.get(store.use) ?? new Float64Array(0)).map((quantity) => quantity * share);
    const spread = means ? spreadOf(store.use, means, ofPlan) : NO_SPREAD;
    return outlookOf(campaign, store, series, spread, means?.goods.keepsDays(store.use) ?? null);
  });
}

function spreadOf(use: string, { norms, measured }: StoreMeans, ofPlan: number): UseSpread {
  const sessions = measured.find((each) => each.use === use)?.sessions ?? 0;
  return useSpread(norms.band(use), sessions, ofPlan);
}

function outlookOf(
  campaign: Campaign,
  store: Store,
  use: Float64Array,
  spread: UseSpread,
  keepsDays: number | null,
): StoreOutlook {
  const { planFrom } = campaign;
  const deliveries = campaign.deliveries.filter((each) => each.store === store.id);
  const along = (need: Float64Array): RunDown =>
    runDown(store, arrivalsOf(deliveries, planFrom), need, planFrom);
  const need = needOf(use, spread);
  const [expected, more, less] = [along(need.mid), along(need.high), along(need.low)];
  const on = ({ outOn }: RunDown): Day | null => (outOn === null ? null : addDays(planFrom, outOn));
  return {
    ...{ store, use, expected, more, less },
    aWeek: use.subarray(0, FOUR_WEEKS).reduce((sum, each) => sum + each, 0) / (FOUR_WEEKS / 7),
    runsOut: { p10: on(more), p50: on(expected), p90: on(less) },
    onTheWay: onTheWay(store, deliveries, need.high, planFrom),
    orders: storeOrders(store, { expected, more }, planFrom, keepsDays),
  };
}

/** Stores that serve the same use carry it in proportion to what each has and expects; alone, all of it. */
function shareOf(campaign: Campaign, store: Store): number {
  const has = (each: Store): number => each.onHand + expectedOf(campaign, each) + 1e-9;
  const same = campaign.stores.filter((each) => each.use === store.use);
  return has(store) / same.reduce((sum, each) => sum + has(each), 0);
}

/** What is on its way from this morning on. */
export const expectedOf = (campaign: Campaign, store: Store): number =>
  campaign.deliveries
    .filter((delivery) => delivery.store === store.id && delivery.day >= campaign.planFrom)
    .reduce((sum, delivery) => sum + delivery.quantity, 0);
