import { expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import { projectStores } from "../../../src/core/stores/orders.ts";
import { addDays } from "../../../src/core/units/day.ts";

const made = makeCampaign({ items: 10, people: 2, weeks: 20, seed: 1 });
const stock = (onHand: number, delivered: number) => ({
  ...made,
  stores: [
    { id: "masks", name: "masks", use: "k-mask", unit: "pc", onHand, pack: 20, leadDays: 42, route: "air" },
  ],
  deliveries:
    delivered > 0 ? [{ store: "masks", day: addDays(made.planFrom, 100), quantity: delivered }] : [],
});
const twoADay = new Map([["k-mask", new Float64Array(140).fill(2)]]);

test("a store that lasts is not ordered", () => {
  expect(projectStores(stock(280, 0), twoADay).orders).toEqual([]);
});

test("an order covers the worst day and a tenth more, in whole packs, and is sent three weeks early", () => {
  // 200 pc last 100 days; the last 40 days need 80, and a tenth more is 88: five packs of 20
  const [order] = projectStores(stock(200, 0), twoADay).orders;
  expect(order).toMatchObject({
    packs: 5,
    quantity: 100,
    neededBy: addDays(made.planFrom, 100),
    orderBy: addDays(made.planFrom, 37), // day 100 less six weeks and three: the re-order point of common practice
    late: false,
  });
});

test("a delivery that comes later does not hide the days without", () => {
  // 160 pc last 80 days; 40 are short before 200 come on day 100
  const [order] = projectStores(stock(160, 200), twoADay).orders;
  expect(order).toMatchObject({ packs: 3, neededBy: addDays(made.planFrom, 80) });
});

test("an order that cannot be here in time is said to be late", () => {
  const [order] = projectStores(stock(40, 0), twoADay).orders;
  expect(order).toMatchObject({ late: true, orderBy: made.planFrom });
});
