import type { Choices } from "../../core/stores/housing/housing.ts";
import type { Book } from "../../core/stores/housing/measures.ts";
import type { SheetGrain } from "../../core/stores/housing/on-sheets.ts";
import { type IsoSeries, isoSheet, type Sheet, turned } from "../../core/stores/housing/sheets.ts";
import type { Given } from "./damp/given.ts";
import { lengthsFrom, MEASURES } from "./damp/quantity.ts";
import { openFolder } from "./open-folder.ts";

/* What was typed after `leafward wrap`. The core judges sizes; here they only become millimetres. */

export const HOUSE_OPTIONS = {
  size: "text",
  thick: "text",
  stock: "text",
  clearance: "text",
  boards: "text",
  flap: "text",
  "turn-in": "text",
  film: "flag",
  grams: "text",
  "full-flaps": "flag",
  overlap: "text",
  cloth: "text",
  lining: "text",
  square: "text",
  "cut-from": "text",
  grain: "text",
  copies: "text",
  out: "text",
  sheet: "text",
} as const;

/** A book to wrap, and what it is called on the papers. */
export interface Wanted {
  readonly name: string;
  readonly book: Book;
  /** How many places the thickness was measured at. */
  readonly places: number;
}

export async function wantedFrom(given: Given, complain: (line: string) => void): Promise<Wanted> {
  const [, folder, item] = given.files;
  const thick = listOf(given.text("thick"));
  const measured =
    folder === undefined || given.has("size")
      ? sizeTyped(given, thick)
      : await sizeSurveyed(given, folder, item, complain);
  const thickness = thick === null ? measured.thickness : Math.max(...thick);
  return {
    name: item ?? "",
    book: { height: measured.height, width: measured.width, thickness },
    places: thick?.length ?? 1,
  };
}

function sizeTyped(given: Given, thick: readonly number[] | null): Book {
  const text = given.text("size");
  const sides =
    text === undefined
      ? null
      : (lengthsFrom(text, MEASURES.length, 3) ?? lengthsFrom(text, MEASURES.length, 2));
  const [height = 0, width = 0, thickness] = sides ?? [];
  if (sides === null || (thickness === undefined && thick === null))
    given.refuse({
      option: "--size",
      got: text,
      expected: "height x width x thickness in mm, such as 240x165x32, or 240x165 with --thick 30,32,31",
      remedy: "Measure the thickness at three places.",
    });
  if (given.has("thick") && thick === null)
    given.refuse({
      option: "--thick",
      got: given.text("thick"),
      expected: "lengths in mm, such as 30,32,31",
      remedy: "Write decimals with a point.",
    });
  return { height, width, thickness: thickness ?? 0 };
}

function listOf(text: string | undefined): number[] | null {
  const each = text?.split(/\s*[,;]\s*/).map((part) => lengthsFrom(part, MEASURES.length, 1)?.[0] ?? null);
  return each?.every((value) => value !== null) ? each : null;
}

async function sizeSurveyed(
  given: Given,
  folder: string,
  id: string | undefined,
  complain: (line: string) => void,
): Promise<Book> {
  const nothing = { height: 0, width: 0, thickness: 0 };
  const opened = await openFolder(folder, complain);
  const item = opened?.campaign.items.find((each) => each.id === id);
  if (!item) {
    given.refuseInWords(
      opened
        ? `${folder}: there is no item "${id ?? ""}". Give its number as in items.csv.`
        : `${folder} cannot be used.`,
    );
    return nothing;
  }
  const { heightMm, widthMm, thicknessMm } = item;
  if (heightMm === undefined || widthMm === undefined || thicknessMm === undefined) {
    given.refuseInWords(
      `${item.id} has not been measured in all three ways. Measure it and give --size HxWxT in mm.`,
    );
    return nothing;
  }
  return { height: heightMm, width: widthMm, thickness: thicknessMm };
}

/** Only what was typed; common practice fills the rest. */
export function choicesFrom(given: Given): Partial<Choices> {
  const option = (name: string, as: keyof Choices): Partial<Choices> =>
    given.has(name)
      ? { [as]: given.quantity(name, "length", { low: 0, high: 5000, remedy: "Give it in mm." }) }
      : {};
  return {
    ...option("stock", "stock"),
    ...option("clearance", "clearance"),
    ...option("boards", "boardThickness"),
    ...option("flap", "flap"),
    ...option("turn-in", "turnIn"),
    ...(given.has("film") ? { turnIn: 0, heightEase: 0 } : {}),
    ...(given.has("full-flaps") ? { headFraction: 1 } : {}),
    ...option("overlap", "overlap"),
    ...option("cloth", "cloth"),
    ...option("lining", "lining"),
    ...option("square", "square"),
  };
}

export interface Stock {
  readonly sheet: Sheet;
  readonly grain: SheetGrain;
  readonly copies: number;
}

/** The sheet in stock, or null when none was named. */
export function stockFrom(given: Given): Stock | null {
  const text = given.text("cut-from");
  if (text === undefined) return null;
  const [, series, n] = /^(SRA|RA|A|B|C)(10|\d)$/i.exec(text.trim()) ?? [];
  const sides = lengthsFrom(text, MEASURES.length, 2);
  if (series === undefined && (sides === null || Math.min(...sides) < 50 || Math.max(...sides) > 5000))
    given.refuse({
      option: "--cut-from",
      got: text,
      expected: "an ISO name such as B1, or two sides of 50 to 5000 mm such as 813x1016 or 32x40in",
      remedy: "Measure the sheet.",
    });
  const [width = 1, height = 1] = sides ?? [];
  const sheet =
    series === undefined ? { width, height } : isoSheet(series.toUpperCase() as IsoSeries, Number(n));
  return {
    sheet: sheet.width > sheet.height ? turned(sheet) : sheet,
    grain: given.oneOf(
      "grain",
      ["long", "short", "unknown"],
      "Bend the sheet both ways: it gives more easily along its grain.",
      "unknown",
    ),
    copies: given.quantity("copies", "count", { low: 1, high: 10_000, remedy: "How many of this size?" }, 1),
  };
}
