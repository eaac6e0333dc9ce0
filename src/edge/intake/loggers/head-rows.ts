import type { CellDelimiter } from "./logger-reading.ts";
import { numberFromText } from "./number-cell.ts";
import { TimeCell } from "./time-cell.ts";

/** A line of the head, cut into cells. */
export interface HeadRow {
  /** 1 is the first line of the file. */
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
}

/** What a cell looks like by itself. */
export type CellKind = "blank" | "number" | "datetime" | "date" | "clock" | "text";

const MOST_LINES = 700;

/** Lines of the head; one that the end of the head cuts in two is left away. */
export function headLines(head: string, isWhole: boolean): string[] {
  const lines = head.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  if (!isWhole && lines.length > 1) lines.pop();
  return lines.slice(0, MOST_LINES);
}

/** Cells of one line; quotation marks around a cell are taken off. */
export function cellsOf(line: string, delimiter: CellDelimiter): string[] {
  if (delimiter === " ") return line.trim().split(/ +/).map(unquoted);
  if (!line.includes('"')) return line.split(delimiter).map((cell) => cell.trim());
  const cells: string[] = [];
  let at = 0;
  while (at <= line.length) {
    const close = line[at] === '"' ? closeOf(line, at) : -1;
    const cut = line.indexOf(delimiter, close < 0 ? at : close);
    const end = cut < 0 ? line.length : cut;
    cells.push(unquoted(line.slice(at, end).trim()));
    at = end + 1;
    if (cut < 0) break;
  }
  return cells;
}

function closeOf(line: string, open: number): number {
  for (let i = open + 1; i < line.length; i++) {
    if (line[i] !== '"') continue;
    if (line[i + 1] !== '"') return i;
    i++;
  }
  return -1;
}

const unquoted = (cell: string): string =>
  cell.length > 1 && cell.startsWith('"') && cell.endsWith('"')
    ? cell.slice(1, -1).replaceAll('""', '"').trim()
    : cell;

const times = new TimeCell();
/** Words for a missing value count as blank: they say nothing of the kind of the column. */
const MISSING = /^(?:[-–—_.*?#\s]*|nan|null|none|n\/?a|na)$/i;

export function kindOf(cell: string): CellKind {
  if (MISSING.test(cell)) return "blank";
  if (!/\d/.test(cell)) return "text";
  if (!Number.isNaN(numberIn(cell))) return "number";
  const bytes = Buffer.from(cell);
  if (times.read(bytes, 0, bytes.length, "both") === "read") {
    const groups = cell.match(/\d+/g) ?? [];
    return groups.length >= 4 || groups.join("").length >= 11 ? "datetime" : "date";
  }
  return /[:h]/i.test(cell) && times.read(bytes, 0, bytes.length, "clock") === "read" ? "clock" : "text";
}

/** The number in a cell, a unit behind it left away; NaN: none. */
export const numberIn = (cell: string): number =>
  numberFromText(
    cell
      .replace(/\u2212/g, "-")
      .replace(/\s?(?:°\s?)?[CFK%]$|\s?%\s?(?:rh|rf|hr)$/i, "")
      .trim(),
    null,
  );
