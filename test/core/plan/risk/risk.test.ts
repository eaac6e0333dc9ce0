import { describe, expect, test } from "vitest";
import { plainOrder } from "../../../../src/core/plan/improve/plain-order.ts";
import { riskOf } from "../../../../src/core/plan/risk.ts";
import { walk } from "../../../../src/core/plan/walk.ts";
import type { Day } from "../../../../src/core/units/day.ts";
import { problemOf, smallCampaign } from "./small-problems.ts";

const problem = problemOf(smallCampaign());
const guide = plainOrder(problem);
const planned = walk(problem, guide);
const made = riskOf(problem, guide, planned, 60, 1);
const after = "after the end";
const orAfter = (day: Day | null): string => day ?? after; // sorts after every date

describe("what chance does to a small campaign", () => {
  test("the same campaign has the same risk, to the letter", () => {
    expect(riskOf(problem, guide, planned, 60, 1)).toEqual(made);
  });
  test("no item is boxed after the finish, by any share of the campaigns", () => {
    for (const { box, image } of made.risk.items)
      for (const share of ["p10", "p50", "p90"] as const) {
        expect(orAfter(box[share]) <= orAfter(made.finish[share])).toBe(true);
        if (image) expect(orAfter(image[share]) <= orAfter(box[share])).toBe(true);
      }
  });
  test("in every campaign some item is last, and the shares of those left count the campaigns that leave something", () => {
    expect(made.risk.items.reduce((sum, { last }) => sum + last, 0)).toBeGreaterThanOrEqual(1 - 1e-9);
    const most = Math.max(...made.risk.items.map(({ boxed }) => 1 - boxed));
    expect(made.finish.unfinished / made.finish.draws).toBeGreaterThanOrEqual(most - 1e-9);
  });
  test("must-do items are named as such, and every item on a route has a line", () => {
    expect(made.risk.items.map(({ item }) => item)).toEqual(problem.jobs.map(({ item }) => item.id));
    for (const [at, { must }] of made.risk.items.entries())
      expect(must).toBe(problem.jobs[at]?.item.priority === "must");
  });
  test("the items to watch are at most ten, likeliest late first, and none that the plan leaves", () => {
    const lines = new Map(made.risk.items.map((each) => [each.item, each]));
    const lates = made.risk.watch.map((item) => lines.get(item)?.late ?? 0);
    expect(lates.length).toBeLessThanOrEqual(10);
    expect(lates).toEqual([...lates].sort((a, b) => b - a));
    for (const job of problem.jobs)
      if ((planned.ends.get(job)?.at(-1) ?? -1) < 0) expect(made.risk.watch).not.toContain(job.item.id);
  });
  test("an item due yesterday is late in every campaign, though it is boxed", () => {
    const [first, ...rest] = problem.jobs.filter(({ tasks }) => tasks.some(({ act }) => act === "image"));
    if (!first) throw new Error("Nothing to image.");
    const due = { ...problem, jobs: [{ ...first, due: -1 }, ...rest] };
    const order = plainOrder(due);
    const { risk } = riskOf(due, order, walk(due, order), 10, 1);
    expect(risk.items[0]?.late).toBe(1);
    expect(risk.watch[0]).toBe(first.item.id);
  });
  test("each kind of luck is driven alone; with no stores late deliveries drive nothing", () => {
    const bare = {
      ...problem,
      stores: [],
      sessionUses: new Map(),
      jobs: problem.jobs.map((job) => ({
        ...job,
        tasks: job.tasks.map((task) => ({ ...task, uses: new Map() })),
      })),
    };
    const order = plainOrder(bare);
    const { risk } = riskOf(bare, order, walk(bare, order), 20, 1);
    expect(new Set(risk.drivers.map(({ luck }) => luck)).size).toBe(5);
    expect(risk.drivers.find(({ luck }) => luck === "deliveries")).toMatchObject({ days: 0, items: 0 });
  });
  test("a large collection has fewer campaigns, never fewer than fifty", () => {
    expect(made.finish.draws).toBe(60);
    expect(made.risk.driverDraws).toBeGreaterThanOrEqual(20);
  });
});
