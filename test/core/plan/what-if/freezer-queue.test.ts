import { describe, expect, test } from "vitest";
import type { Route } from "../../../../src/core/care/care.ts";
import { type FreezerQueue, freezerQueueOf } from "../../../../src/core/plan/what-if/freezer-queue.ts";
import type { SupposedPlan } from "../../../../src/core/plan/what-if/supposed-plan.ts";
import { addDays } from "../../../../src/core/units/day.ts";
import { day } from "./small-campaign.ts";

const start = day("2026-06-01");
/** Items with live insects that reach the Ward so many days after the start. */
function queueOf(days: readonly number[], items: number, cycleDays: number): FreezerQueue {
  const routes = days.map(
    (_, at) =>
      ({ item: `I${at}`, destiny: "route", steps: [], conditions: ["insect_active"] }) as unknown as Route,
  );
  const assignments = days.map((d, at) => ({ item: `I${at}`, act: "admit", day: addDays(start, d) }));
  const plan = { planFrom: start, end: addDays(start, 59), assignments } as unknown as SupposedPlan;
  return freezerQueueOf(routes, plan, { items, cycleDays });
}

// Worked by hand: a batch leaves when the freezer is free and somebody waits.
describe("a freezer of batches", () => {
  test("130 items at once, 60 a batch of 9 days: three batches, at 0, 9 and 18 days, the last out after 27", () => {
    const queue = queueOf(Array(130).fill(0), 60, 9);
    expect(queue).toMatchObject({ toFreeze: 130, cycles: 3, lastOut: addDays(start, 27), tooLate: 0 });
    expect(queue.waits).toEqual({ p50: 9, p90: 9, longest: 18 });
  });
  test("what comes a day after the door closed waits for the whole batch", () => {
    expect(queueOf([0, 1], 60, 9)).toMatchObject({ cycles: 2, waits: { longest: 8 } });
  });
  test("items further apart than a batch never wait", () => {
    expect(queueOf([0, 9, 20], 1, 9)).toMatchObject({ cycles: 3, waits: { p50: 0, p90: 0, longest: 0 } });
  });
  test("what is out only after the end is counted", () => {
    expect(queueOf([0, 0, 0], 1, 25)).toMatchObject({ lastOut: addDays(start, 75), tooLate: 1 });
  });
  test("nothing to freeze: no batch and no wait", () => {
    expect(queueOf([], 60, 9)).toMatchObject({ toFreeze: 0, cycles: 0, lastOut: null });
  });
});
