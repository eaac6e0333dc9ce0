import type { Problem } from "../../core/outcome/problem.ts";

/** A workbook cell without a usable value: a formula never computed, or an error such as `#REF!`. */
export class BrokenCell {
  constructor(
    readonly why: "formula" | "error",
    readonly shown: string,
  ) {}
}

/** Text tables have text only; workbooks have kinds. Empty is "". */
export type Cell = string | number | boolean | Date | BrokenCell;

export type RowFault = "broken-quotes" | "unclosed-quote" | "cell-too-long" | "merged-across";

/** One row as it stands in the file. */
export interface RawRow {
  /** Line of the file (row of the sheet) where the row begins; the first is 1. */
  readonly line: number;
  readonly cells: readonly Cell[];
  readonly fault?: RowFault;
}

export type Delimiter = "," | ";" | "\t";

/** A table that can be read through as often as wanted, in batches, without being held in memory. */
export interface RowSource {
  /** As the user knows it: `items.csv`, `survey.xlsx (items)`. */
  readonly file: string;
  /** What was noticed on opening. */
  readonly notes: readonly Problem[];
  rows(): AsyncIterable<readonly RawRow[]>;
}

export const shown = (cell: Cell | undefined): string => {
  if (cell === undefined) return "";
  if (cell instanceof Date) return Number.isNaN(cell.getTime()) ? "" : cell.toISOString().slice(0, 10);
  return cell instanceof BrokenCell ? cell.shown : String(cell);
};
export const isBlank = (cell: Cell | undefined): boolean =>
  cell === undefined || (typeof cell === "string" && cell.trim() === "");
