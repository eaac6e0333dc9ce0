import type { LeftOutReason, RowsLeftOut } from "./logger-reading.ts";

const LINES_KEPT = 5;

/** Counts rows that gave no reading, by reason, with the lines of the first few. */
export class LeftOut {
  private readonly found = new Map<LeftOutReason, { count: number; lines: number[]; example?: string }>();

  add(reason: LeftOutReason, line: number, example?: () => string): void {
    let entry = this.found.get(reason);
    if (entry === undefined) {
      entry = { count: 0, lines: [], ...(example === undefined ? {} : { example: example() }) };
      this.found.set(reason, entry);
    }
    entry.count++;
    if (entry.lines.length < LINES_KEPT) entry.lines.push(line);
  }

  all(): RowsLeftOut[] {
    return [...this.found].map(([reason, entry]) => ({ reason, ...entry }));
  }

  get total(): number {
    return this.all().reduce((sum, { count }) => sum + count, 0);
  }
}
