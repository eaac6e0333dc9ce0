import { addDays, type Day, dayFrom, weekdayOf } from "../../src/core/units/day.ts";

/** A day that exists; anything else is a slip in a story, and throws. */
export function day(text: string): Day {
  const known = dayFrom(text);
  if (!known) throw new Error(`"${text}" is not a day.`);
  return known;
}

/** Monday to Friday (or to Saturday) between two days, both counted. */
export function workdays(from: string, to: string, lastWeekday = 4): Day[] {
  return everyDay(from, to).filter((each) => weekdayOf(each) <= lastWeekday);
}

export function everyDay(from: string, to: string): Day[] {
  const days: Day[] = [];
  const last = day(to);
  for (let each = day(from); each <= last; each = addDays(each, 1)) days.push(each);
  return days;
}

/** The Mondays between two days. */
export const mondays = (from: string, to: string): Day[] =>
  everyDay(from, to).filter((each) => weekdayOf(each) === 0);
