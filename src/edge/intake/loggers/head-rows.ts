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

/** A line of the head before it is cut; a remark over several lines is one. */
export interface HeadLine {
  readonly line: number;
  readonly text: string;
}

/** A remark in quotation marks is not longer than this. */
const MOST_REMARK_LINES = 6;

/** Lines of the head; one that the end of the head cuts in two is left away. */
export function headLines(head: string, isWhole: boolean): HeadLine[] {
  const lines = head.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  if (!isWhole && lines.length > 1) lines.pop();
  const found: HeadLine[] = [];
  for (let i = 0; i < lines.length && found.length < MOST_LINES; ) {
    const more = isOpen(lines[i] ?? "") ? linesToClose(lines, i) : 1;
    found.push({ line: i + 1, text: lines.slice(i, i + more).join("\n") });
    i += more;
  }
  return found;
}

const isOpen = (text: string): boolean => text.includes('"') && text.split('"').length % 2 === 0;

function linesToClose(lines: readonly string[], from: number): number {
  for (let count = 2; count <= MOST_REMARK_LINES && from + count <= lines.length; count++)
    if (!isOpen(lines.slice(from, from + count).join("\n"))) return count;
  return 1; // a mark that never closes is a letter like any other
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
    const isPacked = groups.length === 2 && (groups[0] ?? "").length >= 6 && (groups[1] ?? "").length >= 3;
    return groups.length >= 4 || groups.join("").length >= 11 || isPacked ? "datetime" : "date";
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
