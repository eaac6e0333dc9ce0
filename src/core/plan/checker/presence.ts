import type { CalendarEntry, Campaign, Person, Station } from "../../items/campaign.ts";
import { type Day, weekdayOf } from "../../units/day.ts";

/* Who and what is there on a day, read from the campaign's people, stations and calendar alone. */

const covers = (row: CalendarEntry, day: Day): boolean => row.from <= day && day <= row.to;
const isShut = ({ what }: CalendarEntry): boolean => what === "away" || what === "closed";
const concerns = (row: CalendarEntry, who: string): boolean => row.who === who || row.who === "everyone";

/** What keeps a person away on a day, in one word for each cause; null: present. */
export function absenceOf(campaign: Campaign, person: Person, day: Day): string | null {
  if (person.from && day < person.from) return "not yet here";
  if (person.until && day > person.until) return "no longer here";
  if (!person.weekdays.includes(weekdayOf(day))) return "free weekday";
  const shut = campaign.calendar.find((row) => concerns(row, person.code) && isShut(row) && covers(row, day));
  if (!shut) return null;
  return shut.who === "everyone" ? "closed" : "away";
}

/** Minutes a person can work on a day: the shortest of all hours that hold, less the daily briefing; 0 when absent. */
export function presentMinutes(campaign: Campaign, person: Person, day: Day, briefing: number): number {
  if (absenceOf(campaign, person, day)) return 0;
  const hours = campaign.calendar
    .filter((row) => concerns(row, person.code) && row.what === "hours" && covers(row, day))
    .map((row) => row.hours ?? person.hoursADay);
  return Math.max(0, Math.min(person.hoursADay, ...hours) * 60 - briefing);
}

/** Whether the person may be given mould work that day. */
export const mayBeNearMould = (campaign: Campaign, person: Person, day: Day): boolean =>
  person.mouldWork &&
  !campaign.calendar.some(
    (row) => concerns(row, person.code) && row.what === "clean work" && covers(row, day),
  );

/** Minutes one place at the station is open on a day; 0: shut, or away. */
export function openMinutes(campaign: Campaign, station: Station, day: Day): number {
  const own = campaign.calendar.filter((row) => row.who === station.id);
  const opens = own.filter((row) => row.what === "open");
  if (opens.length > 0 && !opens.some((row) => covers(row, day))) return 0;
  if (campaign.calendar.some((row) => concerns(row, station.id) && isShut(row) && covers(row, day))) return 0;
  const hours = own.filter((row) => row.what === "hours" && covers(row, day)).map((row) => row.hours ?? 24);
  return Math.min(station.minutesADay, ...hours.map((each) => each * 60));
}
