import type { LeftOut } from "./left-out.ts";
import type { DateShape, DecimalMark, LoggerColumns } from "./logger-reading.ts";
import { NumberCell } from "./number-cell.ts";
import { dayNumberOf, NO_DAY, NOMINAL_YEAR, packDay } from "./packed-date.ts";
import type { ReadingStore } from "./reading-store.ts";
import { snapped, TimeCell, type TimeVerdict } from "./time-cell.ts";

const [QUOTE, SPACE, CARRIAGE_RETURN, NEWLINE] = [34, 32, 13, 10];
/** A quoted cell is not longer than this; else the mark is a letter like any other. */
const LONGEST_QUOTE = 4096;
/** More bytes than this without the end of a row are no row of a logger. */
const LONGEST_ROW = 1 << 22;
/** From this many bytes behind the last cell in use the end of the row is looked for by the platform. */
const LONG_TAIL = 48;
const DAY_SECONDS = 86_400;

/** How the rows are cut and which cells are read. */
export interface ScanPlan {
  readonly delimiter: number;
  /** Some old files end their rows with a carriage return alone. */
  readonly rowEnd: 10 | 13;
  readonly firstRowLine: number;
  readonly columns: LoggerColumns;
  /** The cell of a plain number that counts time. */
  readonly counted: Extract<DateShape, "serial days" | "unix seconds" | "unix milliseconds"> | null;
  readonly isPartOfDay: boolean;
  /** An hour 1 to 24 with a minute of 60: the weather file way of saying when an hour ends. */
  readonly isHourEnding: boolean;
  readonly settledMark: DecimalMark | null;
  /** Each value is cut in two cells by its decimal comma. */
  readonly isDecimalSplit: boolean;
  /** The rows of one sensor, when a column says which. */
  readonly sensor: string | null;
  /** What the cell of the quantity says for each, when both values stand in one column. */
  readonly quantities: { readonly temperature: string; readonly relHum: string } | null;
  readonly isHeading: (row: string) => boolean;
}

type Role = keyof LoggerColumns;

/** Cuts pieces of bytes into rows and puts the readings into the store; nothing is made a string unless it is unusual. */
export class RowScanner {
  readonly times = new TimeCell();
  readonly numbers: NumberCell;
  openQuotes = 0;
  private line = 1;
  private rest: Uint8Array = new Uint8Array(0);
  private started = false;
  private readonly slotColumns: Int32Array;
  private readonly cellFrom: Int32Array;
  private readonly cellTo: Int32Array;
  private readonly slots: Readonly<Record<Role, number>>;
  private readonly parts: boolean;
  private readonly secondSlot: number;
  private readonly wanted: Uint8Array | null;
  private readonly warmWord: Uint8Array | null;
  private readonly dampWord: Uint8Array | null;

  constructor(
    private readonly plan: ScanPlan,
    private readonly store: ReadingStore,
    private readonly leftOut: LeftOut,
  ) {
    this.numbers = new NumberCell(plan.settledMark);
    const used = (Object.entries(plan.columns) as [Role, number][]).sort(([, a], [, b]) => a - b);
    const distinct = [...new Set(used.map(([, column]) => column))];
    this.slotColumns = Int32Array.from(distinct);
    this.cellFrom = new Int32Array(distinct.length + 1);
    this.cellTo = new Int32Array(distinct.length + 1);
    const slotOf = (role: Role): number => {
      const column = plan.columns[role];
      return column === undefined ? distinct.length : distinct.indexOf(column); // the place behind the last stays empty
    };
    this.slots = {
      time: slotOf("time"),
      date: slotOf("date"),
      clock: slotOf("clock"),
      year: slotOf("year"),
      month: slotOf("month"),
      day: slotOf("day"),
      dayOfYear: slotOf("dayOfYear"),
      hour: slotOf("hour"),
      minute: slotOf("minute"),
      temperature: slotOf("temperature"),
      relHum: slotOf("relHum"),
      dewPoint: slotOf("dewPoint"),
      sensor: slotOf("sensor"),
      quantity: slotOf("quantity"),
    };
    this.parts = plan.columns.month !== undefined || plan.columns.dayOfYear !== undefined;
    this.secondSlot = plan.columns.relHum === undefined ? this.slots.dewPoint : this.slots.relHum;
    this.wanted = wordIn(plan.columns.sensor, plan.sensor);
    this.warmWord = wordIn(plan.columns.quantity, plan.quantities?.temperature);
    this.dampWord = wordIn(plan.columns.quantity, plan.quantities?.relHum);
  }

  see(piece: Uint8Array): void {
    let bytes: Uint8Array = this.rest.length === 0 ? asBuffer(piece) : Buffer.concat([this.rest, piece]);
    if (!this.started && bytes.length >= 3) {
      this.started = true;
      if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) bytes = bytes.subarray(3);
    }
    const used = this.scan(bytes, false);
    this.rest = bytes.subarray(used);
    if (this.rest.length > LONGEST_ROW) {
      this.leftOut.add("row-short", this.line, () => "a row without an end");
      this.rest = new Uint8Array(0);
    } else if (this.rest.length > 0) this.rest = Buffer.from(this.rest); // let go of the large piece
  }

  end(): void {
    this.scan(asBuffer(this.rest), true);
    this.rest = new Uint8Array(0);
  }

  /** Reads all whole rows and tells where the unfinished one begins. */
  private scan(bytes: Uint8Array, isLast: boolean): number {
    const { delimiter, rowEnd, firstRowLine } = this.plan;
    const { slotColumns, cellFrom, cellTo } = this;
    const slots = slotColumns.length;
    const end = bytes.length;
    const hasQuotes = bytes.indexOf(QUOTE) >= 0;
    let at = 0;
    let tail = 0;
    while (at < end) {
      let i = at;
      let column = 0;
      let slot = 0;
      let next = slotColumns[0] as number; // there is always one cell in use
      let innerLines = 0;
      if (delimiter === SPACE) while (i < end && bytes[i] === SPACE) i++;
      for (;;) {
        const from = i;
        if (hasQuotes && bytes[i] === QUOTE) {
          const close = this.closeOf(bytes, i, isLast);
          if (close === -2) return at;
          if (close >= 0) {
            for (let k = i; k < close; k++) if (bytes[k] === NEWLINE) innerLines++;
            i = close + 1;
          }
        }
        let c = 0;
        while (i < end) {
          c = bytes[i] as number; // i stays below end
          if (c === delimiter || c === rowEnd) break;
          i++;
        }
        if (column === next) {
          cellFrom[slot] = from;
          cellTo[slot] = i;
          slot++;
          next = slot < slots ? (slotColumns[slot] as number) : -1;
        }
        if (i >= end || c === rowEnd) break;
        i++;
        if (delimiter === SPACE) while (i < end && bytes[i] === SPACE) i++;
        column++;
        if (next === -1 && !hasQuotes) {
          const tailFrom = i;
          if (tail > LONG_TAIL) {
            i = bytes.indexOf(rowEnd, i);
            if (i < 0) i = end;
          } else while (i < end && bytes[i] !== rowEnd) i++;
          tail = i - tailFrom;
          break;
        }
      }
      if (i >= end && !isLast) return at;
      if (this.line >= firstRowLine) this.row(bytes, at, i, slot);
      this.line += 1 + innerLines;
      at = i + 1;
    }
    return end;
  }

  /** Where the quoted cell that begins at `open` is closed; -1: it is not a quoted cell; -2: the rest is still to come. */
  private closeOf(bytes: Uint8Array, open: number, isLast: boolean): number {
    const most = Math.min(bytes.length, open + LONGEST_QUOTE);
    for (let i = open + 1; i < most; i++) {
      if (bytes[i] !== QUOTE) continue;
      if (i + 1 >= bytes.length) return isLast ? i : -2;
      const next = bytes[i + 1] as number; // i + 1 stays below the length
      if (next !== QUOTE) {
        if (next <= SPACE || next === this.plan.delimiter) return i;
        this.openQuotes++;
        return -1; // it opens the next cell, so the first one was never closed
      }
      i++;
    }
    if (most === bytes.length && !isLast) return -2;
    this.openQuotes++;
    return -1;
  }

  private row(bytes: Uint8Array, from: number, to: number, found: number): void {
    const { cellFrom, cellTo, slots, plan } = this;
    const count = this.slotColumns.length;
    for (let slot = 0; slot < found; slot++) this.trim(bytes, slot);
    for (let slot = found; slot < count; slot++) cellFrom[slot] = cellTo[slot] = 0;
    const verdict = this.readTime(bytes);
    if (verdict !== "read") {
      this.refuse(bytes, from, to, found === count ? verdict : null);
      return;
    }
    if (this.wanted !== null && !this.isWord(bytes, slots.sensor, this.wanted)) {
      this.leftOut.add("other-sensor", this.line);
      return;
    }
    const more = plan.isDecimalSplit;
    let temperature = this.value(bytes, slots.temperature, more);
    let second = this.value(bytes, this.secondSlot, more);
    if (this.warmWord !== null && this.dampWord !== null) {
      if (this.isWord(bytes, slots.quantity, this.warmWord)) second = Number.NaN;
      else if (this.isWord(bytes, slots.quantity, this.dampWord)) temperature = Number.NaN;
      else {
        this.leftOut.add("other-sensor", this.line);
        return;
      }
    }
    const { times } = this;
    this.store.add(times.date, times.seconds * 1000, this.line, temperature, second, times.offset);
  }

  private value(bytes: Uint8Array, slot: number, isSplit: boolean): number {
    const from = this.cellFrom[slot] as number; // the place behind the last is empty
    let to = this.cellTo[slot] as number;
    if (from === to) return Number.NaN;
    if (isSplit) {
      to++;
      while (to < bytes.length && (bytes[to] as number) >= 48 && (bytes[to] as number) <= 57) to++;
    }
    return this.numbers.read(bytes, from, to);
  }

  /** Spaces and the quotation marks around it are no part of a cell. */
  private trim(bytes: Uint8Array, slot: number): void {
    let from = this.cellFrom[slot] as number;
    let to = this.cellTo[slot] as number;
    while (from < to && (bytes[from] as number) <= SPACE) from++;
    while (to > from && (bytes[to - 1] as number) <= SPACE) to--;
    if (bytes[from] === QUOTE && to - from > 1 && bytes[to - 1] === QUOTE) {
      from++;
      to--;
      while (from < to && (bytes[from] as number) <= SPACE) from++;
      while (to > from && (bytes[to - 1] as number) <= SPACE) to--;
    }
    this.cellFrom[slot] = from;
    this.cellTo[slot] = to;
  }

  private readTime(bytes: Uint8Array): TimeVerdict {
    const { cellFrom, cellTo, slots, times, plan } = this;
    if (plan.columns.time !== undefined) {
      const from = cellFrom[slots.time] as number;
      const to = cellTo[slots.time] as number;
      return plan.counted === null
        ? times.read(bytes, from, to, "both")
        : this.readCounted(bytes, from, to, plan.counted);
    }
    if (this.parts) return this.readParts(bytes);
    const [from, to] = [cellFrom[slots.date] as number, cellTo[slots.date] as number];
    const verdict =
      plan.counted === null
        ? times.read(bytes, from, to, "date")
        : this.readCounted(bytes, from, to, plan.counted);
    if (verdict !== "read" || plan.columns.clock === undefined) return verdict;
    const date = times.date;
    if (plan.isPartOfDay) return this.readPartOfDay(bytes);
    const clock = times.read(bytes, cellFrom[slots.clock] as number, cellTo[slots.clock] as number, "clock");
    times.date = date;
    return clock;
  }

  private readCounted(
    bytes: Uint8Array,
    from: number,
    to: number,
    counted: ScanPlan["counted"],
  ): TimeVerdict {
    const value = this.plainNumber(bytes, from, to);
    if (Number.isNaN(value)) return "unreadable";
    const days =
      counted === "serial days" ? value - 25_569 : value / (counted === "unix seconds" ? 86_400 : 86_400_000);
    const day = Math.floor(days);
    if (day < -40_000 || day > 84_000) return "no such day";
    this.times.date = packDay(day);
    this.times.offset = Number.NaN;
    if (counted === "serial days")
      this.times.seconds = snapped((days - day) * DAY_SECONDS, this.numbers.decimals);
    else this.times.seconds = (counted === "unix seconds" ? value : value / 1000) - day * DAY_SECONDS;
    return "read";
  }

  private readPartOfDay(bytes: Uint8Array): TimeVerdict {
    const { slots, times, numbers } = this;
    const part = this.plainNumber(
      bytes,
      this.cellFrom[slots.clock] as number,
      this.cellTo[slots.clock] as number,
    );
    if (!(part >= 0 && part <= 1)) return "unreadable";
    times.seconds = snapped(part * DAY_SECONDS, Math.max(numbers.decimals, 5)); // fewer figures are exact ones: 0.25
    return "read";
  }

  /** Year, month, day, hour and minute each in a cell. */
  private readParts(bytes: Uint8Array): TimeVerdict {
    const { slots, times } = this;
    const part = (slot: number): number =>
      slot === this.slotColumns.length
        ? 0
        : this.plainNumber(bytes, this.cellFrom[slot] as number, this.cellTo[slot] as number);
    const [year, month, day, hour, minute] = [
      this.plan.columns.year === undefined ? NOMINAL_YEAR : part(slots.year),
      part(slots.month),
      part(slots.day),
      part(slots.hour),
      part(slots.minute),
    ];
    const number =
      this.plan.columns.dayOfYear === undefined
        ? dayNumberOf(year, month, day)
        : dayInYear(year, part(slots.dayOfYear));
    if (Number.isNaN(year + month + day + hour + minute)) return "unreadable";
    if (number === NO_DAY) return "no such day";
    if (hour < 0 || hour > 24 || minute < 0 || minute > 60) return "unreadable";
    times.date = packDay(number);
    times.offset = Number.NaN;
    const isEnding = this.plan.isHourEnding && minute > 0;
    times.seconds = (isEnding ? hour - 1 : hour) * 3600 + minute * 60;
    return "read";
  }

  private plainNumber(bytes: Uint8Array, from: number, to: number): number {
    const { points, commas, odd } = this.numbers;
    const value = from === to ? Number.NaN : this.numbers.read(bytes, from, to);
    this.numbers.points = points;
    this.numbers.commas = commas;
    this.numbers.odd = odd;
    return value;
  }

  private isWord(bytes: Uint8Array, slot: number, word: Uint8Array): boolean {
    const from = this.cellFrom[slot] as number;
    if ((this.cellTo[slot] as number) - from !== word.length) return false;
    for (let i = 0; i < word.length; i++) if (bytes[from + i] !== word[i]) return false;
    return true;
  }

  private refuse(bytes: Uint8Array, from: number, to: number, verdict: TimeVerdict | null): void {
    const text = (): string =>
      Buffer.from(bytes.subarray(from, Math.min(to, from + 400)))
        .toString("utf8")
        .replace(/\r$/, "");
    let isBlank = true;
    for (let i = from; i < to && isBlank; i++) {
      const c = bytes[i] as number; // i stays below to
      if (c > SPACE && c !== this.plan.delimiter && c !== QUOTE) isBlank = false;
    }
    if (isBlank) return;
    if (this.plan.isHeading(text())) this.leftOut.add("headings-again", this.line);
    else if (verdict === "no such day") this.leftOut.add("no-such-day", this.line, () => text().slice(0, 80));
    else
      this.leftOut.add(verdict === null ? "row-short" : "time-unreadable", this.line, () =>
        text().slice(0, 80),
      );
  }
}

const dayInYear = (year: number, day: number): number =>
  day >= 1 && day <= 366 ? dayNumberOf(year, 1, 1) + Math.floor(day) - 1 : NO_DAY;

const wordIn = (column: number | undefined, word: string | null | undefined): Uint8Array | null =>
  column === undefined || word === null || word === undefined ? null : Buffer.from(word);

/** One kind of array keeps the inner loop fast. */
const asBuffer = (bytes: Uint8Array): Buffer =>
  Buffer.isBuffer(bytes) ? bytes : Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Byte that ends the rows of a text. */
export const rowEndOf = (head: string): 10 | 13 =>
  (head.includes("\n") || !head.includes("\r") ? NEWLINE : CARRIAGE_RETURN) as 10 | 13;
