import type { CsvCell } from "./csv-text.ts";

/** A table handed over, with its Frictionless Table Schema. */
export interface HandedTable {
  readonly name: string;
  readonly schema: Readonly<Record<string, unknown>>;
  readonly rows: readonly Readonly<Record<string, CsvCell>>[];
}
