import type { Problem } from "../../core/outcome/problem.ts";
import { count, problem, type Where } from "./problem.ts";
import type { AsideRow, TableRead, TableRow } from "./read-table.ts";
import { comparable, nearestWord } from "./words.ts";

export type Meaning =
  | { readonly kind: "known"; readonly name: string }
  /** It is in its table, but that row was set aside. */
  | { readonly kind: "aside"; readonly waitsFor: string }
  | { readonly kind: "unknown" };

/** Names searched for the nearest before we stop offering it; a table of strangers would take too long. */
const MOST_SEARCHES = 50;

/** The names of one table, to which rows of other tables point. */
export class Register {
  private readonly names = new Map<string, string>();
  private readonly aside = new Map<string, AsideRow>();
  private searches = 0;

  /** `isThere` false: the table could not be read at all, so whatever points to it waits. */
  constructor(
    private readonly table: string,
    names: Iterable<string>,
    aside: readonly AsideRow[],
    private readonly isThere: boolean,
  ) {
    for (const row of aside) this.aside.set(comparable(row.key), row);
    for (const name of names) {
      this.names.set(name, name);
      if (!this.names.has(comparable(name))) this.names.set(comparable(name), name);
    }
  }

  meant(written: string): Meaning {
    const name = this.names.get(written) ?? this.names.get(comparable(written));
    if (name !== undefined) return { kind: "known", name };
    const row = this.aside.get(comparable(written));
    if (row !== undefined) return { kind: "aside", waitsFor: `${row.file}, line ${row.line}` };
    return this.isThere ? { kind: "unknown" } : { kind: "aside", waitsFor: `the table ${this.table}` };
  }

  /** What to do about a name that is not there. */
  remedy(written: string): string {
    const near = this.searches++ < MOST_SEARCHES ? nearestWord(written, new Set(this.names.values())) : null;
    return near === null ? `Add it to ${this.table}, or mend the name.` : `Did you mean "${near}"?`;
  }
}

/** Rows that wait because the row they point to was set aside: one problem for each such row, not for each waiting one. */
export class Waiting {
  private readonly groups = new Map<string, { where: Where; rows: number }>();

  add(waitsFor: string, where: Where): void {
    const group = this.groups.get(waitsFor);
    if (group) group.rows++;
    else this.groups.set(waitsFor, { where, rows: 1 });
  }

  problems(): Problem[] {
    return [...this.groups].map(([waitsFor, { where, rows }]) =>
      problem("waits-for", "ask", where, {
        got: rows === 1 ? "1 row" : `${count(rows)} rows`,
        expected: waitsFor,
        remedy: "Mend that first; nothing else is needed here.",
      }),
    );
  }
}

/** Takes out rows whose name was there before. */
export function withoutDuplicates<R extends TableRow>(
  read: { readonly rows: readonly R[] },
  nameOf: (row: R) => string,
  column: string,
): { readonly rows: R[]; readonly problems: Problem[] } {
  const first = new Map<string, R>();
  const problems: Problem[] = [];
  for (const row of read.rows) {
    const name = nameOf(row);
    const before = first.get(comparable(name) || name);
    if (before === undefined) first.set(comparable(name) || name, row);
    else
      problems.push(
        problem(
          "duplicate",
          "stop",
          { file: row.file, line: row.line, column },
          {
            got: name.replace("\u0000", " / "),
            expected: `line ${before.line}`,
            remedy: "Give one of them another name, or take one out.",
          },
        ),
      );
  }
  return { rows: [...first.values()], problems };
}

export const isThere = (read: TableRead): boolean => read.rowCount > 0;
