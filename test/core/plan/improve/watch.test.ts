import { afterAll, beforeAll, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import { boundFrom } from "../../../../src/core/plan/bound/certificate.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { checkPlan } from "../../../../src/core/plan/checker/check-plan.ts";
import type { PlanStep, Watch } from "../../../../src/core/plan/improve/course.ts";
import { dayPlan } from "../../../../src/core/plan/improve/day-plan.ts";
import { makePlan, PLAN_DEFAULTS } from "../../../../src/core/plan/make-plan.ts";
import { planProblem } from "../../../../src/core/plan/problem.ts";
import { projectStores } from "../../../../src/core/stores/orders.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";
import { type Solver, startSolver } from "../../../../src/edge/solve/solver.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();
const campaign = makeCampaign({ items: 36, people: 4, weeks: 8, seed: 7 });
const { routes } = campaignRoutes(book, norms, campaign);
const problem = planProblem(campaign, routes, norms);
let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

/** Says stop at the n-th step, counted from 1. */
const stopAt = (n: number): Watch => {
  let told = 0;
  return () => (++told >= n ? "stop" : "go on");
};

test("whoever watches, the plan is the same", async () => {
  const steps: PlanStep[] = [];
  const alone = await dayPlan(problem, solver.solve, PLAN_DEFAULTS);
  const watched = await dayPlan(problem, solver.solve, PLAN_DEFAULTS, (at) => {
    steps.push(at);
    return "go on";
  });
  expect(watched.cost).toBe(alone.cost);
  expect(watched.bound).toBe(alone.bound);
  expect(watched.day.pieces).toEqual(alone.day.pieces);
  expect(new Set(steps.map(({ step }) => step))).toEqual(
    new Set(["programme", "prices", "manners", "changes"]),
  );
  steps.slice(1).forEach((at, n) => {
    const before = steps[n] as PlanStep;
    expect(at.cost).toBeLessThanOrEqual(before.cost);
    expect(at.bound).toBeGreaterThanOrEqual(before.bound);
    expect(at.bound).toBeLessThanOrEqual(at.cost);
  });
});

test.each([1, 40, 1100])(
  "stopped at step %i, the plan is whole, breaks no limit and has its bound",
  async (n) => {
    const made = await dayPlan(problem, solver.solve, PLAN_DEFAULTS, stopAt(n));
    expect(made.bound).toBeGreaterThan(0);
    expect(made.bound).toBeLessThanOrEqual(made.cost);
    expect(Math.min(made.cost, boundFrom(problem, made.prices))).toBeCloseTo(made.bound, 6);
    const { plan, use } = await makePlan(
      campaign,
      routes,
      norms,
      solver.solve,
      { ...PLAN_DEFAULTS, draws: 5 },
      stopAt(n),
    );
    const { orders, lines } = projectStores(campaign, use);
    expect(checkPlan(campaign, book, norms, { ...plan, orders, stores: lines })).toEqual([]);
  },
  30_000,
);
