import type { Problem } from "../../core/outcome/problem.ts";
import { yesOrNoFrom } from "./answers.ts";
import { type CellReading, refused } from "./cell-reading.ts";
import type { Column } from "./columns.ts";
import type { DateEvidence, DateOrder } from "./dates.ts";
import { type NumberStyle, numberFrom } from "./numbers.ts";
import { problem } from "./problem.ts";
import { BrokenCell, type Cell, shown } from "./raw-table.ts";
import { readDay } from "./read-day.ts";
import { comparable, listed, nearestWord, wordMeant } from "./words.ts";

/** What the whole file or column shows, needed to read one cell of it. */
export interface Hints {
  readonly numbers: NumberStyle;
  /** The order settled for this column: by the campaign, or by its own dates. */
  readonly order: DateOrder | "two orders" | null;
  readonly evidence: DateEvidence | undefined;
}

/** Reads one cell that is not blank as its column asks. */
export function readCell(column: Column, cell: Cell, hints: Hints): CellReading {
  if (cell instanceof BrokenCell) return brokenCell(cell);
  if (cell instanceof Date) return dateCell(column, cell);
  switch (column.kind) {
    case "text":
      return { value: String(cell).replace(/\s+/g, " ").trim() };
    case "answer":
      return { value: typeof cell === "string" ? cell.trim() : cell };
    case "word":
      return readWord(column, String(cell));
    case "words":
      return readWords(column, String(cell));
    case "yes or no":
      return readYesOrNo(typeof cell === "boolean" ? cell : String(cell));
    case "number":
    case "whole number":
    case "year":
      return readNumber(column, cell, hints.numbers);
    case "day":
      return readDay(String(cell), hints.order, hints.evidence);
  }
}

function brokenCell({ why, shown: got }: BrokenCell): CellReading {
  if (why === "error")
    return refused("cell-error", "stop", { got, remedy: "Mend the formula, or write the value." });
  const remedy = "Open the workbook in a spreadsheet program and save it, or write the value.";
  return refused("formula-without-value", "stop", { got, remedy });
}

function dateCell({ kind }: Column, cell: Date): CellReading {
  const got = shown(cell);
  if (kind === "day" && got !== "") return { value: got };
  return refused("date-cell-in-text", "stop", {
    got,
    expected: kind === "day" ? "a day that exists" : `a ${kind}`,
    remedy:
      "The spreadsheet program has turned the entry into a date: format the column as text and write it again.",
  });
}

function readYesOrNo(cell: string | boolean): CellReading {
  const value = yesOrNoFrom(cell);
  if (value !== null) return { value };
  return refused("not-yes-or-no", "stop", {
    got: String(cell),
    expected: "yes or no",
    remedy: "Write yes or no.",
  });
}

function readWord({ allowed = [] }: Column, written: string): CellReading {
  const value = wordMeant(written, allowed);
  return value !== null ? { value } : { problem: unknownWord(written, allowed) };
}

function readWords({ allowed = [], aliases = {} }: Column, written: string): CellReading {
  const parts = written
    .split("|")
    .flatMap((part) => (aliases[comparable(part)] ?? part).split("|"))
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const meant = parts.map((part) => wordMeant(part, allowed));
  const bad = parts.find((_, i) => meant[i] === null);
  if (bad === undefined) return { value: [...new Set(meant)] };
  const pieces = bad.split(/[,;/+]/);
  const isSplit = pieces.length > 1 && pieces.every((piece) => wordMeant(piece, allowed) !== null);
  return { problem: unknownWord(bad, allowed, isSplit ? 'Put "|" between the words of a list.' : undefined) };
}

/** A word that is not allowed, with the nearest that is. */
function unknownWord(got: string, allowed: readonly string[], remedy?: string): Problem {
  const near = nearestWord(got, allowed);
  const advice = near === null ? "Write one of these words." : `Did you mean "${near}"?`;
  return problem("unknown-word", "stop", {}, { got, expected: listed(allowed), remedy: remedy ?? advice });
}

function readNumber(column: Column, cell: string | number | boolean, style: NumberStyle): CellReading {
  const { unit = "", examples, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = column;
  const isWhole = column.kind !== "number";
  const got = String(cell);
  const value = typeof cell === "number" ? cell : numberFrom(got, style, isWhole, unit);
  if (value === null) {
    const remedy = `Write digits${unit === "" ? "" : ` in ${unit}`}, e.g. ${examples[0] || "40"}.`;
    return refused("not-a-number", "stop", { got, expected: "a number", remedy });
  }
  if (value === "two ways") {
    const remedy = "Write it without a separator for thousands, and with a decimal point.";
    return refused("ambiguous-number", "ask", { got, expected: bothNumbers(got), remedy });
  }
  if (isWhole && !Number.isInteger(value))
    return refused("not-whole", "stop", {
      got,
      expected: "a whole number",
      remedy: "Write whole digits, e.g. 40.",
    });
  if (Number.isFinite(value) && value >= min && value <= max) return { value };
  const remedy = "Look at the number and its unit.";
  return refused("number-out-of-range", "stop", { got, expected: sayRange(column), remedy });
}

const bothNumbers = (got: string): string =>
  `${numberFrom(got, "point", false)} or ${numberFrom(got, "comma", false)}`;

/** The range of a column in words, with its unit. */
export function sayRange({ min, max, unit }: Column): string {
  const range = max === undefined ? `${min ?? 0} or more` : `${min ?? 0} to ${max}`;
  return unit === undefined ? range : `${range} ${unit}`;
}
