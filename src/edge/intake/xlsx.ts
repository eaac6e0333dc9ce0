import { readFile, stat } from "node:fs/promises";
import readXlsxFile from "read-excel-file/node";
import type { Problem } from "../../core/outcome/problem.ts";
import { problem } from "./problem.ts";
import { type Cell, isBlank, type RawRow, type RowSource } from "./raw-table.ts";
import { type Merge, MOST_UNPACKED, prepareWorkbook, type SheetMarks, TooLarge } from "./workbook-parts.ts";

/** Packed size above which a workbook is refused. CSV has no such limit: it is read in pieces. */
const MOST_BYTES = 50_000_000;

/** The sheets of a workbook by name, each as a table; or why it cannot be read. */
export async function openWorkbook(path: string, file: string): Promise<Map<string, RowSource> | Problem> {
  const { size } = await stat(path);
  if (size > MOST_BYTES) return tooLarge(file, size, MOST_BYTES);
  try {
    const prepared = prepareWorkbook(await readFile(path));
    const sheets = await readXlsxFile(Buffer.from(prepared.bytes));
    return new Map(
      sheets.map(({ sheet, data }) => {
        const marks = prepared.marks.get(sheet) ?? { broken: new Map(), merges: [] };
        return [sheet, sheetSource(`${file} (${sheet})`, data as unknown as (Cell | null)[][], marks)];
      }),
    );
  } catch (error) {
    if (error instanceof TooLarge) return tooLarge(file, null, MOST_UNPACKED);
    const expected = error instanceof Error ? error.message : "no reason given";
    return problem(
      "workbook-unreadable",
      "stop",
      { file },
      {
        expected,
        remedy: "Open it in a spreadsheet program, save it again as XLSX, or save each sheet as CSV (UTF-8).",
      },
    );
  }
}

const megabytes = (bytes: number): string => `${Math.round(bytes / 1_000_000)} MB`;

const tooLarge = (file: string, size: number | null, most: number): Problem =>
  problem(
    "file-too-large",
    "stop",
    { file },
    {
      got: size === null ? "more than that unpacked" : megabytes(size),
      expected: megabytes(most),
      remedy: "Save each sheet as CSV (UTF-8): a CSV may be larger.",
    },
  );

function sheetSource(file: string, data: (Cell | null)[][], marks: SheetMarks): RowSource {
  const grid = data.map((row) => row.map((cell) => cell ?? ""));
  for (const [at, broken] of marks.broken) setCell(grid, at, broken);
  const filled = marks.merges.filter((merge) => merge.left === merge.right && fillDown(grid, merge));
  const across = new Map(
    marks.merges.filter((merge) => merge.right > merge.left).map((merge) => [merge.top, merge.ref]),
  );
  const rows = grid.map(
    (cells, row): RawRow =>
      across.has(row) ? { line: row + 1, cells, fault: "merged-across" } : { line: row + 1, cells },
  );
  return {
    file,
    notes: filled.length === 0 ? [] : [filledNote(file, filled)],
    rows: async function* () {
      yield rows;
    },
  };
}

function setCell(grid: Cell[][], at: string, cell: Cell): void {
  const [row = 0, column = 0] = at.split(",").map(Number);
  while (grid.length <= row) grid.push([]);
  const cells = grid[row] ?? [];
  while (cells.length < column) cells.push("");
  cells[column] = cell;
}

/** A value merged over several rows of one column is the value of each of them. */
function fillDown(grid: Cell[][], { top, bottom, left }: Merge): boolean {
  const value = grid[top]?.[left];
  if (value === undefined || isBlank(value)) return false;
  const last = Math.min(bottom, grid.length - 1);
  for (let row = top + 1; row <= last; row++) setCell(grid, `${row},${left}`, value);
  return last > top;
}

const filledNote = (file: string, merges: readonly Merge[]): Problem =>
  problem(
    "merged-filled",
    "note",
    { file },
    {
      got:
        merges
          .slice(0, 5)
          .map(({ ref }) => ref)
          .join(", ") + (merges.length > 5 ? ` and ${merges.length - 5} more` : ""),
      remedy: "Look whether that is meant; unmerge the cells and write the value in every row to be sure.",
    },
  );
