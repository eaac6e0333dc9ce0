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

/** Minutes one place at the station is open on a day: its own, or fewer where the calendar gives it hours; 0: not there. */
export function openMinutes(campaign: Campaign, station: Station, day: Day): number {
  if (!isStationOpen(campaign, station, day)) return 0;
  const hours = campaign.calendar.flatMap((row) =>
    row.who === station.id && row.what === "hours" && row.from <= day && day <= row.to
      ? [(row.hours ?? 24) * 60]
      : [],
  );
  return Math.min(station.minutesADay, ...hours);
}
