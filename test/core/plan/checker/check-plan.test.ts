import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { seeded } from "../../../../src/core/plan/chance.ts";
import type { Fault } from "../../../../src/core/plan/checker/fault.ts";
import type { Plan } from "../../../../src/core/plan/plan.ts";
import { planFaultCodes, sayPlanFault } from "../../../../src/core/say/plan-faults.ts";
import { startSolver } from "../../../../src/edge/solve/solver.ts";
import { BREAKS, GoodPlan } from "./breaks.ts";
import { faultsOf, fullCampaign, planOf, retold } from "./good-plan.ts";

const SEEDS = [1, 2, 3, 4, 5];
const campaign: Campaign = fullCampaign();
const solver = startSolver();
let plan: Plan;
beforeAll(async () => {
  plan = await planOf(campaign, solver.solve);
});
afterAll(() => solver.close());

describe("a good plan", () => {
  test("has no fault, as it is and with its sums told anew", () => {
    expect(faultsOf(campaign, plan)).toEqual([]);
    expect(faultsOf(campaign, retold(campaign, plan))).toEqual([]);
  });
  test("has something of everything that can be broken", () => {
    expect(new Set(plan.left.map(({ kind }) => kind)).size).toBe(3);
    expect(new Set(plan.assignments.map(({ act }) => act)).size).toBe(7);
    expect(plan.orders.length).toBeGreaterThan(0);
  });
});

describe("the checker names what was broken, and nothing else", () => {
  test.each(BREAKS)("%s: %s", (_, code, broken) => {
    for (const seed of SEEDS) {
      const made = broken(new GoodPlan(campaign, plan, seeded(seed)));
      const faults = faultsOf(made.campaign, made.plan);
      expect([...new Set(faults.map((each) => each.code))], `seed ${seed}: ${said(faults)}`).toEqual([code]);
      for (const fault of faults) expect(fault, `seed ${seed}`).toMatchObject(made.about);
    }
  });
  const said = (faults: readonly Fault[]): string =>
    faults
      .slice(0, 4)
      .map((each) => sayPlanFault(each))
      .join(" | ");
});

describe("a fault is said in one plain sentence", () => {
  test.each(BREAKS)("%s: %s", (_, code, broken) => {
    const made = broken(new GoodPlan(campaign, plan, seeded(1)));
    for (const fault of faultsOf(made.campaign, made.plan)) {
      const sentence = sayPlanFault(fault);
      expect(sentence).toMatch(/^[A-Z].*[.]$/);
      expect(sentence).not.toMatch(/undefined|null|NaN|\d{4}-\d{2}-\d{2}| {2}/);
      for (const name of [fault.item, fault.store]) if (name) expect(sentence).toContain(name);
    }
    expect(planFaultCodes()).toContain(code);
  });
  test("every code is broken above, but for a hold, which its own claim breaks", () => {
    const broken = new Set<string>(BREAKS.map(([, code]) => code));
    expect(planFaultCodes().filter((code) => !broken.has(code))).toEqual(["held"]);
  });
});
