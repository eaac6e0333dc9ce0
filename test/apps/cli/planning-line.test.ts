import { expect, test } from "vitest";
import { PlanningLine } from "../../../src/apps/cli/planning-line.ts";
import type { PlanStep } from "../../../src/core/plan/improve/course.ts";

const at = (step: PlanStep["step"], done: number, gap: number): PlanStep => ({
  step,
  done,
  gap,
  cost: 1000,
  bound: 1000 * (1 - gap),
});

test("on a terminal one line is written over, and taken away at the end", () => {
  const written: string[] = [];
  const screen = { isTTY: true, columns: 80, write: (text: string) => written.push(text) > 0 };
  const complained: string[] = [];
  const line = new PlanningLine((each) => complained.push(each), screen);
  line.step(at("programme", 1, 1));
  line.step(at("prices", 0.25, 0.042));
  line.step(at("exact", 0, 0.01));
  line.end();
  expect(written[0]).toBe("\rPlanning: first plan");
  expect(written[1]).toBe("\rPlanning: what everything is worth 25 %; at most 4.2 % could still be gained");
  expect(written[2]).toMatch(/^\rPlanning: item by item; at most 1\.0 % could still be gained {2,}$/);
  expect(written[3]).toMatch(/^\r +\r$/);
  expect(written.join("")).not.toContain("\n");
  expect(complained).toEqual([]);
});

test("a narrow terminal gets no more than its width", () => {
  const written: string[] = [];
  const screen = { isTTY: true, columns: 30, write: (text: string) => written.push(text) > 0 };
  new PlanningLine(() => {}, screen).step(at("prices", 0.25, 0.042));
  expect(written[0]).toHaveLength(30); // the return and 29 letters
});

test("where there is no terminal a short plan is made without a line", () => {
  const complained: string[] = [];
  const screen = { isTTY: false, columns: 0, write: () => true };
  const line = new PlanningLine((each) => complained.push(each), screen);
  line.step(at("prices", 0.5, 0.02));
  line.end();
  expect(complained).toEqual([]);
});
