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
import { type StockNow, stockNow } from "../../core/stores/use/stock-now.ts";
import type { Day } from "../../core/units/day.ts";
import { openCampaign } from "../../edge/keep/open-campaign.ts";
import { readPublished } from "../../edge/published.ts";
import { ruleBookOf } from "../../edge/rule-book.ts";
import { startPlanner } from "../../edge/solve/planner.ts";
import { storeMeans } from "../../edge/store-goods.ts";
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
  /** What the counts and the work since said of the stores; its campaign is the one planned. */
  readonly stock: StockNow;
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
  progress(`Deciding care for ${read.campaign.items.length} items …`);
  const norms = loadNorms(readPublished("norms.json"));
  const { care, routes, worked } = campaignRoutes(book.value, norms, read.campaign);
  const stock = stockNow(read.campaign, worked, norms);
  const { campaign } = stock;
  progress("Planning …");
  const planner = startPlanner();
  const line = new PlanningLine(progress);
  try {
    const planning = planner.plan(campaign, routes, (at) => line.step(at));
    const planned = await stoppable(planning, () => planner.stop(), progress);
    const means = storeMeans(norms, stock, planned.plan.finish);
    const { orders, lines } = projectStores(campaign, planned.use, means);
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
      stock,
    };
  } finally {
    line.end();
    await planner.close();
  }
}
