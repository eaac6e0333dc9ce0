import { describe, expect, test } from "vitest";
import { loadRuleBook } from "../../../../src/core/care/load-rules.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { seeded } from "../../../../src/core/plan/chance.ts";
import { checkPlan } from "../../../../src/core/plan/checker/check-plan.ts";
import type { Fault } from "../../../../src/core/plan/checker/fault.ts";
import type { Plan } from "../../../../src/core/plan/plan.ts";
import { planFaultCodes, sayBrokenPlan, sayPlanFault } from "../../../../src/core/say/plan-faults.ts";
import { addDays, type Day } from "../../../../src/core/units/day.ts";
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

describe("a bag that lies in the Ward already", () => {
  const item = "B00049";
  const from = "2026-05-29" as Day;
  const admission = { day: from, item, act: "admit", person: "P2", minutes: 6, exposed: true } as const;
  const inWard = { ...campaign, sessions: [admission] };
  const isAdmission = (each: Plan["assignments"][number]): boolean =>
    each.item === item && each.act === "admit";
  const going = retold(inWard, {
    ...plan,
    assignments: plan.assignments.filter((each) => !isAdmission(each)),
  });
  /** Relative humidity in the bag at noon, a day later each. */
  const read = (...relHums: readonly number[]): Campaign => ({
    ...inWard,
    ward: [
      { item, day: from, minute: 600, what: "closed", value: 12 },
      { item, day: from, minute: 610, what: "gel in", value: 400 },
      ...relHums.map((value, days) => ({
        item,
        day: addDays(from, days),
        minute: 720,
        what: "read" as const,
        value,
        dryBulb: 26,
      })),
    ],
  });

  test("may leave when its norm says so", () => expect(faultsOf(inWard, going)).toEqual([]));
  test("may leave on two dry readings", () => expect(faultsOf(read(0.7, 0.52, 0.5), going)).toEqual([]));
  test("may not leave while its readings say it will be damp", () =>
    expect(faultsOf(read(0.84, 0.83, 0.82), going)).toMatchObject([
      { code: "ward-wait", item, source: "the bag's readings" },
    ]));
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
  test("a plan with many faults says the first dozen and how many more", () => {
    const faults = faultsOf({ ...campaign, wardLitres: 1, stations: [] }, plan);
    const lines = sayBrokenPlan(faults).split("\n");
    expect(lines).toHaveLength(14);
    expect(lines.at(-1)).toBe(`  … and ${faults.length - 12} more.`);
  });
  test("every code is broken above, but for a hold, which its own claim breaks", () => {
    const broken = new Set<string>(BREAKS.map(([, code]) => code));
    expect(planFaultCodes().filter((code) => !broken.has(code))).toEqual(["held"]);
  });
});
