import type { Route } from "../care/care.ts";
import { careOfCampaign, type ItemCare } from "../care/item-care.ts";
import type { Norms } from "../care/norms.ts";
import { routeOf } from "../care/route.ts";
import type { RuleBook } from "../care/rule-book.ts";
import type { Campaign } from "../items/campaign.ts";
import { forecastsOf, withForecasts } from "../ward/forecast.ts";
import { atOwnPace, type Pace, pacesOf } from "./pace.ts";

/** What the plan is made from: care and way of every item, minutes at the team's own pace, waits by the bags' own readings. */
export interface CampaignRoutes {
  readonly care: readonly ItemCare[];
  readonly routes: readonly Route[];
  readonly paces: readonly Pace[];
  /** The worked items' routes as if nothing had been done yet: what was done, and what it used up, is read from them. */
  readonly worked: readonly Route[];
}

export function campaignRoutes(book: RuleBook, norms: Norms, campaign: Campaign): CampaignRoutes {
  const care = careOfCampaign(book, campaign);
  const byNorms = care.map((each) => routeOf(norms, each));
  const worked = wholeRoutes(book, norms, campaign);
  const paces = pacesOf(campaign, worked);
  const paced = atOwnPace(campaign, byNorms, paces);
  return {
    care,
    paces,
    worked,
    routes: withForecasts(paced, forecastsOf(campaign, paced), campaign.planFrom),
  };
}

/** The worked items' routes as if nothing had been done yet. */
function wholeRoutes(book: RuleBook, norms: Norms, campaign: Campaign): Route[] {
  const worked = new Set(campaign.sessions.map((each) => each.item));
  const items = campaign.items.filter((item) => worked.has(item.id));
  return careOfCampaign(book, { ...campaign, items, sessions: [] }).map((each) => routeOf(norms, each));
}
