import { type CellKind, kindOf, numberIn } from "./head-rows.ts";
import { type ColumnMeaning, meaningOf } from "./heading-words.ts";
import { dayNumberOf, NO_DAY } from "./packed-date.ts";
import type { TableShape } from "./table-shape.ts";

/** What is known of a column from its heading and its first cells. */
export interface ColumnFacts {
  readonly index: number;
  /** As written; empty without headings. */
  readonly heading: string;
  /** Heading with the words of the rows beside it. */
  readonly words: string;
  readonly meaning: ColumnMeaning | null;
  readonly kind: CellKind;
  /** Numbers of the first rows. */
  readonly numbers: readonly number[];
  readonly texts: readonly string[];
}

export function columnFacts({ headings, beside, sample }: TableShape): ColumnFacts[] {
  const width = Math.max(headings.length, ...sample.map((cells) => cells.length));
  return Array.from({ length: width }, (_, index) => {
    const heading = headings[index] ?? "";
    const texts = sample.map((cells) => cells[index] ?? "");
    const kind = commonKind(texts);
    return {
      index,
      heading,
      words: `${heading} ${beside[index] ?? ""}`.trim(),
      meaning: heading === "" ? null : meaningOf(heading),
      kind,
      numbers: kind === "number" ? texts.map(numberIn).filter((value) => !Number.isNaN(value)) : [],
      texts,
    };
  });
}

function commonKind(texts: readonly string[]): CellKind {
  const counts = new Map<CellKind, number>();
  for (const text of texts) {
    const kind = kindOf(text);
    if (kind !== "blank") counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([, a], [, b]) => b - a);
  if (most === undefined) return "blank";
  return most[0] === "number" ? (packedKind(texts) ?? "number") : most[0];
}

/** Dates without signs between their parts: `20260602`, `202606020800`, `20260602080000`. */
function packedKind(texts: readonly string[]): CellKind | null {
  const filled = texts.filter((text) => text !== "");
  if (!filled.every((text) => /^(?:\d{8}|\d{12}|\d{14})$/.test(text))) return null;
  const fits = filled.every((text) => {
    const [year, month, day] = [Number(text.slice(0, 4)), Number(text.slice(4, 6)), Number(text.slice(6, 8))];
    return year > 1949 && year < 2100 && dayNumberOf(year, month, day) !== NO_DAY;
  });
  if (!fits) return null;
  return filled[0]?.length === 8 ? "date" : "datetime";
}

export const isRising = (numbers: readonly number[]): boolean =>
  numbers.length > 1 &&
  numbers.every((value, i) => i === 0 || value >= (numbers[i - 1] ?? 0)) &&
  numbers.at(-1) !== numbers[0];

/** Whole numbers that go up by one: the rows are counted. */
export const isRowNumber = (numbers: readonly number[]): boolean =>
  numbers.length > 2 &&
  numbers.every((value, i) => Number.isInteger(value) && (i === 0 || value === (numbers[i - 1] ?? 0) + 1));

export const within = (numbers: readonly number[], least: number, most: number): boolean =>
  numbers.length > 0 && numbers.every((value) => value >= least && value <= most);
