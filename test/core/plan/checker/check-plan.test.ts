import { describe, expect, test } from "vitest";
import { loadRuleBook } from "../../../../src/core/care/load-rules.ts";
import { seeded } from "../../../../src/core/plan/chance.ts";
import { checkPlan } from "../../../../src/core/plan/checker/check-plan.ts";
import type { Fault } from "../../../../src/core/plan/checker/fault.ts";
import { planFaultCodes, sayPlanFault } from "../../../../src/core/say/plan-faults.ts";
import { publishedTables } from "../../../../src/edge/rule-book.ts";
import { BREAKS, GoodPlan } from "./breaks.ts";
import { faultsOf, keptCampaign, keptPlan, norms, retold } from "./good-plan.ts";

const SEEDS = [1, 2, 3, 4, 5];
const campaign = keptCampaign();
const plan = keptPlan();

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

test("an item that a rule holds until somebody has answered is not worked on", () => {
  const rule = {
    id: "X1",
    tier: 3,
    unsure: "fire",
    text: "Newspapers wait for the family.",
    when: { f: "item.format", op: "eq", v: "newspaper" },
    then: [{ verb: "require", action: "hold_item" }],
    why: "Asked for by the family",
    source: "the family",
    examples: [
      { given: { "item.format": "newspaper" }, expect: "yes" },
      { given: { "item.format": "map_plan" }, expect: "no" },
      { given: { "item.format": "unsure" }, expect: "unsure" },
    ],
  };
  const local = loadRuleBook(publishedTables(), { file: "rules.json", rules: [rule] });
  if (!local.ok) throw new Error(local.problems[0]?.got);
  const faults = checkPlan(campaign, local.value, norms, plan);
  expect(new Set(faults.map(({ code, source }) => `${code} ${source}`))).toEqual(new Set(["held X1"]));
});

test("boxing may follow on the same day, and the planner makes use of it", () => {
  const sameDay = plan.itemDays.filter(({ days }) => days.box !== undefined && days.box === days.image);
  expect(sameDay.length).toBeGreaterThan(0);
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
