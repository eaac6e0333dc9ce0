import type { Norms } from "../../care/norms.ts";
import type { RuleBook } from "../../care/rule-book.ts";
import type { Campaign } from "../../items/campaign.ts";
import { actFaults } from "./acts.ts";
import { careFaults } from "./care-of-acts.ts";
import { certificateFaults } from "./certificate.ts";
import { chanceFaults } from "./chances.ts";
import type { Fault } from "./fault.ts";
import { leftFaults } from "./left-out.ts";
import { mouldFaults } from "./mould-account.ts";
import { peopleFaults } from "./people.ts";
import { PlanOnPaper } from "./plan-on-paper.ts";
import { stationFaults } from "./stations.ts";
import { storeFaults } from "./stores.ts";
import { totalFaults } from "./totals.ts";
import { wardFaults } from "./ward.ts";

/**
 * Every limit the plan breaks, people first; nothing: the plan may be shown. It reads the campaign, decides care anew, and counts the plan
 * as printed; it uses nothing of the planner.
 */
export function checkPlan(
  campaign: Campaign,
  book: RuleBook,
  norms: Norms,
  plan: PlanOnPaper["plan"],
): Fault[] {
  const paper = new PlanOnPaper(campaign, book, norms, plan);
  return [
    ...mouldFaults(paper),
    ...peopleFaults(paper),
    ...careFaults(paper),
    ...wardFaults(paper),
    ...actFaults(paper),
    ...stationFaults(paper),
    ...storeFaults(paper),
    ...leftFaults(paper),
    ...totalFaults(paper),
    ...chanceFaults(paper),
    ...certificateFaults(paper),
  ];
}
