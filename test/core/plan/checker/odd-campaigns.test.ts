import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { boundFrom } from "../../../../src/core/plan/bound/certificate.ts";
import { dayModel, noPrices } from "../../../../src/core/plan/bound/day-model.ts";
import { dayWindows } from "../../../../src/core/plan/bound/day-windows.ts";
import { searchPrices } from "../../../../src/core/plan/bound/price-search.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { tryOut } from "../../../../src/core/plan/improve/best-manner.ts";
import { ExactProgramme } from "../../../../src/core/plan/improve/exact-programme.ts";
import { isBorne } from "../../../../src/core/plan/improve/exact-walk.ts";
import { plainOrder } from "../../../../src/core/plan/improve/plain-order.ts";
import { type PlanProblem, planProblem } from "../../../../src/core/plan/problem.ts";
import { sayPlanFault } from "../../../../src/core/say/plan-faults.ts";
import { type Solver, startSolver } from "../../../../src/edge/solve/solver.ts";
import { book, faultsOf, norms, planOf } from "./good-plan.ts";
import { oddCampaign } from "./odd-campaign.ts";

let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

const problemOf = (campaign: Campaign): PlanProblem =>
  planProblem(campaign, campaignRoutes(book, norms, campaign).routes, norms);

describe("campaigns in which something is scarce, shut, short or half done", () => {
  // Few items are planned exactly, many by walking; in between the exact search may take long.
  test.each([
    [2, 7, 15],
    [46, 60, 8],
  ])("%i to %i items: the plan breaks no limit", async (min, max, numRuns) => {
    await fc.assert(
      fc.asyncProperty(oddCampaign({ min, max }), async (campaign) => {
        const faults = faultsOf(campaign, await planOf(campaign, solver.solve));
        expect(faults.map((fault) => sayPlanFault(fault))).toEqual([]);
      }),
      { numRuns, seed: 11 },
    );
  });

  test("the bound is what the search says it is, and no plan walked in plain order lies below it", () => {
    fc.assert(
      fc.property(oddCampaign({ min: 2, max: 40 }), (campaign) => {
        const problem = problemOf(campaign);
        const model = dayModel(problem);
        const { cost } = tryOut(problem, plainOrder(problem));
        const found = searchPrices(model, noPrices(problem, model.worked.days.length), cost, 60);
        const bound = boundFrom(problem, found.prices);
        expect(bound).toBeCloseTo(found.bound, 6);
        expect(bound).toBeLessThanOrEqual(cost + 1e-6);
      }),
      { numRuns: 30, seed: 12 },
    );
  });

  test("every plan that is walked is a solution of the exact programme, at its own cost", async () => {
    await fc.assert(
      fc.asyncProperty(oddCampaign({ min: 2, max: 14 }), async (campaign) => {
        const problem = problemOf(campaign);
        const model = dayModel(problem, true);
        const { day, cost } = tryOut(problem, plainOrder(problem));
        expect(isBorne(model, day)).toBe(true);
        if (problem.jobs.length === 0 || model.worked.days.length === 0) return;
        const prices = noPrices(problem, model.worked.days.length);
        const parts = new ExactProgramme(model, dayWindows(model, prices, cost + 1));
        const { lower, upper } = parts.programme;
        const fix = (column: number, value: number): void => {
          lower[column] = value;
          upper[column] = value;
        };
        problem.jobs.forEach((job, j) => {
          day.ends.get(job)?.forEach((end, s) => {
            const ended = parts.ended[(model.firstTask[j] ?? 0) + s] ?? [];
            model.worked.days.forEach((d, i) => {
              fix(ended[i] as number, end >= 0 && end <= d ? 1 : 0);
            });
          });
        });
        parts.exposed.forEach((columns, p) => {
          columns.forEach((column, i) => {
            const exposed = day.exposed[p]?.[model.worked.days[i] as number] ?? 0;
            if (column >= 0) fix(column, exposed);
            else expect(exposed).toBe(0);
          });
        });
        const solved = await solver.solve(parts.programme, { relaxed: true, gap: 0 });
        expect(solved.status).toBe("optimal");
        expect(solved.objective + parts.fixedCost).toBeCloseTo(cost, 3);
      }),
      { numRuns: 20, seed: 13 },
    );
  });
});
