import Papa from "papaparse";

export type CsvCell = string | number | boolean | undefined;

/**
 * A table a spreadsheet opens and RFC 4180 describes: UTF-8 with a byte-order mark, comma, CRLF.
 * Text that a spreadsheet would read as a formula (it begins with = + - @, a tab or a return) gets an apostrophe before it.
 */
export function csvText(
  fields: readonly string[],
  rows: readonly Readonly<Record<string, CsvCell>>[],
): string {
  const data = rows.map((row) => fields.map((field) => cellText(row[field])));
  return `\uFEFF${Papa.unparse({ fields: [...fields], data }, { escapeFormulae: true, newline: "\r\n" })}\r\n`;
}

const cellText = (cell: CsvCell): string | number =>
  cell === undefined ? "" : typeof cell === "boolean" ? (cell ? "yes" : "no") : cell;
