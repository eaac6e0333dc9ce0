import type { CalendarEntry, Campaign } from "../../../items/campaign.ts";
import { addDays, type Day } from "../../../units/day.ts";

/** A row that still held in the last days is taken to have run to the end. Common practice, no source. */
const LAST_DAYS = 7;

/**
 * The campaign with another last day. A later end frees nobody: whoever is on clean work or on shorter hours when the campaign was to end
 * stays so until the new end; who is away and what is closed up to the very end stays that too. Hired days (`open`) do not grow.
 */
export function endingOn(campaign: Campaign, end: Day): Campaign {
  if (end <= campaign.end) return { ...campaign, end };
  const late = addDays(campaign.end, -LAST_DAYS);
  const goesOn = ({ what, to }: CalendarEntry): boolean =>
    what === "clean work" || what === "hours" ? to >= late : what !== "open" && to >= campaign.end;
  const calendar = campaign.calendar.map((row) => (goesOn(row) && row.to < end ? { ...row, to: end } : row));
  return { ...campaign, end, calendar };
}
