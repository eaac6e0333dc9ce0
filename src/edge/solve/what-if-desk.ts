import type { Route } from "../../core/care/care.ts";
import { loadNorms } from "../../core/care/norms.ts";
import type { RuleBook } from "../../core/care/rule-book.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import type { Solve } from "../../core/plan/programme.ts";
import type { Case, Means } from "../../core/plan/what-if/answers.ts";
import { changedBy } from "../../core/plan/what-if/changes.ts";
import { type Refusal, readScenario, type Scenario } from "../../core/plan/what-if/read-scenario.ts";
import { itemsByCare } from "../../core/say/items-by-care.ts";
import { sayRefusal } from "../../core/say/what-if-refusals.ts";
import { projectStores } from "../../core/stores/orders.ts";
import { stockNow } from "../../core/stores/use/stock-now.ts";
import { nearestWord } from "../intake/words.ts";
import { readPublished } from "../published.ts";
import { storeMeans } from "../store-goods.ts";

/** A campaign with all that questions about it need. */
export interface Desk {
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
  readonly means: Means;
  /** Care is decided anew only where a scenario has other items. */
  caseOf(scenario: Scenario): Case;
}

export function openDesk(told: Campaign, book: RuleBook, solve: Solve): Desk {
  const norms = loadNorms(readPublished("norms.json"));
  const { routes, worked } = campaignRoutes(book, norms, told);
  const stock = stockNow(told, worked, norms);
  const { campaign } = stock;
  const goods = storeMeans(norms, stock);
  return {
    campaign,
    routes,
    means: { norms, solve, ordersOf: (its, use) => projectStores(its, use, goods).orders },
    caseOf(scenario) {
      const its = changedBy(campaign, scenario.changes);
      const same = its.items === campaign.items;
      return {
        scenario,
        campaign: its,
        routes: same ? routes : campaignRoutes(book, norms, its).routes,
      };
    },
  };
}

export interface SaidRefusal extends Refusal {
  readonly sentence: string;
}

/** Scenarios in plain words as cases; where one cannot be supposed none is, and every reason is named. */
export function readQuestion(
  desk: Desk,
  scenarios: readonly string[],
): { readonly cases: readonly Case[]; readonly refusals: readonly SaidRefusal[] } {
  const meant = itemsByCare(desk.routes);
  const read = scenarios.map((said) => readScenario(said, desk.campaign, meant));
  const refusals = read.flatMap((each) => each.refusals);
  return {
    cases: refusals.length > 0 ? [] : read.map((each) => desk.caseOf(each.scenario)),
    refusals: refusals.map((each) => ({ ...each, sentence: sayRefusal(each, nearest(each)) })),
  };
}

/** Up to three known names, the nearest first. */
function nearest({ because }: Refusal): string[] {
  if (because.why !== "unknown") return [];
  const first = nearestWord(because.got, because.known);
  const others = because.known.filter((each) => each !== first);
  const second = first === null ? null : nearestWord(because.got, others);
  const near = [first, second].filter((each) => each !== null);
  return near.length > 0 ? near : because.known.filter((each) => each.length <= 24).slice(0, 8);
}
