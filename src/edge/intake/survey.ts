import type { Problem } from "../../core/outcome/problem.ts";
import type { Table } from "./columns.ts";
import { DateEvidence } from "./dates.ts";
import { findHeadings, type Headings, ROWS_BEFORE_HEADINGS } from "./headings.ts";
import { type NumberStyle, styleShownBy } from "./numbers.ts";
import type { RawRow, RowSource } from "./raw-table.ts";

/** What a first look through a whole table shows. */
export interface Survey {
  readonly headings: Headings;
  readonly numbers: NumberStyle;
  /** By column. */
  readonly dates: ReadonlyMap<string, DateEvidence>;
}

/** Looks through a table once: where its headings are, and how it writes dates and numbers. */
export async function surveyOf(table: Table, source: RowSource): Promise<Survey | Problem> {
  const top: RawRow[] = [];
  let look: Look | null = null;
  let seen = 0;
  for await (const batch of source.rows()) {
    seen += batch.length;
    if (look !== null) look.seeAll(batch);
    else {
      for (const row of batch) top.push(row); // a spread of a whole sheet would overflow the stack
      if (top.length < ROWS_BEFORE_HEADINGS) continue;
      const found = startLook(table, top, source.file);
      if ("code" in found) return found;
      look = found;
    }
    if (seen > table.mostRows + ROWS_BEFORE_HEADINGS) break;
  }
  const end = look ?? startLook(table, top, source.file);
  return "code" in end ? end : end.survey();
}

function startLook(table: Table, top: readonly RawRow[], file: string): Look | Problem {
  const headings = findHeadings(table, top, file);
  if ("code" in headings) return headings;
  const look = new Look(table, headings);
  look.seeAll(top);
  return look;
}

class Look {
  private readonly dates: readonly (readonly [string, number, DateEvidence])[];
  private readonly numbers: readonly number[];
  private point = 0;
  private comma = 0;

  constructor(
    { columns }: Table,
    private readonly headings: Headings,
  ) {
    const found = [...headings.at];
    this.dates = found.flatMap(([name, i]) =>
      columns[name]?.kind === "day" ? [[name, i, new DateEvidence()] as const] : [],
    );
    this.numbers = found.flatMap(([name, i]) =>
      /^(?:number|answer)$/.test(columns[name]?.kind ?? "") ? [i] : [],
    );
  }

  seeAll(rows: readonly RawRow[]): void {
    for (const { line, cells } of rows) {
      if (line <= this.headings.line) continue;
      for (const [, i, evidence] of this.dates) {
        const cell = cells[i];
        if (typeof cell === "string" && cell !== "") evidence.see(cell);
      }
      for (const i of this.numbers) {
        const cell = cells[i];
        const style = typeof cell === "string" && /\d[.,]\d/.test(cell) ? styleShownBy(cell) : null;
        if (style !== null) this[style]++;
      }
    }
  }

  survey(): Survey {
    const { point, comma, headings } = this;
    const numbers = point > 0 && comma > 0 ? "mixed" : comma > 0 ? "comma" : point > 0 ? "point" : "unknown";
    return { headings, numbers, dates: new Map(this.dates.map(([name, , evidence]) => [name, evidence])) };
  }
}
