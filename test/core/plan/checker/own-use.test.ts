import { afterAll, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { startSolver } from "../../../../src/edge/solve/solver.ts";
import { faultsOf, planOf } from "./good-plan.ts";

const solver = startSolver();
afterAll(() => solver.close());

const made = makeCampaign({ items: 60, people: 4, weeks: 8, seed: 5 });
const store = (id: string, use: string) => ({
  ...{ id, name: id, use, unit: "pc", onHand: 15, pack: 20, leadDays: 4, route: "local" },
  packs: [
    { size: 20, price: 9 },
    { size: 50, price: 20 },
  ],
});

test("a plan with the team's own use, and orders in packs of two sizes, has no fault; one that forgets the use has", async () => {
  const campaign: Campaign = {
    ...{ ...made, deliveries: [] },
    stores: [store("masks", "k-mask"), store("labels", "k-label")],
    useAgainstNorm: { "k-mask": 1.5, "k-label": 0.8 },
  };
  const plan = await planOf(campaign, solver.solve);
  expect(plan.orders.length).toBeGreaterThan(0);
  expect(faultsOf(campaign, plan)).toEqual([]);
  const { useAgainstNorm: _, ...forgotten } = campaign;
  expect(faultsOf(forgotten, plan).map(({ code }) => code)).toContain("store-line");
  const wrong = plan.orders.map((order) => ({ ...order, quantity: order.quantity + 1 }));
  expect(faultsOf(campaign, { ...plan, orders: wrong }).map(({ code }) => code)).toContain("order-wrong");
});
