import { type CellKind, cellsOf, type HeadLine, type HeadRow, headLines, kindOf } from "./head-rows.ts";
import { meaningOf } from "./heading-words.ts";
import type { CellDelimiter, LoggerCorrections } from "./logger-reading.ts";

/** How the head of a file is laid out. */
export interface TableShape {
  readonly delimiter: CellDelimiter;
  readonly preamble: readonly HeadRow[];
  /** 0: no headings. */
  readonly headingLine: number;
  readonly headingText: string;
  readonly headings: readonly string[];
  /** Words in a row of units below and a row of names above the headings, by column. */
  readonly beside: readonly string[];
  readonly firstRowLine: number;
  /** Cells of the first rows, decimals put together again where the delimiter had cut them. */
  readonly sample: readonly (readonly string[])[];
  /** Cells by which the rows are longer than the headings at their beginning. */
  readonly shift: number;
  /** From this column on each value takes two cells; null: none does. */
  readonly splitFrom: number | null;
}

const DELIMITERS: readonly CellDelimiter[] = ["\t", ";", "|", ",", " "];
const LINES_BEFORE = 8;
const SAMPLE_ROWS = 300;

interface Cut {
  readonly delimiter: CellDelimiter;
  readonly rows: readonly HeadRow[];
  /** Index of the first row of readings. */
  readonly first: number;
  readonly weight: number;
}

/** The shape of the head, or null when no delimiter gives rows with a time and a number. */
export function tableShape(head: string, isWhole: boolean, given: LoggerCorrections): TableShape | null {
  const lines = headLines(head, isWhole);
  const announced = /^sep=(.)$/i.exec(lines[0]?.text ?? "")?.[1];
  const candidates = given.delimiter
    ? [given.delimiter]
    : announced
      ? DELIMITERS.filter((each) => each === announced)
      : DELIMITERS;
  let best: Cut | null = null;
  for (const delimiter of candidates.length > 0 ? candidates : DELIMITERS) {
    if (delimiter === " " && best !== null) break; // spaces part cells only where nothing else does
    const cut = cutBy(lines, delimiter);
    if (cut !== null && (best === null || cut.weight > best.weight)) best = cut;
  }
  return best === null ? null : shaped(best, given.headingLine);
}

function cutBy(lines: readonly HeadLine[], delimiter: CellDelimiter): Cut | null {
  const rows = lines.map(({ line, text }): HeadRow => ({ line, text, cells: cellsOf(text, delimiter) }));
  const kinds = rows.map(({ cells }) => cells.map(kindOf));
  const scores = kinds.map(scoreOf);
  const marks = kinds.map(timeMark);
  const isBlank = (i: number): boolean => kinds[i]?.every((kind) => kind === "blank") ?? true;
  const alike = (i: number, k: number): boolean =>
    scores[k] === scores[i] &&
    marks[k] === marks[i] &&
    (scores[i] !== 1 || kinds[k]?.length === kinds[i]?.length);
  let first = scores.findIndex((score, i) => score > 0 && isFollowed(i, scores, alike, isBlank));
  if (first < 0) return null;
  const weight = scores.slice(first).reduce((all, score) => all + score, 0);
  const mark = marks[first];
  while (
    mark !== "" &&
    first > 0 &&
    marks[first - 1] === mark &&
    kinds[first - 1]?.length === kinds[first]?.length
  )
    first--; // rows of events
  return { delimiter, rows, first, weight: weight + Math.min(rows[first]?.cells.length ?? 0, 40) / 100 };
}

/** Where the time stands in a row and what it looks like; empty: there is none. */
function timeMark(kinds: readonly CellKind[]): string {
  const at = kinds.findIndex(isTimeKind);
  return at < 0 ? "" : `${kinds[at]} in ${at}`;
}

/** 3: a date and a number; 1: several numbers, which may be a counted time or parts of a date; 0: no row of readings. */
function scoreOf(kinds: readonly CellKind[]): number {
  const count = (kind: CellKind): number => kinds.filter((each) => each === kind).length;
  const numbers = count("number");
  if (count("datetime") + count("date") > 0) return numbers > 0 ? 3 : 0;
  if (count("clock") > 0 && numbers > 0) return 2;
  return numbers >= 2 && count("text") < numbers ? 1 : 0;
}

/** Many of the next rows are like this one, so it is no line of the preamble by chance; and no stronger ones follow soon. */
function isFollowed(
  at: number,
  scores: readonly number[],
  alike: (i: number, k: number) => boolean,
  isBlank: (i: number) => boolean,
): boolean {
  let [same, other, stronger] = [0, 0, 0];
  for (let k = at; k < Math.min(scores.length, at + 40); k++) {
    if (isBlank(k)) continue;
    if ((scores[k] ?? 0) > (scores[at] ?? 0)) stronger++;
    else if (alike(at, k)) same++;
    else other++;
  }
  return same >= other / 2 && stronger <= same;
}

function shaped({ delimiter, rows, first, weight: _ }: Cut, settledLine: number | undefined): TableShape {
  const heading =
    settledLine === undefined
      ? headingAbove(rows, first)
      : rows.findIndex(({ line }) => line === settledLine);
  const firstRow = Math.max(first, heading + 1);
  const headings = heading < 0 ? [] : withoutLastBlanks(rows[heading]?.cells ?? []);
  const body = rows.slice(firstRow).filter(({ cells }) => scoreOf(cells.map(kindOf)) > 0);
  const sample = body.slice(0, SAMPLE_ROWS).map(({ cells }) => cells);
  const splitFrom = splitDecimals(delimiter, headings, sample);
  const whole = splitFrom === null ? sample : sample.map((cells) => joined(cells, splitFrom));
  const shift = splitFrom === null ? shiftOf(headings, whole) : 0;
  const blanks = Array.from({ length: shift }, () => "");
  return {
    delimiter,
    preamble: rows.slice(0, heading < 0 ? firstRow : heading),
    headingLine: heading + 1,
    headingText: rows[heading]?.text ?? "",
    headings: [...blanks, ...headings],
    beside: heading < 0 ? [] : [...blanks, ...besideHeadings(rows, heading, firstRow, headings.length)],
    firstRowLine: firstRow + 1,
    sample: whole,
    shift,
    splitFrom,
  };
}

/** The row above the readings in which most cells have a known meaning; the nearest of equals; -1: none. */
function headingAbove(rows: readonly HeadRow[], first: number): number {
  let [best, most] = [-1, 0];
  for (let i = first - 1; i >= Math.max(0, first - LINES_BEFORE); i--) {
    const cells = rows[i]?.cells ?? [];
    if (cells.filter((cell) => cell !== "").length < 2) continue;
    if (cells.some((cell) => kindOf(cell) === "datetime")) continue;
    const known = new Set(cells.map(meaningOf).filter((meaning) => meaning !== null && meaning !== "sensor"))
      .size;
    const likeRows = cells.length === (rows[first]?.cells.length ?? 0) ? 0.5 : 0;
    if (known > 0 && known + likeRows > most) [best, most] = [i, known + likeRows];
  }
  if (best >= 0) return best;
  const above = rows[first - 1];
  const isWords =
    above !== undefined &&
    above.cells.length > 1 &&
    above.cells.every((cell) => /^(?:text|blank)$/.test(kindOf(cell)));
  return isWords && above.cells.length === rows[first]?.cells.length ? first - 1 : -1;
}

function besideHeadings(rows: readonly HeadRow[], heading: number, first: number, columns: number): string[] {
  const below = rows.slice(heading + 1, first).filter(({ cells }) => cells.length > 1);
  const above = rows[heading - 1];
  const names =
    above !== undefined && above.cells.length > 2 && Math.abs(above.cells.length - columns) <= 1
      ? carriedOver(above.cells)
      : [];
  return Array.from({ length: columns }, (_, i) =>
    [names[i] ?? "", ...below.map(({ cells }) => cells[i] ?? "")].filter((word) => word !== "").join(" "),
  );
}

/** A name over several columns stands in the first of them only. */
function carriedOver(cells: readonly string[]): string[] {
  let last = "";
  return cells.map((cell) => {
    if (cell !== "") last = cell;
    return last;
  });
}

function withoutLastBlanks(cells: readonly string[]): string[] {
  let length = cells.length;
  while (length > 0 && cells[length - 1] === "") length--;
  return cells.slice(0, length);
}

const isTimeKind = (kind: CellKind): boolean => kind === "datetime" || kind === "date" || kind === "clock";

/** Rows with cells in front that no heading names: the heading of time then stands over something else. */
function shiftOf(headings: readonly string[], sample: readonly (readonly string[])[]): number {
  const named = headings.findIndex((heading) => /^(?:time|date|clock)$/.test(meaningOf(heading) ?? ""));
  if (named < 0) return 0;
  const kindsAt = (column: number): number =>
    sample.filter((cells) => isTimeKind(kindOf(cells[column] ?? ""))).length;
  const most = Math.max(...sample.map((cells) => withoutLastBlanks(cells).length)) - headings.length;
  if (kindsAt(named) * 2 > sample.length) return 0;
  for (let shift = 1; shift <= Math.min(most, 3); shift++)
    if (kindsAt(named + shift) * 2 > sample.length) return shift;
  return 0;
}

/** Comma between cells and in the decimals, without quotation marks: behind the time there are twice as many cells as headings. */
function splitDecimals(
  delimiter: CellDelimiter,
  headings: readonly string[],
  sample: readonly (readonly string[])[],
): number | null {
  if (delimiter !== "," || headings.length < 2 || sample.length < 3) return null;
  const from = 1 + lastTimeColumn(sample);
  const values = headings.length - from;
  if (from < 1 || values < 1) return null;
  const fits = sample.filter((cells) => {
    const rest = withoutLastBlanks(cells).slice(from);
    return (
      rest.length === 2 * values && rest.every((cell, i) => (i % 2 === 0 ? /^-?\d+$/ : /^\d+$/).test(cell))
    );
  });
  return fits.length > 0.9 * sample.length ? from : null;
}

function lastTimeColumn(sample: readonly (readonly string[])[]): number {
  const width = Math.max(...sample.map((cells) => cells.length));
  for (let column = width - 1; column >= 0; column--)
    if (sample.filter((cells) => isTimeKind(kindOf(cells[column] ?? ""))).length * 2 > sample.length)
      return column;
  return -1;
}

const joined = (cells: readonly string[], from: number): string[] => [
  ...cells.slice(0, from),
  ...Array.from({ length: Math.ceil((cells.length - from) / 2) }, (_, i) => {
    const at = from + 2 * i;
    return `${cells[at] ?? ""},${cells[at + 1] ?? ""}`;
  }),
];
