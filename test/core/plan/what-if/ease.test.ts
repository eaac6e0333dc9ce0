import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { asItIs } from "../../../../src/core/plan/what-if/answers.ts";
import { type Ask, asksFor } from "../../../../src/core/plan/what-if/ease/asks.ts";
import { type Ease, ease } from "../../../../src/core/plan/what-if/ease/ease.ts";
import { whyNot } from "../../../../src/core/plan/what-if/why-not.ts";
import { sayEased, sayMustLeft, sayNoHelp } from "../../../../src/core/say/ease.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";
import { type Solver, startSolver } from "../../../../src/edge/solve/solver.ts";
import { openDesk } from "../../../../src/edge/solve/what-if-desk.ts";

let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

async function eased(campaign: Campaign, most: number): Promise<{ found: Ease; asked: Ask[] }> {
  const desk = openDesk(campaign, publishedRuleBook(), solver.solve);
  const base = await asItIs(campaign, desk.routes, desk.means, 20);
  const asked: Ask[] = [];
  const trying = ease(base, desk.means, most);
  let step = await trying.next();
  for (; !step.done; step = await trying.next()) asked.push(step.value.ask);
  return { found: step.value, asked };
}

/** The camera is there a quarter of an hour a day and everything else in plenty: by construction it is what binds. */
const made = makeCampaign({ items: 60, people: 5, weeks: 12, seed: 5 });
const short: Campaign = {
  ...made,
  stations: made.stations.map((each) => (each.kind === "camera" ? { ...each, minutesADay: 15 } : each)),
  stores: [],
  deliveries: [],
};

describe("a campaign whose camera is the only narrow place", () => {
  let run: { found: Ease; asked: Ask[] };
  beforeAll(async () => {
    run = await eased(short, 6);
  });

  test("is said to be held back by the camera first", () => {
    expect(run.found.binds[0]?.resource).toBe("camera");
  });
  test("more of the camera helps, and comes before all that helps less for the asking", () => {
    const [best] = run.found.tried;
    expect(best).toMatchObject({ resource: "camera", helps: true });
    const worth = run.found.tried.filter((each) => each.helps).map((each) => each.savedDays / each.effort);
    expect(worth).toEqual([...worth].sort((a, b) => b - a));
  });
  test("one more cleaner is tried and said to help nothing", () => {
    const idle = run.found.tried.filter((each) => !each.helps);
    expect(idle.map((each) => each.resource)).toContain("mould minutes");
    for (const each of idle) expect(sayNoHelp(each, short)).toMatch(/saves (none|\d)/);
  });
  test("no more plans are made than asked for, each announced before it is made", () => {
    expect(run.asked.length).toBeLessThanOrEqual(6);
    expect(run.found.tried).toHaveLength(run.asked.length);
  });
  test("every must-do item left out is named, with what brings it in or that nothing tried does", () => {
    const { mustLeft, tried } = run.found;
    expect(mustLeft.length).toBeGreaterThan(0);
    const words = sayMustLeft(mustLeft, short).join(" ");
    expect(words).toContain(mustLeft[0]?.left.item);
    for (const { by, left } of mustLeft) {
      const ways = tried.filter((each) => each.mustIn.some(({ item }) => item === left.item) && each.helps);
      expect(by === null).toBe(ways.length === 0);
      if (by) expect(by.effort).toBe(Math.min(...ways.map((each) => each.effort)));
    }
  });
  test("what helps at best helps no less than nothing: more of anything is never worse", () => {
    for (const { savedAtBest } of run.found.tried) expect(savedAtBest ?? 0).toBeGreaterThanOrEqual(-1e-4);
  });
  test("its sentences name days and no reason of a person", () => {
    for (const each of run.found.tried.filter(({ helps }) => helps))
      expect(sayEased(each, short)).toMatch(/\(.+\): .*\.$/);
  });
});

test("every ask of a resource can be supposed, and none loosens what guards people", () => {
  const resources = ["camera", "ward", "mould minutes", "hands:cleaner", "hands:photographer", "clean bench"];
  const all = [...resources, "store:masks", "store:boxes"].flatMap((each) => asksFor(made, each));
  expect(all.length).toBeGreaterThan(10);
  for (const { changes } of all)
    for (const change of changes) {
      expect(whyNot(made, change)).toBeNull();
      expect(["tighter", "hours", "clean work"]).not.toContain(change.change);
    }
});
