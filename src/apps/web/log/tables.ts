import { loadRuleBook } from "../../../core/care/load-rules.ts";
import { loadNorms, type Norms } from "../../../core/care/norms.ts";
import type { RuleBook, RuleTables } from "../../../core/care/rule-book.ts";
import { factOf, putFact, type TabletDatabase } from "./database.ts";
import { ask } from "./server-line.ts";

/** The rules, words and norms a tablet decides by, without the server. */
export interface Tables {
  readonly book: RuleBook;
  readonly norms: Norms;
}

/** As the server sends them: its published tables, and the campaign's own rules where it has some. */
export interface TablesSent {
  readonly rules: RuleTables;
  readonly local: { readonly file: string; readonly rules: unknown } | null;
  readonly norms: unknown;
}

interface SavedTables {
  readonly tag: string;
  readonly sent: TablesSent;
}

/** Tables that are newer than those saved here; null: they are the same, or the server is not reached. */
export async function newerTables(database: TabletDatabase): Promise<Tables | null> {
  const saved = await factOf<SavedTables>(database, "tables");
  const reached = await ask<TablesSent>("/api/tables", {
    headers: saved === null ? {} : { "if-none-match": saved.tag },
  });
  if (reached.kind !== "answer") return null;
  await putFact(database, "tables", {
    tag: reached.headers.get("etag") ?? "",
    sent: reached.value,
  } satisfies SavedTables);
  return loaded(reached.value);
}

/** The tables as saved here; null: none. */
export async function savedTables(database: TabletDatabase): Promise<Tables | null> {
  const saved = await factOf<SavedTables>(database, "tables");
  return saved === null ? null : loaded(saved.sent);
}

/** The server has held its rules against their schema before it sent them. */
function loaded({ rules, local, norms }: TablesSent): Tables {
  const book = local === null ? loadRuleBook(rules) : loadRuleBook(rules, local);
  if (!book.ok) throw new Error(`The rules cannot be used: ${book.problems[0]?.rule ?? ""}`);
  return { book: book.value, norms: loadNorms(norms) };
}
