import type { Problem } from "../../core/outcome/problem.ts";
import { yesOrNoFrom } from "./answers.ts";
import type { Column } from "./columns.ts";
import { type DateEvidence, type DateOrder, dateFrom } from "./dates.ts";
import { type NumberStyle, numberFrom } from "./numbers.ts";
import { problem, type Where } from "./problem.ts";
import { BrokenCell, type Cell, shown } from "./raw-table.ts";
import { comparable, listed, nearestWord, wordMeant } from "./words.ts";

/** What the whole file or column shows, needed to read one cell of it. */
export interface Hints {
  readonly numbers: NumberStyle;
  /** The order settled for this column: by the campaign, or by its own dates. */
  readonly order: DateOrder | "two orders" | null;
  readonly evidence: DateEvidence | undefined;
}

type Read = { readonly value: unknown } | { readonly problem: Problem };

/** Reads one cell that is not blank as its column asks. */
export function readCell(column: Column, cell: Cell, hints: Hints, where: Where): Read {
  if (cell instanceof BrokenCell) return no(brokenCell(cell, where));
  if (cell instanceof Date) return dateCell(column, cell, where);
  const refuse = (
    code: Parameters<typeof problem>[0],
    expected: string,
    remedy: string,
    severity: "stop" | "ask" = "stop",
  ): Read => no(problem(code, severity, where, { got: String(cell), expected, remedy }));
  switch (column.kind) {
    case "text":
      return { value: String(cell).replace(/\s+/g, " ").trim() };
    case "answer":
      return { value: typeof cell === "string" ? cell.trim() : cell };
    case "word":
      return readWord(column, String(cell), where);
    case "words":
      return readWords(column, String(cell), where);
    case "yes or no": {
      const value = yesOrNoFrom(typeof cell === "boolean" ? cell : String(cell));
      return value === null ? refuse("not-yes-or-no", "yes or no", "Write yes or no.") : { value };
    }
    case "number":
    case "whole number":
    case "year":
      return readNumber(column, cell, hints, where);
    case "day":
      return readDay(String(cell), hints, where);
  }
}

const no = (found: Problem): Read => ({ problem: found });

function brokenCell(cell: BrokenCell, where: Where): Problem {
  return cell.why === "formula"
    ? problem("formula-without-value", "stop", where, {
        got: cell.shown,
        remedy: "Open the workbook in a spreadsheet program and save it, or write the value.",
      })
    : problem("cell-error", "stop", where, {
        got: cell.shown,
        remedy: "Mend the formula, or write the value.",
      });
}

function dateCell(column: Column, cell: Date, where: Where): Read {
  const written = shown(cell);
  if (column.kind === "day" && written !== "") return { value: written };
  return no(
    problem("date-cell-in-text", "stop", where, {
      got: written,
      expected: column.kind === "day" ? "a day that exists" : `a ${column.kind}`,
      remedy:
        "The spreadsheet program has turned the entry into a date: format the column as text and write it again.",
    }),
  );
}

function readWord(column: Column, written: string, where: Where): Read {
  const allowed = column.allowed ?? [];
  const value = wordMeant(written, allowed);
  return value !== null ? { value } : no(unknownWord(written, allowed, where));
}

function readWords(column: Column, written: string, where: Where): Read {
  const allowed = column.allowed ?? [];
  const parts = written
    .split("|")
    .flatMap((part) => (column.aliases?.[comparable(part)] ?? part).split("|"))
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const meant = parts.map((part) => wordMeant(part, allowed));
  const bad = parts.find((_, i) => meant[i] === null);
  if (bad === undefined) return { value: [...new Set(meant)] };
  const split = /[,;/+]/.test(bad) && bad.split(/[,;/+]/).every((part) => wordMeant(part, allowed) !== null);
  const remedy = split ? 'Put "|" between the words of a list.' : undefined;
  return no(unknownWord(bad, allowed, where, remedy));
}

/** A word that is not allowed, with the nearest that is. */
export function unknownWord(
  written: string,
  allowed: readonly string[],
  where: Where,
  remedy?: string,
): Problem {
  const near = nearestWord(written, allowed);
  const advice = near === null ? "Write one of these words." : `Did you mean "${near}"?`;
  return problem("unknown-word", "stop", where, {
    got: written,
    expected: listed(allowed),
    remedy: remedy ?? advice,
  });
}

function readNumber(column: Column, cell: string | number | boolean, hints: Hints, where: Where): Read {
  const whole = column.kind !== "number";
  const got = String(cell);
  const value =
    typeof cell === "string"
      ? numberFrom(cell, hints.numbers, whole, column.unit)
      : typeof cell === "number"
        ? cell
        : null;
  if (value === null)
    return no(
      problem("not-a-number", "stop", where, {
        got,
        expected: "a number",
        remedy: `Write digits${column.unit ? ` in ${column.unit}` : ""}, e.g. ${column.examples[0] || "40"}.`,
      }),
    );
  if (value === "two ways")
    return no(
      problem("ambiguous-number", "ask", where, {
        got,
        expected: twoNumbers(got),
        remedy: "Write it without a separator for thousands, and with a decimal point.",
      }),
    );
  if (whole && !Number.isInteger(value))
    return no(
      problem("not-whole", "stop", where, {
        got,
        expected: "a whole number",
        remedy: "Write whole digits, e.g. 40.",
      }),
    );
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = column;
  if (Number.isFinite(value) && value >= min && value <= max) return { value };
  return no(
    problem("number-out-of-range", "stop", where, {
      got,
      expected: sayRange(column),
      remedy: "Look at the number and its unit.",
    }),
  );
}

const twoNumbers = (got: string): string =>
  `${Number(got.replace(/[.,]/, ""))} or ${Number(got.replace(",", "."))}`;

export function sayRange({ min, max, unit }: Column): string {
  const range = max === undefined ? `${min ?? 0} or more` : `${min ?? 0} to ${max}`;
  return unit === undefined ? range : `${range} ${unit}`;
}

const SETTLE = 'Write dates as yyyy-mm-dd, or set "dates" in campaign.json to "day first" or "month first".';

function readDay(written: string, { order, evidence }: Hints, where: Where): Read {
  const reading = dateFrom(written);
  if (reading.kind === "day") return { value: reading.day };
  if (reading.kind === "short year")
    return no(
      problem("short-year", "stop", where, {
        got: written,
        expected: "a year of four digits",
        remedy: "Write the whole year, e.g. 2026-06-02.",
      }),
    );
  if (reading.kind === "none")
    return no(
      problem("not-a-date", "stop", where, {
        got: written,
        expected: "a date",
        remedy: "Write yyyy-mm-dd, e.g. 2026-06-02.",
      }),
    );
  if (order === "two orders") return contradictory(written, reading, evidence, where);
  const value =
    order === "day first" ? reading.dayFirst : order === "month first" ? reading.monthFirst : null;
  if (value !== null) return { value };
  if (order !== null)
    return no(
      problem("not-a-date", "stop", where, {
        got: written,
        expected: `a date, ${order}`,
        remedy: "Write yyyy-mm-dd, e.g. 2026-06-02.",
      }),
    );
  return no(
    problem("ambiguous-date", "ask", where, {
      got: written,
      expected: `${reading.dayFirst} or ${reading.monthFirst}`,
      remedy: SETTLE,
    }),
  );
}

/** Where the orders contradict, only a date that fits the commoner order and no other is taken. */
function contradictory(
  written: string,
  reading: { readonly dayFirst: unknown; readonly monthFirst: unknown },
  evidence: DateEvidence | undefined,
  where: Where,
): Read {
  const commoner = evidence?.commoner() ?? null;
  if (commoner === "day first" && reading.monthFirst === null) return { value: reading.dayFirst };
  if (commoner === "month first" && reading.dayFirst === null) return { value: reading.monthFirst };
  const expected = `${evidence?.dayFirst ?? 0} day first, ${evidence?.monthFirst ?? 0} month first`;
  return no(
    problem("contradictory-dates", "ask", where, {
      got: written,
      expected,
      remedy: "Write every date of the column as yyyy-mm-dd.",
    }),
  );
}
