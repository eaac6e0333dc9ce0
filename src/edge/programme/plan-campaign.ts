import { loadNorms } from "../../core/care/norms.ts";
import { campaignOf } from "../../core/log/campaign-of.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { checkPlan } from "../../core/plan/checker/check-plan.ts";
import { sayBrokenPlan } from "../../core/say/plan-faults.ts";
import { projectStores } from "../../core/stores/orders.ts";
import { stockNow } from "../../core/stores/use/stock-now.ts";
import { readPublished } from "../published.ts";
import { publishedRuleBook } from "../rule-book.ts";
import { openDesk } from "../serve/log-desk.ts";
import { startPlanner } from "../solve/planner.ts";
import { storeMeans } from "../store-goods.ts";
import type { Programme } from "./programme.ts";
import type { PlanJob } from "./queue.ts";
import { summaryOf } from "./summary.ts";

/** Plans a campaign as its log tells it, by the published rules, and writes down what the programme shows of it. A plan that breaks a limit
 *  is never shown: it throws.   @returns false where the log tells no campaign yet */
export async function planCampaign(
  programme: Programme,
  { campaign: name, today }: PlanJob,
): Promise<boolean> {
  const desk = await openDesk(programme.keep, name);
  const { place, state } = await desk.state();
  await desk.close();
  const told = campaignOf(state, today);
  if (told === null) return false;
  const book = publishedRuleBook();
  const norms = loadNorms(readPublished("norms.json"));
  const { routes, worked } = campaignRoutes(book, norms, told);
  const stock = stockNow(told, worked, norms);
  const { campaign } = stock;
  const planner = startPlanner();
  try {
    const planned = await planner.plan(campaign, routes, () => {});
    const means = storeMeans(norms, stock, planned.plan.finish);
    const { orders, lines } = projectStores(campaign, planned.use, means);
    const plan = { ...planned.plan, orders, stores: lines };
    const faults = checkPlan(campaign, book, norms, plan);
    if (faults.length > 0) throw new Error(sayBrokenPlan(faults));
    await programme.saveSummary(name, place, summaryOf(plan, state));
    return true;
  } finally {
    await planner.close();
  }
}
