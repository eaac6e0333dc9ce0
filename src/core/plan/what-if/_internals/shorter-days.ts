import type { CalendarEntry, Campaign } from "../../../items/campaign.ts";
import type { Change } from "../change.ts";

/** Of the rows of hours that cover a day the first counts: the new row goes before the first that is longer, so a day already shorter stays. */
export function withShorterDays(campaign: Campaign, change: Change & { change: "hours" }): Campaign {
  const { who, hours, from, to } = change;
  const row: CalendarEntry = { who, what: "hours", from, to, hours };
  const longer = campaign.calendar.findIndex(
    (each) => each.what === "hours" && (each.hours ?? Number.POSITIVE_INFINITY) > hours,
  );
  const at = longer < 0 ? campaign.calendar.length : longer;
  return { ...campaign, calendar: campaign.calendar.toSpliced(at, 0, row) };
}
