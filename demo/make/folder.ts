import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Cell, HEADINGS, type Invented, type Tables } from "./rows.ts";

const TABLES = [
  "items",
  "parts",
  "findings",
  "people",
  "calendar",
  "stores",
  "deliveries",
  "sessions",
  "ward",
] as const;

/** Writes one campaign as a folder inside `into`, replacing what an earlier run left there. */
export function writeFolder(into: string, made: Invented): void {
  const folder = join(into, made.folder);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(folder, "climate"), { recursive: true });
  writeFileSync(join(folder, "campaign.json"), `${JSON.stringify(made.campaign, null, 2)}\n`);
  for (const name of TABLES)
    if (name !== "ward" || made.tables.ward.length > 0)
      writeFileSync(join(folder, `${name}.csv`), tableText(name, made.tables));
  for (const [reader, rows] of Object.entries(made.climate))
    writeFileSync(join(folder, "climate", `${reader}.csv`), csv(HEADINGS.climate, rows));
}

const tableText = (name: keyof Tables, tables: Tables): string => csv(HEADINGS[name], tables[name]);

/** RFC 4180 text with line feeds; a column is read from the row by its heading. */
function csv(headings: readonly string[], rows: readonly object[]): string {
  const lines = rows.map((row) => {
    const cells = new Map<string, Cell>(Object.entries(row));
    return headings.map((heading) => quoted(cells.get(heading))).join(",");
  });
  return `${[headings.join(","), ...lines].join("\n")}\n`;
}

function quoted(cell: Cell): string {
  const text = cell === undefined ? "" : typeof cell === "object" ? cell.join("|") : String(cell);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
