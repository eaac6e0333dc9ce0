import { type PaperOptions, print } from "./print.ts";

/** A label of a quarter of a tag's sheet: a large number, signs, few words, lines to write on. */
export interface LabelView {
  readonly kind: string;
  readonly campaign: string;
  /** Large, and in the QR code. */
  readonly number: string;
  /** The line under the number, in strong type; empty: none. */
  readonly head: string;
  /** ISO 7010 and GHS codes. */
  readonly signs: readonly string[];
  readonly lines: readonly (readonly [name: string, value: string])[];
  /** Names of what is written in by hand. */
  readonly toWrite: readonly string[];
}

/** Eight labels to a page, with lines to cut along. */
export const labels = (views: readonly LabelView[], options: PaperOptions): Promise<Uint8Array> =>
  print(
    "label",
    { views, signs: views.flatMap(({ signs }) => signs), codes: views.map(({ number }) => number) },
    options,
  );
