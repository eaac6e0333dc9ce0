import type { Problem } from "../../core/outcome/problem.ts";
import type { Column, Table } from "./columns.ts";
import { mayTellOfHealth } from "./privacy.ts";
import { problem } from "./problem.ts";
import { type Cell, isBlank, type RawRow, shown } from "./raw-table.ts";
import { comparable, listed, nearestWord } from "./words.ts";

/** How many rows at the top may be titles before the headings. */
export const ROWS_BEFORE_HEADINGS = 30;

/** Where each column of a table stands in a file. */
export interface Headings {
  readonly line: number;
  /** Position in the row by column name. */
  readonly at: ReadonlyMap<string, number>;
  /** The row as compared, to recognise it when it comes again. */
  readonly row: readonly string[];
  readonly problems: readonly Problem[];
}

/** The heading as compared: without a star for "required", and without a unit in brackets when that makes it known. */
export function headingMeant(
  cell: Cell | undefined,
  columns: Readonly<Record<string, Column>>,
): string | null {
  const plain = comparable(shown(cell));
  if (Object.hasOwn(columns, plain)) return plain;
  const [before = "", unit = ""] = shown(cell).split(/[([]/);
  const name = comparable(before);
  const withUnit = `${name}_${comparable(unit)}`;
  return Object.hasOwn(columns, withUnit) ? withUnit : Object.hasOwn(columns, name) ? name : null;
}

/** The row among the first ones with most known headings; at least two, or it is no row of headings. */
export function findHeadings(table: Table, rows: readonly RawRow[], file: string): Headings | Problem {
  let best: RawRow | null = null;
  let most = 1;
  for (const row of rows.slice(0, ROWS_BEFORE_HEADINGS)) {
    const known = new Set(
      row.cells.map((cell) => headingMeant(cell, table.columns)).filter((name) => name !== null),
    ).size;
    if (known > most) [best, most] = [row, known];
  }
  if (best === null)
    return problem(
      "no-headings",
      "stop",
      { file },
      {
        expected: listed(Object.keys(table.columns)),
        remedy: "Put the headings in one row above the data.",
      },
    );
  return headingsOf(table, best, file);
}

function headingsOf(table: Table, { line, cells }: RawRow, file: string): Headings {
  const at = new Map<string, number>();
  const problems: Problem[] = [];
  cells.forEach((cell, i) => {
    if (isBlank(cell)) return;
    const name = headingMeant(cell, table.columns);
    if (name === null) problems.push(unknownColumn(table, shown(cell), { file, line }));
    else if (at.has(name))
      problems.push(
        problem(
          "column-twice",
          "note",
          { file, line },
          { got: shown(cell), remedy: "Take one of them out, or give it another heading." },
        ),
      );
    else at.set(name, i);
  });
  for (const [name, column] of Object.entries(table.columns))
    if ((column.required || column.kind === "answer") && !at.has(name))
      problems.push(
        problem("missing-column", "stop", { file, line }, { got: name, remedy: `Add it: ${column.help}` }),
      );
  return { line, at, row: cells.map((cell) => comparable(shown(cell))), problems };
}

function unknownColumn(table: Table, heading: string, where: { file: string; line: number }): Problem {
  if (table.aboutPeople && mayTellOfHealth(heading))
    return problem(
      "health-reason-not-kept",
      "note",
      { ...where, column: heading },
      {
        remedy: 'Take the column out of the file; "clean work" in the calendar is all that is needed.',
      },
    );
  const near = nearestWord(heading, Object.keys(table.columns));
  const remedy =
    near === null
      ? "Nothing needs to be done if that is meant."
      : `If "${near}" is meant, change the heading.`;
  return problem("unknown-column", "note", where, { got: heading, remedy });
}

/** Whether a row of data is the headings once more, as pasted tables have it. */
export const repeatsHeadings = (headings: Headings, cells: readonly Cell[]): boolean => {
  const positions = [...headings.at.values()];
  const same = positions.filter(
    (i) => typeof cells[i] === "string" && comparable(shown(cells[i])) === headings.row[i],
  );
  return same.length >= 2 && same.length >= positions.filter((i) => !isBlank(cells[i])).length;
};
