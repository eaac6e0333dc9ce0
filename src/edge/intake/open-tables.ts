import { join } from "node:path";
import type { Problem } from "../../core/outcome/problem.ts";
import { openCsv } from "./csv.ts";
import type { FolderFiles } from "./folder-files.ts";
import { headingMeant } from "./headings.ts";
import { problem, type Severity } from "./problem.ts";
import type { RowSource } from "./raw-table.ts";
import { allTables } from "./tables/all.ts";
import { comparable } from "./words.ts";
import { openWorkbook } from "./xlsx.ts";

export interface OpenTables {
  readonly sources: ReadonlyMap<string, RowSource>;
  readonly problems: readonly Problem[];
}

/** What a missing table means: `stop` where nothing can be planned without it; sessions and the Ward log may be missing without a word. */
const WITHOUT: Readonly<Record<string, readonly [Severity, string]>> = {
  items: ["stop", "Add items.csv, or a workbook with a sheet called items."],
  people: ["stop", "Add people.csv: who works, and whether mould work may be given."],
  parts: ["note", "It was taken as empty; add it when an item has parts with rules of their own."],
  findings: ["note", "It was taken as empty: nothing has been tested."],
  calendar: ["note", "It was taken as empty: every working day is an ordinary one."],
  stores: ["note", "It was taken as empty: no orders can be planned."],
  deliveries: ["note", "It was taken as empty: nothing is on its way."],
};

/** Finds every table of the folder, as a text file or as a sheet of a workbook. */
export async function openTables(folder: string, files: FolderFiles): Promise<OpenTables> {
  const found = new Map<string, RowSource[]>();
  const problems: Problem[] = [];
  const claimed = new Set<string>();
  for (const table of allTables)
    for (const file of files.tables.get(table.name) ?? []) {
      claimed.add(table.name);
      const source = await openCsv(
        join(folder, file),
        file,
        (heading) => headingMeant(heading, table.columns) !== null,
      );
      if ("code" in source) problems.push(source);
      else add(found, table.name, source);
    }
  for (const file of files.workbooks) problems.push(...(await sheetsOf(folder, file, found)));
  for (const [name, [, ...others]] of found)
    for (const other of others) problems.push(twice(name, other.file));
  for (const [name, [severity, remedy]] of Object.entries(WITHOUT))
    if (!found.has(name) && !claimed.has(name))
      problems.push(problem("missing-table", severity, {}, { got: name, remedy }));
  return {
    sources: new Map([...found].flatMap(([name, [first]]) => (first ? [[name, first]] : []))),
    problems,
  };
}

function add(found: Map<string, RowSource[]>, name: string, source: RowSource): void {
  found.set(name, [...(found.get(name) ?? []), source]);
}

async function sheetsOf(folder: string, file: string, found: Map<string, RowSource[]>): Promise<Problem[]> {
  const sheets = await openWorkbook(join(folder, file), file);
  if (!(sheets instanceof Map)) return [sheets];
  const problems: Problem[] = [];
  for (const [sheet, source] of sheets) {
    const table = allTables.find(({ name }) => name === comparable(sheet));
    if (table) add(found, table.name, source);
    else
      problems.push(
        problem(
          "unread-file",
          "note",
          { file: source.file },
          {
            got: sheet,
            remedy: "Nothing needs to be done if that is meant; a table's sheet has the table's name.",
          },
        ),
      );
  }
  return problems;
}

const twice = (name: string, file: string): Problem =>
  problem("table-twice", "ask", { file }, { got: file, expected: name, remedy: "Keep one of the two." });
