import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { checkPlan } from "../../core/plan/checker/check-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { sayBrokenPlan } from "../../core/say/plan-faults.ts";
import { projectStores } from "../../core/stores/orders.ts";
import type { Day } from "../../core/units/day.ts";
import { openCampaign } from "../../edge/keep/open-campaign.ts";
import { readPublished } from "../../edge/published.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";
import { startPlanner } from "../../edge/solve/planner.ts";
import { BrokenPlan } from "./broken-plan.ts";
import { stoppable } from "./interrupts.ts";
import { PlanningLine } from "./planning-line.ts";

export interface PlannedFolder {
  readonly campaign: Campaign;
  readonly problems: readonly Problem[];
  readonly care: readonly ItemCare[];
  readonly routes: readonly Route[];
  readonly plan: Plan;
  /** What the plan draws from each store, day by day. */
  readonly use: ReadonlyMap<string, Float64Array>;
}

/** Reads a campaign folder, decides care and makes the plan; null with the problems when the folder cannot be used. */
export async function planFolder(
  folder: string,
  planFrom: Day | undefined,
  progress: (words: string) => void,
): Promise<PlannedFolder | { readonly campaign: null; readonly problems: readonly Problem[] }> {
  progress("Reading the campaign folder …");
  const read = await openCampaign(folder, planFrom);
  const book = ruleBookOf(folder);
  if (!read.campaign) return { campaign: null, problems: read.problems };
  if (!book.ok) return { campaign: null, problems: [...read.problems, ...book.problems] };
  const { campaign } = read;
  progress(`Deciding care for ${campaign.items.length} items …`);
  const norms = loadNorms(readPublished("norms.json"));
  const { care, routes } = campaignRoutes(book.value, norms, campaign);
  progress("Planning …");
  const planner = startPlanner();
  const line = new PlanningLine(progress);
  try {
    const planning = planner.plan(campaign, routes, (at) => line.step(at));
    const planned = await stoppable(planning, () => planner.stop(), progress);
    const { orders, lines } = projectStores(campaign, planned.use);
    const plan = { ...planned.plan, orders, stores: lines };
    const faults = checkPlan(campaign, book.value, norms, plan);
    if (faults.length > 0) throw new BrokenPlan(sayBrokenPlan(faults));
    return {
      campaign,
      problems: read.problems,
      care,
      routes,
      plan,
      use: planned.use,
    };
  } finally {
    line.end();
    await planner.close();
  }
}
