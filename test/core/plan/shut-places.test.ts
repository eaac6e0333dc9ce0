import { expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import { boundFrom } from "../../../src/core/plan/bound/certificate.ts";
import { noPrices, workedDays } from "../../../src/core/plan/bound/day-model.ts";
import { dearWhereShut } from "../../../src/core/plan/bound/shut-places.ts";
import { campaignRoutes } from "../../../src/core/plan/campaign-routes.ts";
import { planProblem } from "../../../src/core/plan/problem.ts";
import { addDays } from "../../../src/core/units/day.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

test("a camera that is shut for six weeks raises the bound by what nobody can be pictured then, at no price at all", () => {
  const made = makeCampaign({ items: 40, people: 5, weeks: 20, seed: 3 });
  const campaign: Campaign = {
    ...made,
    calendar: [{ who: "camera", what: "closed", from: made.start, to: addDays(made.start, 41) }],
  };
  const norms = loadNorms(readPublished("norms.json"));
  const { routes } = campaignRoutes(publishedRuleBook(), norms, campaign);
  const problem = planProblem(campaign, routes, norms);
  const free = noPrices(problem, workedDays(problem).days.length);
  const before = boundFrom(problem, free);
  const after = boundFrom(problem, dearWhereShut(problem, free));
  const weights = problem.jobs.reduce((sum, job) => sum + job.weight, 0);
  // Every item that needs a picture waits six weeks at least: day 42 is the first on which it can be boxed.
  expect(after).toBeGreaterThanOrEqual(42 * weights);
  expect(after).toBeGreaterThan(before);
});
