import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { checkPlan } from "../../core/plan/checker/check-plan.ts";
import { makePlan } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { sayBrokenPlan } from "../../core/say/plan-faults.ts";
import { projectStores } from "../../core/stores/orders.ts";
import type { Day } from "../../core/units/day.ts";
import { readCampaignFolder } from "../../edge/intake/read-campaign.ts";
import { readPublished } from "../../edge/published.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";
import { startSolver } from "../../edge/solve/solver.ts";
import { BrokenPlan } from "./broken-plan.ts";

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
  const read = await readCampaignFolder(folder);
  const book = ruleBookOf(folder);
  if (!read.campaign) return { campaign: null, problems: read.problems };
  if (!book.ok) return { campaign: null, problems: [...read.problems, ...book.problems] };
  const campaign = planFrom ? { ...read.campaign, planFrom } : read.campaign;
  progress(`Deciding care for ${campaign.items.length} items …`);
  const norms = loadNorms(readPublished("norms.json"));
  const { care, routes } = campaignRoutes(book.value, norms, campaign);
  progress("Planning …");
  const solver = startSolver();
  try {
    const planned = await makePlan(campaign, routes, norms, solver.solve);
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
    await solver.close();
  }
}
