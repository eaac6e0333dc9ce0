import { type PaperOptions, print } from "./print.ts";
import type { Picture } from "./typeset.ts";

/** A cell of a table: text, text to stand out, a remark in small type, a box to tick. Empty text is a place to write. */
export type Cell =
  | string
  | { readonly strong: string; readonly note?: string }
  | { readonly note: string }
  | { readonly tick: true };

export interface SheetColumn {
  readonly name: string;
  /** Millimetres, or a share of what is left (`1fr`). */
  readonly width: number | `${number}fr`;
}

/** A piece of a sheet, laid out one under the other. */
export type Block =
  /** The sentence to read first. */
  | { readonly kind: "lead"; readonly text: string }
  /** In a strong frame: what must not be overlooked. */
  | { readonly kind: "framed"; readonly head: string; readonly text: string }
  | { readonly kind: "points"; readonly title: string; readonly lines: readonly string[] }
  | { readonly kind: "facts"; readonly title: string; readonly rows: readonly (readonly [string, string])[] }
  /** Signs, large, with what they belong to. */
  | { readonly kind: "signs"; readonly codes: readonly string[] }
  | {
      readonly kind: "table";
      readonly title: string;
      readonly columns: readonly SheetColumn[];
      readonly rows: readonly (readonly Cell[])[];
      /** Rows left empty to be written in. */
      readonly blank: number;
      /** High rows, to be written in with gloves on. */
      readonly tall: boolean;
    }
  /** A span of time as a line: marks at a share of it, 0 to 1. */
  | {
      readonly kind: "span";
      readonly from: string;
      readonly to: string;
      readonly marks: readonly { readonly at: number; readonly label: string; readonly day: string }[];
      readonly says: string;
    }
  | {
      readonly kind: "pictures";
      readonly title: string;
      /** `name` of a picture that comes with the sheet. */
      readonly pictures: readonly { readonly name: string; readonly says: string }[];
    };

/** A paper of one or more pages that is read from top to bottom. */
export interface SheetView {
  /** What kind of paper it is: `Station sheet`. */
  readonly kind: string;
  readonly campaign: string;
  readonly title: string;
  /** Beside the title: a day, a week. */
  readonly side: string;
  /** In the head of every page. */
  readonly tail: string;
  /** Turned on its side. */
  readonly wide: boolean;
  /** What the QR code beside the title says; empty: none. */
  readonly code: string;
  readonly blocks: readonly Block[];
}

/** Sheets, each on pages of its own, in one file. */
export const sheets = (
  views: readonly SheetView[],
  options: PaperOptions,
  pictures: readonly Picture[] = [],
): Promise<Uint8Array> =>
  print(
    "sheet",
    {
      views,
      signs: views.flatMap(({ blocks }) =>
        blocks.flatMap((each) => (each.kind === "signs" ? each.codes : [])),
      ),
      codes: views.map(({ code }) => code || " "),
      pictures,
    },
    options,
  );
