import { readdir, stat } from "node:fs/promises";
import { extname, join } from "node:path";
import type { Problem } from "../../core/outcome/problem.ts";
import { CAMPAIGN_FILE } from "./campaign-file.ts";
import { problem } from "./problem.ts";
import { comparable, nearestWord } from "./words.ts";

const TEXT_TABLES = new Set([".csv", ".tsv", ".txt"]);
const OTHER_TABLES = new Set([".xls", ".ods", ".numbers", ".xlsb"]);

/** The files of a campaign folder that are read. */
export interface FolderFiles {
  readonly campaign: string | null;
  /** By table name, every file that claims it. */
  readonly tables: ReadonlyMap<string, readonly string[]>;
  readonly workbooks: readonly string[];
  readonly climate: readonly string[];
  readonly problems: readonly Problem[];
}

/** Lists the folder; a problem when there is none or it is empty. */
export async function folderFiles(folder: string, tables: readonly string[]): Promise<FolderFiles | Problem> {
  const found = await stat(folder).catch(() => null);
  if (found === null)
    return problem(
      "no-folder",
      "stop",
      {},
      { got: folder, remedy: "Look at the spelling, or make one with: leafward new <folder>" },
    );
  if (!found.isDirectory())
    return problem(
      "not-a-folder",
      "stop",
      {},
      { got: folder, remedy: "Name the folder that holds campaign.json and the tables." },
    );
  const entries = (await readdir(folder, { withFileTypes: true }))
    .filter(({ name }) => !/^[.~]/.test(name))
    .sort(byName);
  if (entries.length === 0)
    return problem(
      "empty-folder",
      "stop",
      {},
      { got: folder, remedy: "Fill it with: leafward new <folder>" },
    );
  const names = entries.filter((entry) => !entry.isDirectory()).map(({ name }) => name);
  const climate = entries.find((entry) => entry.isDirectory() && comparable(entry.name) === "climate");
  return { ...sorted(names, tables), climate: climate ? await climateFiles(folder, climate.name) : [] };
}

const byName = (a: { name: string }, b: { name: string }): number =>
  a.name < b.name ? -1 : a.name > b.name ? 1 : 0;
const ending = (name: string): string => extname(name).toLowerCase();
const stem = (name: string): string => comparable(name.slice(0, name.length - extname(name).length));

function sorted(names: readonly string[], tables: readonly string[]): Omit<FolderFiles, "climate"> {
  const byTable = new Map<string, string[]>();
  const problems: Problem[] = [];
  for (const name of names.filter(
    (each) => TEXT_TABLES.has(ending(each)) || OTHER_TABLES.has(ending(each)),
  )) {
    const table = tables.find((each) => each === stem(name));
    if (table !== undefined && TEXT_TABLES.has(ending(name)))
      byTable.set(table, [...(byTable.get(table) ?? []), name]);
    else if (ending(name) !== ".txt") problems.push(unread(name, tables));
  }
  return {
    campaign: names.find((name) => name.toLowerCase() === CAMPAIGN_FILE) ?? null,
    tables: byTable,
    workbooks: names.filter((name) => ending(name) === ".xlsx"),
    problems,
  };
}

function unread(name: string, tables: readonly string[]): Problem {
  if (OTHER_TABLES.has(ending(name)))
    return problem(
      "unread-file",
      "note",
      { file: name },
      { got: name, remedy: "Save it as XLSX, or each table as CSV (UTF-8)." },
    );
  const near = tables.find((table) => stem(name).startsWith(table)) ?? nearestWord(stem(name), tables);
  const remedy = near
    ? `If it is the table ${near}, call it ${near}.csv.`
    : "Nothing needs to be done if that is meant.";
  return problem("unread-file", "note", { file: name }, { got: name, remedy });
}

async function climateFiles(folder: string, name: string): Promise<string[]> {
  const inside = await readdir(join(folder, name));
  return inside
    .filter((each) => TEXT_TABLES.has(ending(each)) && !/^[.~]/.test(each))
    .sort()
    .map((each) => `${name}/${each}`);
}
