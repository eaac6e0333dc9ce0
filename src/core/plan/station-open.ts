import type { Campaign, Station } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";

/** Whether a station is there on a day: on its `open` days where it has some, never on its closed ones. */
export function isStationOpen(campaign: Campaign, station: Station, day: Day): boolean {
  const rows = campaign.calendar.filter((row) => row.who === station.id);
  const covers = (row: { from: Day; to: Day }): boolean => row.from <= day && day <= row.to;
  const opens = rows.filter((row) => row.what === "open");
  const shut = rows.some((row) => (row.what === "closed" || row.what === "away") && covers(row));
  return !shut && (opens.length === 0 || opens.some(covers));
}
