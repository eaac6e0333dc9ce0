import { open } from "node:fs/promises";
import Papa from "papaparse";
import type { Problem } from "../../core/outcome/problem.ts";
import { decodeText, textPieces } from "./decode.ts";
import { encodingOfFile } from "./encoding.ts";
import { problem } from "./problem.ts";
import type { Delimiter, RawRow, RowFault, RowSource } from "./raw-table.ts";

const DELIMITERS = [",", ";", "\t"] as const;
/** More text than this without the end of a row means a quotation mark that never closes. */
const LONGEST_ROW = 4_000_000;
const LONGEST_CELL = 20_000;
const HEAD_BYTES = 65_536;

type Known = (heading: string) => boolean;

/** Opens a text table of any size; null with the reason when it is no text. `known` says which headings belong to the table. */
export async function openCsv(path: string, file: string, known: Known): Promise<RowSource | Problem> {
  try {
    const head = await headOf(path);
    const other = otherKind(head);
    if (other !== null) return notText(file, other);
    const encoding = await encodingOfFile(path);
    const notes = encoding === "windows-1252" ? [oldLetters(file)] : [];
    const { text } = decodeText(head);
    if (text.includes("\0")) return notText(file, "it has bytes that are not letters");
    const delimiter = delimiterOf(text, known);
    return { file, notes, rows: () => rowsOf(textPieces(path, encoding), delimiter) };
  } catch (error) {
    const expected = error instanceof Error ? error.message.replace(/, .*$/s, "") : "no reason given";
    return problem(
      "file-unreadable",
      "stop",
      { file },
      { expected, remedy: "Close it elsewhere, or copy it again, then check once more." },
    );
  }
}

async function headOf(path: string): Promise<Uint8Array> {
  const handle = await open(path);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function otherKind(head: Uint8Array): string | null {
  const start = Buffer.from(head.subarray(0, 4)).toString("latin1");
  if (start === "PK\u0003\u0004") return "it is a workbook or a zip file";
  if (start === "\u00d0\u00cf\u0011\u00e0") return "it is an old workbook (.xls)";
  return start === "%PDF" ? "it is a PDF" : null;
}

const notText = (file: string, expected: string): Problem =>
  problem(
    "wrong-kind-of-file",
    "stop",
    { file },
    { expected, remedy: "Save the table as CSV (UTF-8) or as XLSX." },
  );

const oldLetters = (file: string): Problem =>
  problem(
    "not-utf8",
    "note",
    { file },
    { remedy: 'Look at names with accents; next time save as "CSV UTF-8".' },
  );

/** The delimiter that makes most known headings in one row of the first lines; then the one that cuts most cells. */
export function delimiterOf(head: string, known: Known): Delimiter {
  let best: { delimiter: Delimiter; headings: number; cells: number } | null = null;
  for (const delimiter of DELIMITERS) {
    const rows = Papa.parse<string[]>(head, { delimiter, newline: "\n", preview: 30 }).data;
    const headings = Math.max(0, ...rows.map((row) => row.filter(known).length));
    const cells = rows.reduce((sum, row) => sum + row.length, 0);
    if (best === null || headings > best.headings || (headings === best.headings && cells > best.cells))
      best = { delimiter, headings, cells };
  }
  return best?.delimiter ?? ",";
}

/** Rows of text that comes in pieces, each with the line it begins on; quoted line ends are counted. */
export async function* rowsOf(
  pieces: AsyncIterable<string>,
  delimiter: string,
): AsyncGenerator<readonly RawRow[]> {
  const reader = new RowReader(delimiter);
  for await (const piece of pieces) {
    const rows = reader.next(piece);
    if (rows.length > 0) yield rows;
    if (reader.isLost) break;
  }
  yield reader.end();
}

class RowReader {
  private rest = "";
  private line = 1;
  private readonly config: Papa.ParseConfig;

  constructor(delimiter: string) {
    this.config = { delimiter, newline: "\n" };
  }

  get isLost(): boolean {
    return this.rest.length > LONGEST_ROW;
  }

  next(piece: string): RawRow[] {
    this.rest += piece;
    return this.parse(true);
  }

  end(): RawRow[] {
    if (this.isLost) return [{ line: this.line, cells: [], fault: "unclosed-quote" }];
    return this.rest === "" ? [] : this.parse(false);
  }

  private parse(more: boolean): RawRow[] {
    const parsed = new Papa.Parser(this.config).parse(this.rest, 0, more) as Papa.ParseResult<string[]>;
    const faults = new Map<number, RowFault>();
    for (const error of parsed.errors)
      faults.set(error.row ?? 0, error.code === "MissingQuotes" ? "unclosed-quote" : "broken-quotes");
    const rows = parsed.data.map((cells, i) => this.row(cells, faults.get(i)));
    this.rest = this.rest.slice(parsed.meta.cursor);
    return rows;
  }

  private row(cells: string[], fault?: RowFault): RawRow {
    const line = this.line;
    let tooLong = false;
    for (const cell of cells) {
      if (cell.length > LONGEST_CELL) tooLong = true;
      for (let at = cell.indexOf("\n"); at >= 0; at = cell.indexOf("\n", at + 1)) this.line++;
    }
    this.line++;
    const found = fault ?? (tooLong ? "cell-too-long" : undefined);
    return found === undefined ? { line, cells } : { line, cells, fault: found };
  }
}
