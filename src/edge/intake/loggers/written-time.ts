import { MONTHS } from "../months.ts";
import { dayNumberOf, fullYear, NO_DAY, packDay, packGroups, type TimeMode } from "./packed-date.ts";

interface WrittenTime {
  readonly date: number;
  readonly seconds: number;
  readonly offset: number;
  readonly hasHalf: boolean;
}

/** Minutes ahead of UTC; from memory. Names that mean two zones (IST, CST in Asia) are left out. */
const ZONES: Readonly<Record<string, number>> = {
  z: 0,
  utc: 0,
  gmt: 0,
  wet: 0,
  west: 60,
  bst: 60,
  cet: 60,
  mez: 60,
  cest: 120,
  mesz: 120,
  eet: 120,
  eest: 180,
  msk: 180,
  eat: 180,
  cat: 120,
  wat: 60,
  sast: 120,
  wib: 420,
  est: -300,
  edt: -240,
  cdt: -300,
  mst: -420,
  mdt: -360,
  pst: -480,
  pdt: -420,
};
/** Words between the figures that say nothing of the time. */
const FILLING = /\b(?:de|del|di|of|at|um|uhr|le|den|th|st|nd|rd|op|h)\b\.?/g;
const WEEKDAYS = weekdayNames();

/** A time with words in it: month names, `a. m.`, zones, weekdays. Null: it cannot be read. */
export function readWrittenTime(bytes: Uint8Array, mode: TimeMode): WrittenTime | null {
  if (bytes.length > 60) return null;
  let text = wordsOf(bytes);
  const half = /(^|[\d\s])([ap])\.?\s?m\.?(?=\s|$)/.exec(text);
  if (half !== null) text = text.replace(half[0], `${half[1]} `).trim();
  const zoned = withoutZone(text);
  text = zoned.text.replace(/(\d)\s?h\s?(\d)/, "$1:$2").replace(/(\d)\s?(?:st|nd|rd|th)\b/, "$1");
  const clock = /(?:^|[\st,_-])(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?(?=[\s,]|$)/.exec(text);
  const rest =
    clock === null ? text : `${text.slice(0, clock.index)} ${text.slice(clock.index + clock[0].length)}`;
  if (clock === null && mode === "clock") return null;
  const seconds = clock === null ? 0 : secondsOf(clock, half?.[2]);
  if (Number.isNaN(seconds)) return null;
  const date = mode === "clock" ? (/[\d\p{L}]/u.test(rest) ? null : 0) : dateOf(rest);
  return date === null ? null : { date, seconds, offset: zoned.offset, hasHalf: half !== null };
}

function wordsOf(bytes: Uint8Array): string {
  const utf8 = new TextDecoder("utf-8").decode(bytes);
  const text = utf8.includes("\uFFFD") ? Buffer.from(bytes).toString("latin1") : utf8;
  return text
    .toLowerCase()
    .normalize("NFC")
    .replace(/[\s\u00a0\u202f]+/g, " ")
    .replace(/\u2212/g, "-")
    .trim();
}

function withoutZone(text: string): { readonly text: string; readonly offset: number } {
  const match = /\s?\(?(?:(?:utc|gmt)\s?([+-])(\d{1,2}):?(\d{2})?|(?<=:\d{2}.*)\b([a-z]{1,4}))\)?$/.exec(
    text,
  );
  if (match === null) return { text, offset: Number.NaN };
  const cut = text.slice(0, match.index).trim();
  const name = match[4];
  if (name !== undefined) {
    const offset = ZONES[name];
    return offset === undefined ? { text, offset: Number.NaN } : { text: cut, offset };
  }
  const minutes = Number(match[2]) * 60 + Number(match[3] ?? 0);
  return { text: cut, offset: match[1] === "-" ? -minutes : minutes };
}

function secondsOf(clock: RegExpExecArray, half: string | undefined): number {
  const [hour, minute, second] = [
    Number(clock[1]),
    Number(clock[2]),
    Number((clock[3] ?? "0").replace(",", ".")),
  ];
  if (hour > 24 || minute > 59 || second >= 61) return Number.NaN;
  const full = half === undefined || hour > 12 ? hour : (hour % 12) + (half === "p" ? 12 : 0);
  return full * 3600 + minute * 60 + second;
}

/** Packed date of `11 jun 2026`, `june 11, 2026`, `sat 11.06.2026`, `2026-jun-11`; null: none. */
function dateOf(text: string): number | null {
  let month = 0;
  const plain = text
    .replace(/\p{L}+\.?/gu, (word) => {
      const name = word.replace(/\.$/, "");
      const found = MONTHS.get(name);
      if (found !== undefined && month === 0) {
        month = found;
        return " M ";
      }
      return WEEKDAYS.has(name) || new RegExp(`^${FILLING.source}$`).test(name) ? " " : word;
    })
    .replace(/[\s,./-]+/g, " ")
    .trim();
  const parts = plain.split(" ");
  if (parts.length !== 3 || !parts.every((part) => part === "M" || /^\d{1,4}$/.test(part))) return null;
  const numbers = parts.filter((part) => part !== "M");
  const [first = "", second = "", third = ""] = numbers;
  if (month === 0) {
    if (first.length === 4) return certain(Number(first), Number(second), Number(third));
    return first.length <= 2 && second.length <= 2 && (third.length === 2 || third.length === 4)
      ? packGroups(Number(first), Number(second), Number(third))
      : null;
  }
  if (numbers.length !== 2) return null;
  const yearFirst = first.length === 4;
  return certain(fullYear(Number(yearFirst ? first : second)), month, Number(yearFirst ? second : first));
}

function certain(year: number, month: number, day: number): number | null {
  const found = dayNumberOf(year, month, day);
  return found === NO_DAY ? null : packDay(found);
}

/** Long and short names as the platform's locale data (Unicode CLDR) writes them. */
function weekdayNames(): ReadonlySet<string> {
  const names = new Set<string>();
  for (const language of ["en", "de", "fr", "es", "pt", "it", "nl", "id"])
    for (const weekday of ["long", "short"] as const) {
      const format = new Intl.DateTimeFormat(language, { weekday, timeZone: "UTC" });
      for (let n = 4; n <= 10; n++)
        names.add(
          format
            .format(new Date(Date.UTC(1970, 0, n)))
            .toLowerCase()
            .replace(/\.$/, ""),
        );
    }
  return names;
}
