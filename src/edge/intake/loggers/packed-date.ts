import type { DateShape } from "./logger-reading.ts";

/** A date in one 32-bit number: either a certain day, or three written groups whose order is decided when all rows are known. */
const UNSURE = 1 << 30;
/** Keeps certain days above zero back to the year 1696. */
const BASE = 100_000;
const MONTH_DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** What a cell holds: date and time, one of them. */
export type TimeMode = "both" | "date" | "clock";
export type DateOrder = Extract<DateShape, "y-m-d" | "d-m-y" | "m-d-y">;
export const DATE_ORDERS: readonly DateOrder[] = ["d-m-y", "m-d-y", "y-m-d"];

export const packDay = (day: number): number => day + BASE;
export const packGroups = (a: number, b: number, c: number): number => UNSURE | (a << 21) | (b << 14) | c;
export const isUnsure = (packed: number): boolean => packed >= UNSURE;

/** Days since 1970-01-01, or -1e9 when there is no such day (1850 to 2199 are read). */
export function dayNumberOf(year: number, month: number, day: number): number {
  if (month < 1 || month > 12 || day < 1 || day > (MONTH_DAYS[month - 1] ?? 0)) return NO_DAY;
  if (year < 1850 || year > 2199) return NO_DAY;
  if (month === 2 && day === 29 && (year % 4 !== 0 || (year % 100 === 0 && year % 400 !== 0))) return NO_DAY;
  // Days from a civil date, counted from 1 March so that the leap day is the last of its year.
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

export const NO_DAY = -1e9;

/** Typical years, and dates without a year, are put into a year without 29 February that begins on a Monday. */
export const NOMINAL_YEAR = 2001;

/** Two digits from 70 on are of the last century. */
export const fullYear = (year: number): number =>
  year >= 100 ? year : year >= 70 ? 1900 + year : 2000 + year;

/** The day that a packed date means in the order given. */
export function dayOfPacked(packed: number, order: DateOrder): number {
  if (packed < UNSURE) return packed - BASE;
  const a = (packed >> 21) & 127;
  const b = (packed >> 14) & 127;
  const c = packed & 16_383;
  if (order === "d-m-y") return dayNumberOf(fullYear(c), b, a);
  if (order === "m-d-y") return dayNumberOf(fullYear(c), a, b);
  return c > 31 ? NO_DAY : dayNumberOf(fullYear(a), b, c);
}

/** The groups of an unsure date as they were written, `3/4/2026`. */
export const writtenGroups = (packed: number): string =>
  `${(packed >> 21) & 127}/${(packed >> 14) & 127}/${packed & 16_383}`;
