/** A calendar day, `2026-06-02`: no clock, no time zone. Days compare and sort as text. */
export type Day = string & { readonly __unit: "day" };

const DAY_MS = 86_400_000;

/** The day written as `yyyy-mm-dd`, or null when there is no such day. */
export function dayFrom(text: string): Day | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  const at = new Date(`${text}T00:00:00Z`);
  return Number.isNaN(at.getTime()) || at.toISOString().slice(0, 10) !== text ? null : (text as Day);
}

/** Whole days since 1970-01-01; the plan counts in these. */
export const dayNumber = (day: Day): number => Math.round(Date.parse(`${day}T00:00:00Z`) / DAY_MS);
export const dayOfNumber = (n: number): Day => new Date(n * DAY_MS).toISOString().slice(0, 10) as Day;
export const addDays = (day: Day, days: number): Day => dayOfNumber(dayNumber(day) + days);
export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);

/** 0 is Monday, 6 Sunday (ISO 8601 order). */
export const weekdayOf = (day: Day): number => (dayNumber(day) + 3) % 7;
/** The Monday of the day's week. */
export const mondayOf = (day: Day): Day => addDays(day, -weekdayOf(day));
