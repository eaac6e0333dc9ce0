import type { Blank } from "./blank.ts";
import { type Sheet, turned, type Yield, yieldOf } from "./sheets.ts";

/** What a sheet in stock gives of one piece. */
export interface PieceYield extends Yield {
  readonly blank: Blank;
  /** As the sheet's grain is known, or as it lies better. */
  readonly pieces: number;
  /** How many of this piece, a tenth more for spoilage. */
  readonly wanted: number;
  /** Sheets for the pieces wanted; null where the sheet is too small. */
  readonly sheets: number | null;
}

/** Which side of a sheet its grain follows. */
export type SheetGrain = "long" | "short" | "unknown";

/** Spoilage: common practice, no source. */
const SPOILAGE = 0.1;

/** Each piece cut from sheets of its own.
 *  @param boxes how many of the housing are made */
export function onSheets(
  blanks: readonly Blank[],
  sheet: Sheet,
  { grain, boxes }: { readonly grain: SheetGrain; readonly boxes: number },
): PieceYield[] {
  const isStanding = sheet.height >= sheet.width;
  const withGrain = (grain === "short") === isStanding ? turned(sheet) : sheet;
  return blanks.map((blank) => {
    const each = yieldOf(blank, withGrain);
    const pieces = grain === "unknown" ? each.either : each.withGrain;
    const wanted = Math.ceil(boxes * blank.count * (1 + SPOILAGE) - 1e-9);
    return { blank, ...each, pieces, wanted, sheets: pieces === 0 ? null : Math.ceil(wanted / pieces) };
  });
}
