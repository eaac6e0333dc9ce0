import type { Day } from "../units/day.ts";

/** A locale the writer of dates accepts; a name it does not know (a POSIX one, say) falls back to British English. */
export function knownLocale(wanted: string | undefined): string {
  try {
    return Intl.DateTimeFormat.supportedLocalesOf(wanted ?? "")[0] ?? "en-GB";
  } catch {
    return "en-GB";
  }
}

/** Length of a written day: `full` Monday 29 June 2026 · `long` 29 June 2026 · `short` Mon 29 Jun · `tiny` 29 Jun. */
export type DayLength = "full" | "long" | "short" | "tiny";

const LENGTHS: Readonly<Record<DayLength, Intl.DateTimeFormatOptions>> = {
  full: { weekday: "long", day: "numeric", month: "long", year: "numeric" },
  long: { day: "numeric", month: "long", year: "numeric" },
  short: { weekday: "short", day: "numeric", month: "short" },
  tiny: { day: "numeric", month: "short" },
};

/** A day has no time zone: it is written as noon in UTC would be, wherever the reader sits. */
const writer = (locale: string, options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat(locale, { ...options, timeZone: "UTC" });
const instant = (day: Day): Date => new Date(`${day}T12:00:00Z`);

export const sayDay = (day: Day, locale: string, length: DayLength = "long"): string =>
  writer(locale, LENGTHS[length]).format(instant(day));

/** The weekday alone: `Mon`. */
export const sayWeekday = (day: Day, locale: string): string =>
  writer(locale, { weekday: "short" }).format(instant(day));

/** Day of the month alone: `29`. */
export const sayDayOfMonth = (day: Day, locale: string): string =>
  writer(locale, { day: "numeric" }).format(instant(day));

/** `29 June – 12 July 2026`, what the two days share written once. */
export const sayDayRange = (from: Day, to: Day, locale: string): string =>
  writer(locale, LENGTHS.long).formatRange(instant(from), instant(to));

export const sayNumber = (n: number, locale: string, digits = 0): string =>
  new Intl.NumberFormat(locale, { maximumFractionDigits: digits }).format(n);

/** A fraction, 0 to 1, as per cent. */
export const sayPercent = (fraction: number, locale: string, digits = 0): string =>
  new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: digits }).format(fraction);

/** Minutes with their unit: `95 min`. */
export const sayMinutes = (minutes: number, locale: string): string =>
  new Intl.NumberFormat(locale, {
    style: "unit",
    unit: "minute",
    unitDisplay: "short",
    maximumFractionDigits: 0,
  }).format(minutes);

/** A file's size: `84 kB`, at least 1. */
export const sayFileSize = (bytes: number, locale: string): string =>
  new Intl.NumberFormat(locale, {
    style: "unit",
    unit: "kilobyte",
    unitDisplay: "short",
    maximumFractionDigits: 0,
  }).format(Math.max(1, bytes / 1000));
