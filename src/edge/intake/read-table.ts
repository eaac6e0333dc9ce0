import type { Problem } from "../../core/outcome/problem.ts";
import type { Column, Columns, RowOf, Table } from "./columns.ts";
import { DateEvidence, type DateOrder } from "./dates.ts";
import { findHeadings, type Headings, ROWS_BEFORE_HEADINGS, repeatsHeadings } from "./headings.ts";
import { type NumberStyle, styleShownBy } from "./numbers.ts";
import { mayTellOfHealth } from "./privacy.ts";
import { count, problem } from "./problem.ts";
import { type Cell, isBlank, type RawRow, type RowFault, type RowSource, shown } from "./raw-table.ts";
import { type Hints, readCell } from "./read-cell.ts";

/** Bad rows after which a file is taken not to be this table at all. */
const MOST_BAD_ROWS = 20_000;

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

/** Reads a table in two passes: the first sees how the file writes dates and numbers, the second reads each row by that. */
export async function readTable<C extends Columns>(
  table: Table<C>,
  source: RowSource,
  settled: DateOrder | null,
): Promise<TableRead<C>> {
  const survey = await surveyOf(table, source);
  if ("code" in survey)
    return { rows: [], aside: [], problems: [...source.notes, survey], rowCount: 0, numbers: "unknown" };
  const reader = new TableReader(table, source.file, survey, settled);
  reader.problems.push(...source.notes, ...survey.headings.problems);
  for await (const batch of source.rows()) if (!batch.every((row) => reader.see(row))) break;
  return reader;
}

interface Survey {
  readonly headings: Headings;
  readonly numbers: NumberStyle;
  readonly dates: ReadonlyMap<string, DateEvidence>;
}

async function surveyOf(table: Table, source: RowSource): Promise<Survey | Problem> {
  const dates = new Map<string, DateEvidence>();
  for (const [name, column] of Object.entries(table.columns))
    if (column.kind === "day") dates.set(name, new DateEvidence());
  const top: RawRow[] = [];
  const styles = { point: 0, comma: 0 };
  let headings: Headings | null = null;
  let seen = 0;
  const look = (row: RawRow, found: Headings): void => {
    if (row.line > found.line) lookAt(table, row, found, dates, styles);
  };
  for await (const batch of source.rows()) {
    if (headings === null) {
      for (const row of batch) top.push(row); // a spread of a whole sheet would overflow the stack
      if (top.length < ROWS_BEFORE_HEADINGS) continue;
      const found = findHeadings(table, top, source.file);
      if ("code" in found) return found;
      headings = found;
      for (const row of top) look(row, headings);
    } else for (const row of batch) look(row, headings);
    seen += batch.length;
    if (seen > table.mostRows + ROWS_BEFORE_HEADINGS) break;
  }
  if (headings === null) {
    const found = findHeadings(table, top, source.file);
    if ("code" in found) return found;
    headings = found;
    for (const row of top) look(row, headings);
  }
  return { headings, numbers: styleOf(styles), dates };
}

function lookAt(
  table: Table,
  { cells }: RawRow,
  { at }: Headings,
  dates: ReadonlyMap<string, DateEvidence>,
  styles: { point: number; comma: number },
): void {
  for (const [name, i] of at) {
    const cell = cells[i];
    if (typeof cell !== "string" || cell === "") continue;
    const kind = table.columns[name]?.kind;
    if (kind === "day") dates.get(name)?.see(cell);
    else if (kind === "number" || kind === "answer") {
      const style = styleShownBy(cell);
      if (style !== null) styles[style]++;
    }
  }
}

const styleOf = ({ point, comma }: { point: number; comma: number }): NumberStyle =>
  point > 0 && comma > 0 ? "mixed" : comma > 0 ? "comma" : point > 0 ? "point" : "unknown";

class TableReader<C extends Columns> implements TableRead<C> {
  readonly rows: TableRow<C>[] = [];
  readonly aside: AsideRow[] = [];
  readonly problems: Problem[] = [];
  readonly numbers: NumberStyle;
  rowCount = 0;
  private readonly columns: readonly (readonly [string, Column, number, Hints])[];
  private readonly isUsable: boolean;
  private readonly lastColumn: number;

  constructor(
    private readonly table: Table<C>,
    private readonly file: string,
    private readonly survey: Survey,
    settled: DateOrder | null,
  ) {
    this.numbers = survey.numbers;
    const { at, problems } = survey.headings;
    this.columns = [...at].flatMap(([name, i]) => {
      const column = table.columns[name];
      const evidence = survey.dates.get(name);
      const order = settled ?? evidence?.order() ?? null;
      return column === undefined
        ? []
        : [[name, column, i, { numbers: survey.numbers, order, evidence }] as const];
    });
    this.isUsable = !problems.some(({ code }) => code === "missing-column");
    this.lastColumn = survey.headings.row.findLastIndex((heading) => heading !== "");
  }

  /** Takes one row in; false: read no further. */
  see(row: RawRow): boolean {
    if (row.line <= this.survey.headings.line || (row.fault === undefined && row.cells.every(isBlank)))
      return true;
    if (repeatsHeadings(this.survey.headings, row.cells)) {
      this.problems.push(
        problem("heading-repeated", "note", this.where(row), { remedy: "Nothing needs to be done." }),
      );
      return true;
    }
    if (this.rowCount >= this.table.mostRows) return this.stopAt(row, "too-many-rows", this.table.mostRows);
    if (this.aside.length >= MOST_BAD_ROWS) return this.stopAt(row, "too-many-problems", this.aside.length);
    this.rowCount++;
    if (!this.isUsable) return true;
    const problems = row.fault === undefined ? this.cellsOf(row) : [faultOf(row, row.fault, this.where(row))];
    if (problems.length > 0) this.setAside(row, problems);
    return row.fault !== "unclosed-quote";
  }

  private where = (row: RawRow, column?: string) => ({
    file: this.file,
    line: row.line,
    ...(column === undefined ? {} : { column }),
  });

  private stopAt(row: RawRow, code: "too-many-rows" | "too-many-problems", most: number): false {
    const remedy =
      code === "too-many-rows"
        ? "Split the campaign, or take out rows that do not belong to it."
        : "Look whether this file is the table it is named for.";
    this.problems.push(problem(code, "stop", this.where(row), { expected: count(most), remedy }));
    return false;
  }

  /** Reads the cells into a row; gives the problems when that cannot be done. */
  private cellsOf(row: RawRow): Problem[] {
    const extra = row.cells.findIndex((cell, i) => i > this.lastColumn && !isBlank(cell));
    if (extra >= 0) return [this.extraCells(row, extra)];
    const cells: Record<string, unknown> = {};
    const bad: Problem[] = [];
    for (const [name, column, i, hints] of this.columns) {
      const cell: Cell | undefined = row.cells[i];
      if (cell === undefined || isBlank(cell)) {
        if (column.required) bad.push(this.emptyCell(row, name, column));
        continue;
      }
      const read = readCell(column, cell, hints, this.where(row, name));
      if ("value" in read) cells[name] = read.value;
      else if (column.isPrivate) this.assumeCleanWork(row, name, cells);
      else bad.push(read.problem);
    }
    const stops = bad.filter(({ code, column }) => !(code === "required-empty" && this.isPrivate(column)));
    if (stops.length > 0) return stops;
    for (const { column } of bad) this.assumeCleanWork(row, column ?? "", cells);
    this.rows.push({ file: this.file, line: row.line, cells: cells as RowOf<C> });
    return [];
  }

  private isPrivate = (column: string | undefined): boolean =>
    this.table.columns[column ?? ""]?.isPrivate === true;

  /** Whether a person may be given mould work: anything but a clear yes is no, and what was written is not repeated. */
  private assumeCleanWork(row: RawRow, name: string, cells: Record<string, unknown>): void {
    cells[name] = false;
    this.problems.push(
      problem("clean-work-assumed", "note", this.where(row, name), {
        remedy: "Write yes or no and nothing else.",
      }),
    );
  }

  private emptyCell = (row: RawRow, name: string, column: Column): Problem =>
    problem("required-empty", "stop", this.where(row, name), {
      got: "",
      expected: column.help,
      remedy: `Write it: ${column.help}`,
    });

  private extraCells(row: RawRow, at: number): Problem {
    return problem("extra-cells", "stop", this.where(row), {
      got: this.table.aboutPeople ? "not shown" : shown(row.cells[at]),
      expected: `${this.lastColumn + 1} cells`,
      remedy: "Most likely a text with a comma or semicolon in it: put it in quotation marks.",
    });
  }

  private setAside(row: RawRow, problems: readonly Problem[]): void {
    this.aside.push({ file: this.file, line: row.line, key: this.keyOf(row) });
    this.problems.push(
      ...(this.table.aboutPeople
        ? problems.map((each) => withoutHealth(each, row.fault !== undefined))
        : problems),
    );
  }

  private keyOf(row: RawRow): string {
    const positions = this.table.key.map((name) => this.survey.headings.at.get(name));
    return positions.map((i) => (i === undefined ? "" : shown(row.cells[i]).trim())).join("\u0000");
  }
}

/** The problem without what was written, when that may tell of health; a broken row is never quoted. */
function withoutHealth(found: Problem, always: boolean): Problem {
  if (found.got === undefined || !(always || mayTellOfHealth(found.got))) return found;
  const { got: _, ...rest } = found;
  return { ...rest, got: "not shown" };
}

function faultOf(row: RawRow, fault: RowFault, where: { file: string; line: number }): Problem {
  switch (fault) {
    case "merged-across":
      return problem(fault, "stop", where, {
        got: row.cells
          .filter((cell) => !isBlank(cell))
          .map(shown)
          .join(", ")
          .slice(0, 60),
        remedy: "Unmerge the cells; if the row is only a title among the data, take it out.",
      });
    case "cell-too-long": {
      const longest = row.cells.reduce<number>((most, cell) => Math.max(most, shown(cell).length), 0);
      return problem(fault, "stop", where, {
        got: count(longest),
        remedy: "Close the quotation mark, or shorten the text.",
      });
    }
    default:
      return problem(fault, "stop", where, {
        got: shown(row.cells.at(-1)).slice(0, 60),
        remedy: 'Close the mark, or write a mark inside a text twice ("").',
      });
  }
}
