import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { costOf } from "../../../../src/core/plan/improve/plan-cost.ts";
import { planProblem } from "../../../../src/core/plan/problem.ts";
import {
  type Answer,
  type AsItIs,
  answersTo,
  asItIs,
  proved,
} from "../../../../src/core/plan/what-if/answers.ts";
import type { Change } from "../../../../src/core/plan/what-if/change.ts";
import { changed } from "../../../../src/core/plan/what-if/changes.ts";
import { relaxedCase } from "../../../../src/core/plan/what-if/relaxed-case.ts";
import { firstPlan } from "../../../../src/core/plan/what-if/supposed-plan.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";
import { type Solver, startSolver } from "../../../../src/edge/solve/solver.ts";
import { type Desk, openDesk } from "../../../../src/edge/solve/what-if-desk.ts";
import { day } from "./small-campaign.ts";

const campaign: Campaign = makeCampaign({ items: 60, people: 5, weeks: 20, seed: 3 });
const whole = { from: campaign.planFrom, to: campaign.end };
let solver: Solver;
let desk: Desk;
let base: AsItIs;
beforeAll(async () => {
  solver = startSolver();
  desk = openDesk(campaign, publishedRuleBook(), solver.solve);
  base = await asItIs(campaign, desk.routes, desk.means, 30);
});
afterAll(() => solver.close());

const caseOf = (...changes: Change[]) =>
  desk.caseOf({ said: "", changes, releasesAlone: null, freezer: null });
async function asked(...scenarios: readonly Change[]): Promise<Answer[]> {
  const answers: Answer[] = [];
  const cases = scenarios.map((each) => caseOf(each));
  for await (const each of answersTo(base, cases, desk.means)) answers.push(each);
  return answers;
}

describe("a question of several scenarios", () => {
  test("has all first answers before the first proved one, and the same answers asked twice", async () => {
    const ward: Change = { change: "ward", litres: campaign.wardLitres / 2 };
    const camera: Change = { change: "more stations", kind: "camera", count: 1, ...whole };
    const answers = await asked(ward, camera);
    expect(answers.map(({ step, at }) => `${step} ${at}`)).toEqual([
      "first 0",
      "first 1",
      "proved 0",
      "proved 1",
    ]);
    expect(JSON.stringify(await asked(ward, camera))).toBe(JSON.stringify(answers));
  });

  test("a change that touches nothing has a first answer that says so, to the day", async () => {
    const [first] = await asked({ change: "ward", litres: campaign.wardLitres + 1 });
    expect(first).toMatchObject({
      step: "first",
      difference: { boxed: 0, fallOut: [], comeIn: [], days: { p10: 0, p50: 0, p90: 0 } },
    });
  });
});

describe.each<[string, Change]>([
  ["one more fit person", { change: "more people", role: "cleaner", count: 1, mouldWork: true, ...whole }],
  ["a person away", { change: "away", person: "P0", ...whole }],
  ["an earlier end", { change: "end", day: day("2026-09-06") }],
  ["a later end", { change: "end", day: day("2026-11-29") }],
  [
    "more items",
    {
      change: "more items",
      like: campaign.items.map((each) => each.id),
      words: "items",
      count: 20,
      day: day("2026-07-06"),
    },
  ],
])("a first answer with %s", (_, change) => {
  test("is a whole plan that no bound of the scenario's own forbids", async () => {
    const its = caseOf(change);
    const problem = planProblem(its.campaign, its.routes, desk.means.norms);
    const { day: walked, plan } = firstPlan(problem, its.routes, base.supposed, 5);
    const relaxed = await relaxedCase(problem, its.routes, solver.solve);
    expect(walked.ends.size).toBe(problem.jobs.length);
    expect(plan.left.filter((each) => each.kind === "no time").length + walked.boxed).toBe(
      problem.jobs.length,
    );
    expect(costOf(problem, walked)).toBeGreaterThanOrEqual(relaxed.relaxed.objective * (1 - 1e-6));
  });
});

test("items asked to come last are boxed later, on the mean, than asked to come first; their work stays the same", async () => {
  const mouldy = desk.routes.flatMap(({ item, conditions, destiny }) =>
    destiny === "route" && conditions.some((each) => each.startsWith("mould_")) ? [item] : [],
  );
  expect(mouldy.length).toBeGreaterThan(3);
  const meanBox = async (place: "first" | "last"): Promise<number> => {
    const its = caseOf({ change: "order", items: mouldy, words: "mouldy", place });
    const { supposed } = await proved(base, its, desk.means);
    expect(supposed.problem.jobs.map((job) => job.tasks)).toEqual(
      base.supposed.problem.jobs.map((job) => job.tasks),
    );
    const boxed = [...supposed.day.ends].filter(([job]) => mouldy.includes(job.item.id));
    return boxed.reduce((sum, [, ends]) => sum + (ends.at(-1) ?? 0), 0) / boxed.length;
  };
  expect(await meanBox("last")).toBeGreaterThan(await meanBox("first"));
});

describe("heat in the work rooms only takes away", () => {
  const span = { from: day("2026-06-15"), to: day("2026-07-31") };
  test.each<[number, number, string]>([
    // State by the limits of NIOSH for light work, felt °C with a coverall and hood; see test/core/physics for the heat model's own checks.
    [24, 0.5, "nothing"],
    [30, 0.7, "rests"],
    [33, 0.7, "closed"],
  ])("%d °C and %d: %s", (dryBulb, relHum, what) => {
    const its = changed(campaign, { change: "room heat", dryBulb, relHum, ...span });
    const [was, is] = [campaign, its].map((each) => planProblem(each, base.routes, desk.means.norms));
    is?.hands.forEach((hand, p) => {
      hand.minutes.forEach((minutes, d) => {
        expect(minutes).toBeLessThanOrEqual(was?.hands[p]?.minutes[d] ?? 0);
        expect(hand.mayMould[d]).toBeLessThanOrEqual(was?.hands[p]?.mayMould[d] ?? 0);
      });
    });
    const rows = its.calendar.slice(campaign.calendar.length);
    expect(rows.some((row) => row.what === "closed")).toBe(what === "closed");
    expect(its.calendar.some((row) => row.what === "hours")).toBe(what === "rests");
  });
});
