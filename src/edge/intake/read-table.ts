import type { Problem } from "../../core/outcome/problem.ts";
import type { Column, Columns, RowOf, Table } from "./columns.ts";
import type { DateOrder } from "./dates.ts";
import { repeatsHeadings } from "./headings.ts";
import type { NumberStyle } from "./numbers.ts";
import { mayTellOfHealth } from "./privacy.ts";
import { count, problem } from "./problem.ts";
import { isBlank, type RawRow, type RowSource, shown } from "./raw-table.ts";
import { type Hints, readCell } from "./read-cell.ts";
import { faultOf } from "./row-fault.ts";
import { type Survey, surveyOf } from "./survey.ts";

/** Bad rows after which a file is taken not to be this table at all. */
const MOST_BAD_ROWS = 20_000;
/** Different texts kept once for all rows that have them. */
const MOST_SHARED = 100_000;

export interface TableRow<C extends Columns = Columns> {
  readonly file: string;
  readonly line: number;
  readonly cells: RowOf<C>;
}

/** A row that was set aside, with its name as far as it could be read: others may speak of it. */
export interface AsideRow {
  readonly file: string;
  readonly line: number;
  readonly key: string;
}

export interface TableRead<C extends Columns = Columns> {
  readonly rows: readonly TableRow<C>[];
  readonly aside: readonly AsideRow[];
  readonly problems: readonly Problem[];
  /** Rows with anything in them, the headings not counted. */
  readonly rowCount: number;
  readonly numbers: NumberStyle;
}

export const noTable: TableRead<never> = {
  rows: [],
  aside: [],
  problems: [],
  rowCount: 0,
  numbers: "unknown",
};

/** Reads a table in two passes: the first sees how the file writes dates and numbers, the second reads each row by that. */
export async function readTable<C extends Columns>(
  table: Table<C>,
  source: RowSource,
  settled: DateOrder | null,
): Promise<TableRead<C>> {
  const survey = await surveyOf(table, source);
  if ("code" in survey) return { ...noTable, problems: [...source.notes, survey] };
  const reader = new TableReader(table, source.file, survey, settled);
  reader.problems.push(...source.notes, ...survey.headings.problems);
  for await (const batch of source.rows()) if (!batch.every((row) => reader.see(row))) break;
  const { rows, aside, problems, rowCount } = reader;
  return { rows, aside, problems, rowCount, numbers: survey.numbers };
}

interface ColumnAt {
  readonly name: string;
  readonly column: Column;
  readonly at: number;
  readonly hints: Hints;
}

class TableReader<C extends Columns> {
  readonly rows: TableRow<C>[] = [];
  readonly aside: AsideRow[] = [];
  readonly problems: Problem[] = [];
  rowCount = 0;
  private readonly columns: readonly ColumnAt[];
  private readonly isUsable: boolean;
  private readonly lastColumn: number;
  private readonly shared = new Map<string, string>();

  constructor(
    private readonly table: Table<C>,
    private readonly file: string,
    private readonly survey: Survey,
    settled: DateOrder | null,
  ) {
    const { at: positions, problems, row } = survey.headings;
    this.columns = [...positions].flatMap(([name, at]) => {
      const column = table.columns[name];
      const evidence = survey.dates.get(name);
      const hints = { numbers: survey.numbers, order: settled ?? evidence?.order() ?? null, evidence };
      return column === undefined ? [] : [{ name, column, at, hints }];
    });
    this.isUsable = !problems.some(({ code }) => code === "missing-column");
    this.lastColumn = row.findLastIndex((heading) => heading !== "");
  }

  /** Takes one row in; false: read no further. */
  see(row: RawRow): boolean {
    if (row.line <= this.survey.headings.line || (row.fault === undefined && row.cells.every(isBlank)))
      return true;
    if (repeatsHeadings(this.survey.headings, row.cells)) {
      const remedy = "Nothing needs to be done.";
      this.problems.push(problem("heading-repeated", "note", this.where(row), { remedy }));
      return true;
    }
    if (this.rowCount >= this.table.mostRows) return this.tooMany(row);
    if (this.aside.length >= MOST_BAD_ROWS) return this.tooBad(row);
    this.rowCount++;
    if (!this.isUsable) return true;
    const problems = row.fault === undefined ? this.cellsOf(row) : [faultOf(row, row.fault, this.where(row))];
    if (problems.length > 0) this.setAside(row, problems);
    return row.fault !== "unclosed-quote";
  }

  private where = ({ line }: RawRow) => ({ file: this.file, line });

  private tooMany(row: RawRow): false {
    const remedy = "Split the campaign, or take out rows that do not belong to it.";
    const expected = count(this.table.mostRows);
    this.problems.push(problem("too-many-rows", "stop", this.where(row), { expected, remedy }));
    return false;
  }

  private tooBad(row: RawRow): false {
    const remedy = "Look whether this file is the table it is named for.";
    const expected = count(this.aside.length);
    this.problems.push(problem("too-many-problems", "stop", this.where(row), { expected, remedy }));
    return false;
  }

  /** Reads the cells into a row; gives the problems when that cannot be done. */
  private cellsOf(row: RawRow): Problem[] {
    const extra = this.extraCells(row);
    if (extra !== null) return [extra]; // everything after the first such cell is likely shifted
    const cells: Record<string, unknown> = {};
    const bad: Problem[] = [];
    let isAssumed = false;
    for (const { name, column, at, hints } of this.columns) {
      const cell = row.cells[at];
      if (cell === undefined || isBlank(cell)) {
        if (column.isPrivate) isAssumed = true;
        else if (column.required) bad.push(this.emptyCell(row, name, column));
        continue;
      }
      const read = readCell(column, cell, hints);
      if ("value" in read) cells[name] = this.share(read.value);
      else if (column.isPrivate) isAssumed = true;
      else bad.push({ ...read.problem, ...this.where(row), column: name });
    }
    if (bad.length > 0) return bad;
    if (isAssumed) this.assumeCleanWork(row, cells);
    this.rows.push({ file: this.file, line: row.line, cells: cells as RowOf<C> }); // each column has just been read by its kind
    return [];
  }

  /** The same text once for all rows. A copy, since a piece of a large text would keep all of it in memory. */
  private share(value: unknown): unknown {
    if (typeof value !== "string" || this.shared.size >= MOST_SHARED) return value;
    const before = this.shared.get(value);
    if (before !== undefined) return before;
    const copy = Buffer.from(value).toString();
    this.shared.set(copy, copy);
    return copy;
  }

  /** Whether a person may be given mould work: anything but a clear yes is no, and what was written is not repeated. */
  private assumeCleanWork(row: RawRow, cells: Record<string, unknown>): void {
    for (const { name, column } of this.columns)
      if (column.isPrivate && cells[name] === undefined) {
        cells[name] = false;
        const remedy = "Write yes or no and nothing else.";
        this.problems.push(
          problem("clean-work-assumed", "note", { ...this.where(row), column: name }, { remedy }),
        );
      }
  }

  private emptyCell(row: RawRow, name: string, { help }: Column): Problem {
    const said = { got: "", expected: help, remedy: `Write it: ${help}` };
    return problem("required-empty", "stop", { ...this.where(row), column: name }, said);
  }

  private extraCells(row: RawRow): Problem | null {
    const extra = row.cells.findIndex((cell, i) => i > this.lastColumn && !isBlank(cell));
    if (extra < 0) return null;
    const got = this.table.aboutPeople ? "not shown" : shown(row.cells[extra]);
    const remedy = "Most likely a text with a comma or semicolon in it: put it in quotation marks.";
    return problem("extra-cells", "stop", this.where(row), {
      got,
      expected: `${this.lastColumn + 1} cells`,
      remedy,
    });
  }

  private setAside(row: RawRow, problems: readonly Problem[]): void {
    this.aside.push({ file: this.file, line: row.line, key: this.keyOf(row) });
    const isBroken = row.fault !== undefined || problems.some(({ code }) => code === "extra-cells");
    for (const each of problems)
      this.problems.push(this.table.aboutPeople ? withoutHealth(each, isBroken) : each);
  }

  private keyOf(row: RawRow): string {
    const positions = this.table.key.map((name) => this.survey.headings.at.get(name));
    return positions.map((at) => (at === undefined ? "" : shown(row.cells[at]).trim())).join("\u0000");
  }
}

/** The problem without what was written, when that may tell of health; a broken row is never quoted. */
function withoutHealth(found: Problem, isBroken: boolean): Problem {
  if (found.got === undefined || !(isBroken || mayTellOfHealth(found.got))) return found;
  return { ...found, got: "not shown" };
}
