import { addDays, type Day, dayFrom, weekdayOf } from "../../units/day.ts";
import type { Span } from "./change.ts";

/* Numbers, days and stretches of days as people write them; all text is lower case with single spaces. */

const NUMBERS = "zero one two three four five six seven eight nine ten eleven twelve".split(" ");
const MONTHS = "january february march april may june july august september october november december".split(
  " ",
);
const WEEKDAYS = "monday tuesday wednesday thursday friday saturday sunday".split(" ");

/** 0 or more: `400`, `1,480`, `7.5`, `three`, `a`, `another`; null when it is none. */
export function numberIn(text: string): number | null {
  if (/^(a|an|another|one more)$/.test(text)) return 1;
  const word = NUMBERS.indexOf(text);
  if (word >= 0) return word;
  if (/^\d{1,3}(,\d{3})+$/.test(text)) return Number(text.replaceAll(",", ""));
  return /^\d+(\.\d+)?$/.test(text) ? Number(text) : null;
}

/** `2026-07-06`, `6 July`, `6 July 2027`, `Monday`, `today`; a day without its year is the first such day from today on. */
export function dayIn(text: string, today: Day): Day | null {
  const iso = dayFrom(text);
  if (iso) return iso;
  if (text === "today") return today;
  const weekday = text.length >= 3 ? WEEKDAYS.findIndex((each) => each.startsWith(text)) : -1;
  if (weekday >= 0) return addDays(today, (weekday - weekdayOf(today) + 7) % 7);
  const [, day, name = "", year] = /^(\d{1,2}) ([a-z]{3,9})(?: (\d{4}))?$/.exec(text) ?? [];
  const month = name === "" ? -1 : MONTHS.findIndex((each) => each.startsWith(name));
  if (!day || month < 0) return null;
  const inYear = (y: string): Day | null =>
    dayFrom(`${y}-${String(month + 1).padStart(2, "0")}-${day.padStart(2, "0")}`);
  if (year) return inYear(year);
  const soon = inYear(today.slice(0, 4));
  return soon !== null && soon >= today ? soon : inYear(String(Number(today.slice(0, 4)) + 1));
}

/** Weekdays by name (`monday, wed`) or as a stretch (`mon-fri`, `monday to thursday`); null when one is none. */
export function weekdaysIn(text: string): number[] | null {
  const at = (name: string): number =>
    name.length >= 3 ? WEEKDAYS.findIndex((each) => each.startsWith(name.replace(/s$/, ""))) : -1;
  const days = new Set<number>();
  for (const part of text.split(/\s*(?:,| and )\s*/)) {
    const [from = "", to = from] = part.split(/\s*(?:-|–| to )\s*/);
    const [first, last] = [at(from), at(to)];
    if (first < 0 || last < 0) return null;
    for (let day = first; ; day = (day + 1) % 7) {
      days.add(day);
      if (day === last) break;
    }
  }
  return [...days].sort((a, b) => a - b);
}

/** What is said and when: the days at the end of a sentence taken off. */
export interface Dated {
  readonly words: string;
  readonly from: Day | null;
  readonly to: Day | null;
  /** A date that was written but is none. */
  readonly noDay: string | null;
}

const DATE = String.raw`(\d{4}-\d+-\d+|\d{1,2} [a-z]{3,9}(?: \d{4})?|today|(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?)`;
const FORMS: readonly { readonly form: RegExp; readonly only?: "from" | "to" | "day" }[] = [
  { form: new RegExp(`^(.*?),? ?(?:from )?\\b${DATE} (?:to|until|till|-|–) ${DATE}$`) },
  { form: new RegExp(`^(.*?),? ?(?:from|since|not before) ${DATE}(?: on)?$`), only: "from" },
  { form: new RegExp(`^(.*?),? ?(?:until|till|up to) ${DATE}$`), only: "to" },
  { form: new RegExp(`^(.*?),? ?(?:(?:on|by) )?\\b${DATE}$`), only: "day" },
];

/** Takes the days off the end of a sentence; a single day is `from` and `to`. */
export function dated(text: string, today: Day): Dated {
  for (const { form, only } of FORMS) {
    const match = form.exec(text);
    if (!match) continue;
    const [, words = "", first = "", second = first] = match;
    const [from, to] = [dayIn(first, today), dayIn(second, today)];
    if (from === null || to === null) {
      // A bare number before a word, as in "3 boxes", only looks like a day.
      if (only === "day" && !/^\d{4}-/.test(first)) continue;
      return { words: words.trim(), from: null, to: null, noDay: from === null ? first : second };
    }
    return {
      words: words.trim(),
      from: only === "to" ? null : from,
      to: only === "from" ? null : to,
      noDay: null,
    };
  }
  return { words: text, from: null, to: null, noDay: null };
}

/** The stretch meant: from today and to the end where nothing else was said. */
export const spanOf = ({ from, to }: Dated, today: Day, end: Day): Span => ({
  from: from ?? today,
  to: to ?? end,
});
