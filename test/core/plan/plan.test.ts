import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import type { Plan } from "../../../src/core/plan/plan.ts";
import { sayPlanFault } from "../../../src/core/say/plan-faults.ts";
import { type Solver, startSolver } from "../../../src/edge/solve/solver.ts";
import { faultsOf, planOf as planWith } from "./checker/good-plan.ts";

let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

const planOf = (campaign: Campaign): Promise<Plan> => planWith(campaign, solver.solve);
const small = { items: 120, people: 5, weeks: 12 };

describe.each([1, 2, 3])("an invented campaign, seed %i", (seed) => {
  const campaign = makeCampaign({ ...small, seed });
  test("breaks no limit", async () => {
    const faults = faultsOf(campaign, await planOf(campaign));
    expect(faults.map((fault) => sayPlanFault(fault))).toEqual([]);
  });
  test("proves its programme within 2 per cent, and the day-by-day plan never beats the bound", async () => {
    const { proof } = await planOf(campaign);
    expect(proof.gap).toBeLessThanOrEqual(0.02);
    expect(proof.itemObjective).toBeGreaterThanOrEqual(proof.itemBound);
    expect(proof.itemGap).toBeLessThanOrEqual(0.04);
  });
});

test("the same campaign gives the same plan, to the letter", async () => {
  const campaign = makeCampaign({ ...small, seed: 4 });
  expect(JSON.stringify(await planOf(campaign))).toBe(JSON.stringify(await planOf(campaign)));
});

test("nobody who is on clean work is ever near mould, and with nobody fit no mouldy item is touched", async () => {
  const made = makeCampaign({ ...small, seed: 5 });
  const campaign = { ...made, people: made.people.map((person) => ({ ...person, mouldWork: false })) };
  const plan = await planOf(campaign);
  expect(plan.assignments.filter((each) => each.exposed)).toEqual([]);
  expect(plan.left.some((each) => each.kind === "no time" && each.why.includes("Ward"))).toBe(true);
});

test("without masks no mould session starts before an order could be here", async () => {
  const made = makeCampaign({ ...small, seed: 6 });
  const campaign = {
    ...made,
    stores: made.stores.map((store) => (store.use === "k-mask" ? { ...store, onHand: 0 } : store)),
    deliveries: made.deliveries.filter((delivery) => delivery.store !== "masks"),
  };
  const plan = await planOf(campaign);
  const first = plan.assignments
    .filter((each) => each.exposed)
    .map((each) => each.day)
    .sort()[0];
  expect(first === undefined || first >= "2026-07-13").toBe(true); // 42 days of lead time
});

test("with no camera days nothing is photographed and every item is named as left", async () => {
  const made = makeCampaign({ ...small, seed: 7 });
  const campaign = { ...made, stations: made.stations.filter((station) => station.kind !== "camera") };
  const plan = await planOf(campaign);
  expect(plan.assignments.some((each) => each.act === "image")).toBe(false);
  expect(plan.finish.p50).toBeNull();
});

test("one more fit person never makes the proved optimum worse", async () => {
  const made = makeCampaign({ ...small, seed: 8 });
  const extra = { ...made.people[0], code: "PX", name: "Person X" } as (typeof made.people)[number];
  const [less, more] = [await planOf(made), await planOf({ ...made, people: [...made.people, extra] })];
  expect(more.proof.bound).toBeLessThanOrEqual(less.proof.bound * 1.0001);
});
