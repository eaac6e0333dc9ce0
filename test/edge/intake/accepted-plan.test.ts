import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { acceptedPlanFrom } from "../../../src/edge/intake/accepted-plan.ts";

const written = readFileSync("test/golden/good-plan/plan.json", "utf8");

test("a plan as it was written is read back, its work line by line", () => {
  const plan = acceptedPlanFrom(written);
  const whole = JSON.parse(written);
  expect(plan?.assignments).toEqual(whole.assignments);
  expect(plan?.itemDays).toEqual(whole.itemDays);
  expect(plan?.planFrom).toBe(whole.planFrom);
});
test.each([
  ["no JSON", "{"],
  ["another file", '{"name": "X"}'],
  ["a day that does not exist", written.replace(/"planFrom": "[^"]+"/, '"planFrom": "2026-02-30"')],
])("%s is no plan", (_, text) => {
  expect(acceptedPlanFrom(text)).toBeNull();
});
