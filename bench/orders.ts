import { loadNorms } from "../src/core/care/norms.ts";
import type { Store } from "../src/core/items/campaign.ts";
import { projectStores } from "../src/core/stores/orders.ts";
import { choosePacks } from "../src/core/stores/packs/choose-packs.ts";
import { readPublished } from "../src/edge/published.ts";
import { storeMeans } from "../src/edge/store-goods.ts";
import { makeCampaign } from "./make-campaign.ts";

const TURNS = 5;
const LIMIT_SECONDS = 1;

/** Some thirty stores that all run out, each in three packs of different prices. */
const stores = (readPublished("norms.json") as { consumables: readonly { id: string }[] }).consumables.map(
  ({ id }, at): Store => ({
    ...{ id, name: id, use: id, unit: "pc", onHand: 40 + at, pack: 12, leadDays: 14 + at, route: "air" },
    packs: [
      { size: 12, price: 10 },
      { size: 48, price: 37 },
      { size: 110, price: 80 },
    ],
  }),
);

/** The order list of a campaign of 20,000 items, the plan's use given; then packs for needs that grow. */
export function benchOrders(): void {
  const campaign = { ...makeCampaign({ items: 20000, people: 12, weeks: 52, seed: 1 }), stores };
  const days = 52 * 7;
  const use = new Map(stores.map((store, at) => [store.use, daily(days, 3 + at)]));
  const means = storeMeans(loadNorms(readPublished("norms.json")), { measured: [] });
  const times = timed(() => projectStores(campaign, use, means).orders.length);
  console.log(`Order list of 20,000 items, ${stores.length} stores, ${days} days (limit ${LIMIT_SECONDS} s)`);
  console.log(`  first ${ms(times.first)}, median of ${TURNS} ${ms(times.median)}; ${times.value} orders`);
  console.log("Packs of 24, 35 and 90 at 19, 26 and 71, to the least cost");
  for (const need of [100, 10_000, 1_000_000]) {
    const found = timed(() => choosePacks(need, PACKS).cost);
    console.log(`  ${String(need).padStart(9)} units: median ${ms(found.median)}, cost ${found.value}`);
  }
}

const PACKS = [
  { size: 24, price: 19 },
  { size: 35, price: 26 },
  { size: 90, price: 71 },
];

/** Uneven from day to day, none on every seventh. */
const daily = (days: number, most: number): Float64Array =>
  Float64Array.from({ length: days }, (_, d) => (d % 7 === 6 ? 0 : (most * (1 + (d % 5))) / 5));

function timed<T>(work: () => T): { readonly first: number; readonly median: number; readonly value: T } {
  const turns = Array.from({ length: TURNS }, () => {
    const from = performance.now();
    const value = work();
    return { value, time: performance.now() - from };
  });
  const times = turns.map(({ time }) => time);
  const median = [...times].sort((a, b) => a - b)[TURNS >> 1] ?? 0;
  return { first: times[0] ?? 0, median, value: (turns[0] as (typeof turns)[number]).value }; // there are some
}

const ms = (time: number): string => `${time.toFixed(1)} ms`;
