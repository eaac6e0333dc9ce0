import type { Campaign } from "../../items/campaign.ts";
import { endingOn } from "./_internals/ending.ts";
import { withDelay, withDelivery } from "./_internals/goods.ts";
import { heldBack, withCopies } from "./_internals/items.ts";
import { withPeople } from "./_internals/people.ts";
import { withShorterDays } from "./_internals/shorter-days.ts";
import { withLongerDay, withOpening, withStations, withWeekdays } from "./_internals/stations.ts";
import type { Change } from "./change.ts";
import { inHeat } from "./room-heat.ts";

/** The campaign as it would be; the one given stays as it is. Ask `whyNot` first: what it names is not made here either. */
export function changed(campaign: Campaign, change: Change): Campaign {
  switch (change.change) {
    case "clean work":
    case "away":
      return withRow(campaign, {
        who: change.person,
        what: change.change,
        from: change.from,
        to: change.to,
      });
    case "closed":
      return withRow(campaign, { who: change.station, what: "closed", from: change.from, to: change.to });
    case "hours":
      return withShorterDays(campaign, change);
    case "more people":
      return withPeople(campaign, change);
    case "late":
      return withDelay(campaign, change);
    case "delivery":
      return withDelivery(campaign, change);
    case "open":
      return withOpening(campaign, change);
    case "weekdays":
      return withWeekdays(campaign, change);
    case "more stations":
      return withStations(campaign, change);
    case "more items":
      return withCopies(campaign, change);
    case "hold back":
      return heldBack(campaign, change);
    case "order":
      // Told by the weights of the planner's problem, not by the campaign; a campaign of its own all the same.
      return { ...campaign };
    case "longer at":
      return withLongerDay(campaign, change);
    case "room heat":
      return inHeat(campaign, change);
    case "ward":
      return { ...campaign, wardLitres: change.litres };
    case "end":
      return endingOn(campaign, change.day);
    case "tighter":
      return tightened(campaign, change);
  }
}

/** All changes of a scenario, one after the other. */
export const changedBy = (campaign: Campaign, changes: readonly Change[]): Campaign =>
  changes.reduce(changed, campaign);

const withRow = (campaign: Campaign, row: Campaign["calendar"][number]): Campaign => ({
  ...campaign,
  calendar: [...campaign.calendar, row],
});

/** The tighter of the two stands, so that no scenario loosens a limit whoever calls it. */
function tightened(campaign: Campaign, { limit, value }: Change & { change: "tighter" }): Campaign {
  const now = campaign.limits[limit];
  if (value >= now.value) return campaign;
  return { ...campaign, limits: { ...campaign.limits, [limit]: { value, source: "supposed" } } };
}
