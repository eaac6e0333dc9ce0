import { dayNumberOf, NO_DAY, packDay, packGroups, type TimeMode } from "./packed-date.ts";
import { readWrittenTime } from "./written-time.ts";

export type TimeVerdict = "read" | "unreadable" | "no such day";

const [SPACE, COMMA, MINUS, DOT, SLASH, COLON, UNDERSCORE, PLUS] = [32, 44, 45, 46, 47, 58, 95, 43];
const [UPPER_T, LOWER_T, UPPER_Z, LOWER_H, LOWER_A, LOWER_P, LOWER_M] = [84, 116, 90, 104, 97, 112, 109];
const MOST_GROUPS = 8;

/** Reads dates and times from bytes without making a string; what it does not know goes to the slow reader of words. */
export class TimeCell {
  /** Packed date of the last cell read. */
  date = 0;
  /** Seconds of the day of the last cell read; may be 86,400 for 24:00. */
  seconds = 0;
  /** Minutes ahead of UTC written in the cell; NaN when there is none. */
  offset = Number.NaN;
  /** Cells with AM or PM. */
  halfDays = 0;
  /** The day of the row before is mostly that of the next. */
  private lastWritten = -1;
  private lastPacked = 0;
  private readonly value = new Float64Array(MOST_GROUPS);
  private readonly size = new Uint8Array(MOST_GROUPS);
  private readonly after = new Uint8Array(MOST_GROUPS);

  read(bytes: Uint8Array, from: number, to: number, mode: TimeMode): TimeVerdict {
    const { value, size, after } = this;
    let n = 0;
    let acc = 0;
    let length = 0;
    let half = 0;
    let zone = Number.NaN;
    for (let i = from; i < to; i++) {
      const c = bytes[i] as number; // i stays below to
      const digit = c - 48;
      if (digit >= 0 && digit <= 9) {
        acc = acc * 10 + digit;
        length++;
        continue;
      }
      if (length > 0) {
        if (n === MOST_GROUPS) return "unreadable";
        value[n] = acc;
        size[n] = length;
        after[n] = c;
        n++;
        acc = 0;
        length = 0;
      }
      if (c === PLUS || (c === MINUS && n >= 5)) {
        zone = zoneFrom(bytes, i, to);
        if (Number.isNaN(zone)) return this.slow(bytes, from, to, mode);
        break;
      }
      if (c === COLON || c === SPACE || c === MINUS || c === DOT || c === SLASH || c === UPPER_T) continue;
      if (c === COMMA || c === UNDERSCORE || c === LOWER_T || c === LOWER_H) continue;
      const lower = c | 32;
      if ((lower === LOWER_A || lower === LOWER_P) && n > 0 && endsWithHalf(bytes, i, to)) {
        half = lower === LOWER_A ? 1 : 2;
        break;
      }
      if (c === UPPER_Z && i === to - 1 && n > 1) {
        zone = 0;
        break;
      }
      return this.slow(bytes, from, to, mode);
    }
    if (length > 0) {
      if (n === MOST_GROUPS) return "unreadable";
      value[n] = acc;
      size[n] = length;
      after[n] = 0;
      n++;
    }
    this.offset = zone;
    if (half > 0) this.halfDays++;
    if (mode === "clock") return this.clockFrom(0, n, half);
    return this.dateFrom(n, half, mode);
  }

  private dateFrom(n: number, half: number, mode: TimeMode): TimeVerdict {
    if (n === 0) return "unreadable";
    const v = this.value;
    const [first, second] = [v[0] ?? 0, v[1] ?? 0];
    const width = this.size[0] ?? 0;
    if (n < 3 || width >= 6) return this.compactFrom(n, half, mode);
    if (this.after[0] === COLON) return "unreadable";
    const [third, thirdWidth] = [v[2] ?? 0, this.size[2] ?? 0];
    if (width === 4) {
      const written = first * 10_000 + second * 100 + third;
      if (written !== this.lastWritten || second > 99 || third > 99) {
        const day = dayNumberOf(first, second, third);
        if (day === NO_DAY) return "no such day";
        this.lastWritten = written;
        this.lastPacked = packDay(day);
      }
      this.date = this.lastPacked;
    } else {
      if (width > 2 || (this.size[1] ?? 0) > 2 || (thirdWidth !== 4 && thirdWidth !== 2)) return "unreadable";
      if (this.after[1] === COLON || first > 99 || third > 9999) return "unreadable";
      this.date = packGroups(first, second, third);
    }
    if (n === 3) {
      this.seconds = 0;
      return mode === "date" || this.after[2] === 0 || this.after[2] === DOT ? "read" : "unreadable";
    }
    const verdict = this.clockFrom(3, n, half);
    if (verdict === "read" && mode === "date") this.seconds = 0; // a time that stands in the column of the date as well
    return verdict;
  }

  /** `20260602`, `202606020800`, `20260602080000`, `260602`, each alone or before a time. */
  private compactFrom(n: number, half: number, mode: TimeMode): TimeVerdict {
    const first = this.value[0] ?? 0;
    const width = this.size[0] ?? 0;
    const isDate = width === 8 || (width === 6 && (mode === "date" || n > 1));
    if (!isDate && !(n === 1 && mode === "both" && (width === 12 || width === 14))) return "unreadable";
    if (width === 6)
      this.date = packGroups(Math.floor(first / 10_000), Math.floor(first / 100) % 100, first % 100);
    else {
      const ymd = width === 8 ? first : Math.floor(first / (width === 12 ? 10_000 : 1_000_000));
      const day = dayNumberOf(Math.floor(ymd / 10_000), Math.floor(ymd / 100) % 100, ymd % 100);
      if (day !== NO_DAY) this.date = packDay(day);
      else if (width === 8)
        this.date = packGroups(Math.floor(ymd / 1_000_000), Math.floor(ymd / 10_000) % 100, ymd % 10_000);
      else return "unreadable";
    }
    this.seconds = 0;
    if (isDate) return n === 1 || mode === "date" ? "read" : this.clockFrom(1, n, half);
    const time = width === 12 ? (first % 10_000) * 100 : first % 1_000_000;
    return this.clockOf(Math.floor(time / 10_000), Math.floor(time / 100) % 100, time % 100, 0);
  }

  private clockFrom(k: number, n: number, half: number): TimeVerdict {
    const { value, size } = this;
    const left = n - k;
    if (left < 1 || left > 4) return "unreadable";
    const hour = value[k] as number; // k < n
    const width = size[k] as number;
    if (left === 1) {
      if (width <= 2) return this.clockOf(hour, 0, 0, half);
      if (width <= 4) return this.clockOf(Math.floor(hour / 100), hour % 100, 0, half);
      return width <= 6
        ? this.clockOf(Math.floor(hour / 10_000), Math.floor(hour / 100) % 100, hour % 100, half)
        : "unreadable";
    }
    if (left === 2 && (size[k + 1] as number) > 2 && hour < 1) return this.partOfDay(k + 1);
    if (width > 2 || size[k + 1] !== 2) return "unreadable";
    if (left < 3) return this.clockOf(hour, value[k + 1] as number, 0, half);
    const fraction = left === 4 ? (value[k + 3] as number) / 10 ** (size[k + 3] as number) : 0;
    return this.clockOf(hour, value[k + 1] as number, (value[k + 2] as number) + fraction, half);
  }

  /** Spreadsheets write a time of day as a part of a day, `0.3333`. */
  private partOfDay(at: number): TimeVerdict {
    const width = this.size[at] ?? 0;
    this.seconds = snapped(((this.value[at] ?? 0) / 10 ** width) * 86_400, width);
    return "read";
  }

  private clockOf(hour: number, minute: number, second: number, half: number): TimeVerdict {
    if (hour > 24 || minute > 59 || second >= 61 || (hour === 24 && minute + second > 0)) return "unreadable";
    if (half > 0 && (hour > 12 || hour < 1)) {
      if (hour > 23) return "unreadable";
      this.seconds = hour * 3600 + minute * 60 + second; // `13:05 PM` says it twice, `0:05 AM` is midnight
      return "read";
    }
    const full = half === 0 ? hour : (hour % 12) + (half === 2 ? 12 : 0);
    this.seconds = full * 3600 + minute * 60 + second;
    return "read";
  }

  private slow(bytes: Uint8Array, from: number, to: number, mode: TimeMode): TimeVerdict {
    const found = readWrittenTime(Buffer.from(bytes.subarray(from, to)), mode);
    if (found === null) return "unreadable";
    this.date = found.date;
    this.seconds = found.seconds;
    this.offset = found.offset;
    if (found.hasHalf) this.halfDays++;
    return "read";
  }
}

/** `+02:00`, `-0530`, `+2` up to the end of the cell; NaN otherwise. */
function zoneFrom(bytes: Uint8Array, at: number, to: number): number {
  let value = 0;
  let digits = 0;
  for (let i = at + 1; i < to; i++) {
    const c = bytes[i] as number; // i stays below to
    if (c === COLON && digits > 0) continue;
    if (c < 48 || c > 57) return Number.NaN;
    value = value * 10 + c - 48;
    digits++;
  }
  if (digits < 1 || digits > 4) return Number.NaN;
  const minutes = digits <= 2 ? value * 60 : Math.floor(value / 100) * 60 + (value % 100);
  return bytes[at] === MINUS ? -minutes : minutes;
}

/** `AM`, `p.m.`, `a` and nothing else up to the end. */
function endsWithHalf(bytes: Uint8Array, at: number, to: number): boolean {
  for (let i = at + 1; i < to; i++) {
    const c = bytes[i] as number; // i stays below to
    if ((c | 32) !== LOWER_M && c !== DOT && c !== SPACE) return false;
  }
  return true;
}

/** A part of a day with few decimals is put to the minute it can only mean, else to the second. */
export function snapped(seconds: number, decimals: number): number {
  const minute = Math.round(seconds / 60) * 60;
  const doubt = 0.51 * 86_400 * 10 ** -decimals + 0.5;
  return Math.abs(minute - seconds) <= Math.min(doubt, 29) ? minute : Math.round(seconds);
}
