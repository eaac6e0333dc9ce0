import type { Campaign } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";
import type { Change, Tightenable } from "./change.ts";

/** What stands in the way of a change, as data; the sentence is made in `say/`. */
export type Obstacle =
  | { readonly why: "looser limit"; readonly limit: Tightenable; readonly now: number }
  | { readonly why: "longer day"; readonly most: number }
  | { readonly why: "shorter opening"; readonly station: string; readonly now: number }
  | { readonly why: "no such air" }
  | { readonly why: "backwards"; readonly from: Day; readonly to: Day }
  | { readonly why: "outside"; readonly from: Day; readonly to: Day }
  | { readonly why: "end passed"; readonly today: Day }
  | { readonly why: "same end"; readonly end: Day }
  | { readonly why: "open already"; readonly station: string }
  | { readonly why: "none listed"; readonly kind: string }
  | { readonly why: "nothing like it"; readonly words: string }
  | { readonly why: "all begun"; readonly words: string }
  | { readonly why: "how many"; readonly most: number };

const MOST = { people: 20, stations: 5, items: 20_000, litres: 100_000, hours: 24 } as const;

/** Why the change cannot be supposed; null when it can. */
export function whyNot(campaign: Campaign, change: Change): Obstacle | null {
  if ("from" in change) {
    const { from, to } = change;
    if (from > campaign.end) return { why: "outside", from: campaign.planFrom, to: campaign.end };
    if (from > to) return { why: "backwards", from, to };
    if (to < campaign.planFrom) return { why: "outside", from: campaign.planFrom, to: campaign.end };
  }
  switch (change.change) {
    case "hours": {
      const most = Math.max(0, ...hoursOf(campaign, change.who));
      return change.hours > most ? { why: "longer day", most } : null;
    }
    case "more people":
      return within(change.count, MOST.people);
    case "more stations":
      return campaign.stations.some((each) => each.kind === change.kind)
        ? within(change.count, MOST.stations)
        : { why: "none listed", kind: change.kind };
    case "more items":
      return change.like.length === 0
        ? { why: "nothing like it", words: change.words }
        : (within(change.count, MOST.items) ?? dayWithin(campaign, change.day));
    case "hold back":
      return change.items.length === 0
        ? { why: "all begun", words: change.words }
        : dayWithin(campaign, change.until);
    case "order":
      return change.items.length === 0 ? { why: "nothing like it", words: change.words } : null;
    case "longer at": {
      const minutes = campaign.stations.find((each) => each.id === change.station)?.minutesADay ?? 0;
      if (change.hours > MOST.hours) return { why: "how many", most: MOST.hours };
      return change.hours * 60 <= minutes
        ? { why: "shorter opening", station: change.station, now: minutes / 60 }
        : null;
    }
    case "room heat": {
      const { dryBulb, relHum } = change;
      return dryBulb >= 0 && dryBulb <= 60 && relHum > 0 && relHum <= 1 ? null : { why: "no such air" };
    }
    case "delivery":
      return dayWithin(campaign, change.day);
    case "open":
      return campaign.calendar.some((row) => row.who === change.station && row.what === "open")
        ? null
        : { why: "open already", station: change.station };
    case "ward":
      return within(change.litres, MOST.litres);
    case "end":
      if (change.day === campaign.end) return { why: "same end", end: campaign.end };
      return change.day <= campaign.planFrom ? { why: "end passed", today: campaign.planFrom } : null;
    case "tighter": {
      const now = campaign.limits[change.limit].value;
      return change.value > now ? { why: "looser limit", limit: change.limit, now } : null;
    }
    default:
      return null;
  }
}

const hoursOf = (campaign: Campaign, who: string): number[] =>
  campaign.people.filter((each) => who === "everyone" || each.code === who).map((each) => each.hoursADay);

const within = (n: number, most: number): Obstacle | null =>
  n >= 1 && n <= most ? null : { why: "how many", most };

const dayWithin = ({ planFrom, end }: Campaign, day: Day): Obstacle | null =>
  day < planFrom || day > end ? { why: "outside", from: planFrom, to: end } : null;
