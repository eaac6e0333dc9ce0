import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import { loadNorms, type Norms } from "../../core/care/norms.ts";
import type { RuleBook } from "../../core/care/rule-book.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { checkPlan } from "../../core/plan/checker/check-plan.ts";
import type { Planned } from "../../core/plan/make-plan.ts";
import type { Pace } from "../../core/plan/pace.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { sayBrokenPlan } from "../../core/say/plan-faults.ts";
import { projectStores } from "../../core/stores/orders.ts";
import { type StockNow, stockNow } from "../../core/stores/use/stock-now.ts";
import type { Day } from "../../core/units/day.ts";
import { openCampaign } from "../keep/open-campaign.ts";
import { readPublished } from "../published.ts";
import { ruleBookOf } from "../rule-book.ts";
import { storeMeans } from "../store-goods.ts";

/** A campaign folder with everything decided that planning takes. */
export interface ReadyFolder {
  /** With its stores as they are on the morning to plan for. */
  readonly campaign: Campaign;
  readonly problems: readonly Problem[];
  readonly book: RuleBook;
  readonly norms: Norms;
  readonly care: readonly ItemCare[];
  readonly routes: readonly Route[];
  readonly paces: readonly Pace[];
  readonly stock: StockNow;
}

/** Reads a campaign folder and its log and decides care; null with the problems when the folder cannot be used.   @param deciding told the number of items before care is decided */
export async function readyFolder(
  folder: string,
  planFrom: Day | undefined,
  deciding: (items: number) => void = () => {},
): Promise<ReadyFolder | { readonly campaign: null; readonly problems: readonly Problem[] }> {
  const { campaign: told, problems } = await openCampaign(folder, planFrom);
  const book = ruleBookOf(folder);
  if (!told) return { campaign: null, problems };
  if (!book.ok) return { campaign: null, problems: [...problems, ...book.problems] };
  deciding(told.items.length);
  const norms = loadNorms(readPublished("norms.json"));
  const { care, routes, worked, paces } = campaignRoutes(book.value, norms, told);
  const stock = stockNow(told, worked, norms);
  return { campaign: stock.campaign, problems, book: book.value, norms, care, routes, paces, stock };
}

/** The plan with its stores and orders; `broken` says what limit a checker that shares nothing with the planner found broken, null: none. */
export function finishedPlan(
  { campaign, book, norms, stock }: ReadyFolder,
  planned: Planned,
): { readonly plan: Plan; readonly broken: string | null } {
  const { orders, lines } = projectStores(
    campaign,
    planned.use,
    storeMeans(norms, stock, planned.plan.finish),
  );
  const plan = { ...planned.plan, orders, stores: lines };
  const faults = checkPlan(campaign, book, norms, plan);
  return { plan, broken: faults.length === 0 ? null : sayBrokenPlan(faults) };
}
