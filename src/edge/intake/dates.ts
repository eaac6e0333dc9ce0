import { type Day, dayFrom } from "../../core/units/day.ts";
import { plainDigits } from "./digits.ts";
import { MONTHS } from "./months.ts";

/** Order of day and month in a column. */
export type DateOrder = "day first" | "month first";

export type DateReading =
  | { readonly kind: "day"; readonly day: Day }
  /** Day and month may change places; null where that order gives no day. */
  | { readonly kind: "either"; readonly dayFirst: Day | null; readonly monthFirst: Day | null }
  | { readonly kind: "short year" }
  | { readonly kind: "none" };

const NONE: DateReading = { kind: "none" };
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})\s?([-/.])\s?(\d{1,2})\s?\2\s?(\d{4}|\d{2})$/;
const DAY_NAME_YEAR =
  /^(\d{1,2})(?:st|nd|rd|th|º|\.)?[\s-]+(?:de\s+|of\s+)?([^\d\s.,-]+)\.?,?[\s-]+(?:de\s+)?(\d{4}|\d{2})$/i;
const NAME_DAY_YEAR = /^([^\d\s.,-]+)\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/i;
const TIME_AFTER = /[T\s]+\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:\s?[AP]M)?(?:Z|[+-]\d{2}:?\d{2})?$/i;

/** Reads one date as written, without deciding between day first and month first. Dots mean day first (common practice, no source). */
export function dateFrom(written: string): DateReading {
  const known = lately.get(written);
  if (known) return known;
  if (lately.size >= MOST_KEPT) lately.clear();
  const reading = readingOf(written);
  lately.set(written, reading);
  return reading;
}

/** A table has few different dates and many rows, and each is looked at twice. */
const lately = new Map<string, DateReading>();
const MOST_KEPT = 5_000;

function readingOf(written: string): DateReading {
  const text = plainDigits(written).trim().replace(TIME_AFTER, "");
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) return sure(yearFirst[1], yearFirst[2], yearFirst[3]);
  const yearLast = YEAR_LAST.exec(text);
  if (yearLast) return fromYearLast(yearLast);
  return fromName(text);
}

function fromYearLast([, first, separator, second, year]: RegExpExecArray): DateReading {
  if (year?.length === 2) return { kind: "short year" };
  const dayFirst = dayOf(year, second, first);
  const monthFirst = dayOf(year, first, second);
  if (dayFirst === null && monthFirst === null) return NONE;
  if (dayFirst === monthFirst && dayFirst !== null) return { kind: "day", day: dayFirst };
  if (separator === "." && dayFirst !== null) return { kind: "day", day: dayFirst };
  return { kind: "either", dayFirst, monthFirst };
}

function fromName(text: string): DateReading {
  const dayName = DAY_NAME_YEAR.exec(text);
  const nameDay = dayName ? null : NAME_DAY_YEAR.exec(text);
  const [day, name, year] = dayName
    ? [dayName[1], dayName[2], dayName[3]]
    : [nameDay?.[2], nameDay?.[1], nameDay?.[3]];
  const month = MONTHS.get((name ?? "").toLowerCase().normalize("NFC"));
  if (month === undefined) return NONE;
  return year?.length === 2 ? { kind: "short year" } : sure(year, String(month), day);
}

function sure(year?: string, month?: string, day?: string): DateReading {
  const found = dayOf(year, month, day);
  return found === null ? NONE : { kind: "day", day: found };
}

const two = (text = ""): string => text.padStart(2, "0");
const dayOf = (year?: string, month?: string, day?: string): Day | null =>
  dayFrom(`${year}-${two(month)}-${two(day)}`);

/** What the dates of one column show together. */
export class DateEvidence {
  dayFirst = 0;
  monthFirst = 0;

  see(written: string): void {
    const reading = dateFrom(written);
    if (reading.kind !== "either") return;
    if (reading.monthFirst === null) this.dayFirst++;
    if (reading.dayFirst === null) this.monthFirst++;
  }

  /** The order every date agrees with; `two orders` when they contradict, null when none tells. */
  order(): DateOrder | "two orders" | null {
    if (this.dayFirst > 0 && this.monthFirst > 0) return "two orders";
    return this.dayFirst > 0 ? "day first" : this.monthFirst > 0 ? "month first" : null;
  }

  /** In a column with two orders, the commoner one; null when they are even. */
  commoner(): DateOrder | null {
    return this.dayFirst === this.monthFirst
      ? null
      : this.dayFirst > this.monthFirst
        ? "day first"
        : "month first";
  }
}
