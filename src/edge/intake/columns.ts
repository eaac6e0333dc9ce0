import type { Day } from "../../core/units/day.ts";

/** One column of a table, as data: the reader, the published schema, the empty form and the help are all made from it. */
export interface Column<T = unknown, R extends boolean = boolean> {
  readonly kind: ColumnKind;
  readonly required: R;
  readonly help: string;
  /** Two cells for the example rows of a new campaign. */
  readonly examples: readonly [string, string];
  readonly unit?: string;
  /** Words allowed, for `word` and `words`. */
  readonly allowed?: readonly string[];
  /** Other ways to write them, as compared; a way may stand for several words. */
  readonly aliases?: Readonly<Record<string, string>>;
  readonly min?: number;
  readonly max?: number;
  /** What an empty cell means, for the help. */
  readonly fallback?: string;
  /** Never quoted in a problem: it may say why someone is not to do mould work. */
  readonly isPrivate?: boolean;
  /** What the cell becomes; for the compiler only, never present. */
  readonly becomes?: T;
}

/** `words` is a list with "|" between; `answer` keeps the cell as it is, to be read with its test. */
export type ColumnKind =
  | "text"
  | "word"
  | "words"
  | "number"
  | "whole number"
  | "year"
  | "day"
  | "yes or no"
  | "answer";

export type Columns = Readonly<Record<string, Column>>;

/** The row that columns make: required cells always there, others perhaps. */
export type RowOf<C extends Columns> = {
  readonly [K in keyof C]: C[K] extends Column<infer T, infer R>
    ? R extends true
      ? T
      : T | undefined
    : never;
};

interface Said<R extends boolean> {
  readonly required: R;
  readonly help: string;
  readonly examples: readonly [string, string];
  readonly fallback?: string;
  readonly isPrivate?: boolean;
}
interface Range {
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
}
interface Allowed<W extends string> {
  readonly allowed: readonly W[];
  readonly aliases?: Readonly<Record<string, string>>;
}

export const text = <R extends boolean>(said: Said<R>): Column<string, R> => ({ kind: "text", ...said });
export const word = <W extends string, R extends boolean>(said: Said<R> & Allowed<W>): Column<W, R> => ({
  kind: "word",
  ...said,
});
export const words = <W extends string, R extends boolean>(
  said: Said<R> & Allowed<W>,
): Column<readonly W[], R> => ({
  kind: "words",
  ...said,
});
export const number = <R extends boolean>(said: Said<R> & Range): Column<number, R> => ({
  kind: "number",
  ...said,
});
export const wholeNumber = <R extends boolean>(said: Said<R> & Range): Column<number, R> => ({
  kind: "whole number",
  ...said,
});
export const year = <R extends boolean>(said: Said<R>): Column<number, R> => ({
  kind: "year",
  min: 1,
  max: 2200,
  ...said,
});
export const day = <R extends boolean>(said: Said<R>): Column<Day, R> => ({ kind: "day", ...said });
export const yesOrNo = <R extends boolean>(said: Said<R>): Column<boolean, R> => ({
  kind: "yes or no",
  ...said,
});
export const answer = <R extends boolean>(said: Said<R>): Column<string | number | boolean, R> => ({
  kind: "answer",
  ...said,
});

/** One table of a campaign. */
export interface Table<C extends Columns = Columns> {
  readonly name: string;
  readonly title: string;
  readonly help: string;
  readonly columns: C;
  /** Columns whose cells together name the row; two rows with the same are a problem. Empty: none. */
  readonly key: readonly string[];
  /** Cells that name a row of another table. */
  readonly links: Readonly<Record<string, string>>;
  readonly mostRows: number;
  /** About people: what may be a reason of health is never stored or quoted. */
  readonly aboutPeople: boolean;
}
