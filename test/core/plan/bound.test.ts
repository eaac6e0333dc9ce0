import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import { careOfCampaign } from "../../../src/core/care/item-care.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import { routeOf } from "../../../src/core/care/route.ts";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import { boundFrom } from "../../../src/core/plan/bound/certificate.ts";
import { dayModel, noPrices, type Prices } from "../../../src/core/plan/bound/day-model.ts";
import { searchPrices } from "../../../src/core/plan/bound/price-search.ts";
import { seeded } from "../../../src/core/plan/chance.ts";
import { checkPlan } from "../../../src/core/plan/checker/check-plan.ts";
import { tryOut } from "../../../src/core/plan/improve/best-manner.ts";
import { dayPlan } from "../../../src/core/plan/improve/day-plan.ts";
import { plainOrder } from "../../../src/core/plan/improve/plain-order.ts";
import { makePlan, PLAN_DEFAULTS } from "../../../src/core/plan/make-plan.ts";
import { type PlanProblem, planProblem } from "../../../src/core/plan/problem.ts";
import { projectStores } from "../../../src/core/stores/orders.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { type Solver, startSolver } from "../../../src/edge/solve/solver.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();
let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

const routesOf = (campaign: Campaign) => careOfCampaign(book, campaign).map((each) => routeOf(norms, each));
const problemOf = (campaign: Campaign): PlanProblem => planProblem(campaign, routesOf(campaign), norms);

/** Prices drawn at random: some dear, most nothing. */
function anyPrices(problem: PlanProblem, draw: () => number): Prices {
  const prices = noPrices(problem, dayModel(problem).worked.days.length);
  const scale = 10 ** (3 * draw() - 3);
  for (const row of [...prices.work, ...prices.places.values(), prices.ward, ...prices.stores])
    row.forEach((_, i) => {
      row[i] = draw() < 0.3 ? scale * draw() : 0;
    });
  return prices;
}

describe("the bound that prices prove", () => {
  const problem = problemOf(makeCampaign({ items: 80, people: 4, weeks: 12, seed: 3 }));
  const model = dayModel(problem);

  test("lies below a plan whatever the prices, as long as none is negative", () => {
    const draw = seeded(1);
    const { cost } = tryOut(problem, plainOrder(problem));
    for (let n = 0; n < 25; n++)
      expect(boundFrom(problem, anyPrices(problem, draw)), `draw ${n}`).toBeLessThanOrEqual(cost);
  });

  test("is what the search says it is, counted plainly", () => {
    const draw = seeded(2);
    for (let n = 0; n < 5; n++) {
      const found = searchPrices(model, anyPrices(problem, draw), 1e4, 30);
      expect(boundFrom(problem, found.prices)).toBeCloseTo(found.bound, 6);
    }
  });

  test("refuses a negative price", () => {
    const prices = noPrices(problem, model.worked.days.length);
    prices.ward[3] = -1e-9;
    expect(() => boundFrom(problem, prices)).toThrow("negative");
  });
});

describe("a campaign of few items", () => {
  test.each([
    [8, 1],
    [12, 2],
    [16, 3],
    [20, 4],
  ])("%i items, seed %i: the plan is the best there is, and breaks no limit", async (items, seed) => {
    const campaign = makeCampaign({ items, people: 3, weeks: 8, seed });
    const { plan, use } = await makePlan(campaign, routesOf(campaign), norms, solver.solve, {
      ...PLAN_DEFAULTS,
      draws: 5,
    });
    expect(plan.proof.itemGap).toBe(0);
    const { orders, lines } = projectStores(campaign, use);
    const whole = { ...plan, orders, stores: lines };
    expect(checkPlan(campaign, book, norms, whole)).toEqual([]);
  });
});

test("300 items: the day-by-day plan is within 2 per cent of the bound", async () => {
  const problem = problemOf(makeCampaign({ items: 300, people: 4, weeks: 26, seed: 1 }));
  const made = await dayPlan(problem, solver.solve, PLAN_DEFAULTS);
  expect((made.cost - made.bound) / made.cost).toBeLessThanOrEqual(0.02);
});
