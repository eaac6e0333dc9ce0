import { type Column, type Table } from "../src/edge/intake/columns.ts";
import { sayRange } from "../src/edge/intake/read-cell.ts";

/** Where the written part of `docs/campaign-folder.md` begins and ends. */
export const BEGIN = "<!-- tables: written by scripts/write-folder-guide.ts -->";
export const END = "<!-- end of tables -->";

/** Lists longer than this are named by where they stand. */
const MOST_WORDS = 8;
/** Where the words of long lists stand. */
const LISTED_IN: Readonly<Record<string, string>> = {
  format: "`formats`",
  support: "`supports`",
  media: "`media`",
  cover: "`covers`",
  process: "`photoProcesses`",
  has: "`has`",
};

/** The page with its tables written anew from the descriptions the reader uses. */
export function withTables(page: string, tables: readonly Table[]): string {
  const [before = "", rest = ""] = page.split(BEGIN);
  const after = rest.split(END)[1] ?? "";
  return `${before}${BEGIN}\n\n${tables.map(section).join("\n")}\n${END}${after}`;
}

function section({ name, help, columns, key }: Table): string {
  const once =
    key.length > 0 ? ` Each ${key.map((column) => `\`${column}\``).join(" with ")} stands once.` : "";
  return [
    `### ${name}.csv\n`,
    `${help}${once}\n`,
    "| column | needed | what | kind | if empty | example |",
    "|---|---|---|---|---|---|",
    ...Object.entries(columns).map(([column, about]) => row(column, about)),
    "",
  ].join("\n");
}

function row(name: string, column: Column): string {
  const cells = [
    `\`${name}\``,
    column.required ? "yes" : "",
    column.help,
    kindOf(name, column),
    column.fallback ?? "",
    column.examples.find((each) => each !== "") ?? "",
  ];
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
}

function kindOf(name: string, column: Column): string {
  const ranged = column.kind === "number" || column.kind === "whole number";
  if (ranged && (column.min !== undefined || column.max !== undefined))
    return `${column.kind}, ${sayRange(column)}`;
  if (column.allowed === undefined) return column.kind;
  const list = column.kind === "words" ? 'list with "|" between' : "one word";
  if (column.allowed.length <= MOST_WORDS) return `${list}: ${column.allowed.join(", ")}`;
  return `${list} of ${LISTED_IN[name] ?? "consumables"} in data/${LISTED_IN[name] ? "vocabulary" : "norms"}.json`;
}
