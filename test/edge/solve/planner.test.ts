import { expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import { campaignRoutes } from "../../../src/core/plan/campaign-routes.ts";
import type { PlanStep } from "../../../src/core/plan/improve/course.ts";
import { makePlan } from "../../../src/core/plan/make-plan.ts";
import type { Programme } from "../../../src/core/plan/programme.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { startPlanner } from "../../../src/edge/solve/planner.ts";
import { startSolver } from "../../../src/edge/solve/solver.ts";

const norms = loadNorms(readPublished("norms.json"));
const caseOf = (items: number) => {
  const campaign = makeCampaign({ items, people: 4, weeks: 9, seed: 5 });
  return { campaign, routes: campaignRoutes(publishedRuleBook(), norms, campaign).routes };
};

test("the plan made away from this thread is the plan made on it, and its steps are told on the way", async () => {
  const { campaign, routes } = caseOf(34);
  const planner = startPlanner();
  const solver = startSolver();
  try {
    const steps: PlanStep[] = [];
    const away = await planner.plan(campaign, routes, (at) => steps.push(at));
    const here = await makePlan(campaign, routes, norms, solver.solve);
    expect(away).toEqual(here);
    expect(steps.map(({ step }) => step)).toEqual(expect.arrayContaining(["programme", "prices", "changes"]));
  } finally {
    await Promise.all([planner.close(), solver.close()]);
  }
});

test("told to stop at its first word, the planner ends there with a whole plan", async () => {
  const { campaign, routes } = caseOf(150);
  const planner = startPlanner();
  try {
    const steps: PlanStep[] = [];
    const { plan } = await planner.plan(campaign, routes, (at) => {
      steps.push(at);
      planner.stop();
    });
    expect(plan.routed).toBe(routes.filter((route) => route.destiny === "route").length);
    expect(plan.proof.itemBound).toBeLessThanOrEqual(plan.proof.itemObjective);
    expect(steps.map(({ step }) => step)).not.toContain("changes");
  } finally {
    await planner.close();
  }
});

test("a halted solver leaves searches for whole numbers unanswered and still solves what is relaxed", async () => {
  // Most of x + y with 2x + y at most 3 and neither over 1: relaxed it is 2.
  const programme: Programme = {
    cost: Float64Array.of(-1, -1),
    lower: Float64Array.of(0, 0),
    upper: Float64Array.of(1, 1),
    whole: Uint8Array.of(1, 1),
    rowLower: Float64Array.of(Number.NEGATIVE_INFINITY),
    rowUpper: Float64Array.of(3),
    starts: Int32Array.of(0, 2),
    indices: Int32Array.of(0, 1),
    values: Float64Array.of(2, 1),
  };
  const solver = startSolver();
  try {
    const searching = solver.solve(programme, { relaxed: false, gap: 0 });
    solver.halt();
    expect((await searching).status).toBe("stopped");
    expect((await solver.solve(programme, { relaxed: false, gap: 0 })).values).toHaveLength(0);
    expect((await solver.solve(programme, { relaxed: true, gap: 0 })).objective).toBeCloseTo(-2, 9);
  } finally {
    await solver.close();
  }
});
