import type { Sheet } from "../../housing/sheets.ts";
import type { PlacedPiece } from "./sheet-problem.ts";

/** One cut from edge to edge of what lies on the table. */
export interface EdgeCut {
  /** From the left edge when upright, else from the top, of the piece of sheet that is cut, mm. */
  readonly at: number;
  readonly upright: boolean;
  /** The piece of sheet that is cut. */
  readonly of: Sheet;
}

interface Region extends Sheet {
  readonly x: number;
  readonly y: number;
}

/** The cuts that free every piece, each from edge to edge, in their order; null where there is no such order.
 *  @param trim what is cut off along the edges of the sheet, mm   @param kerf lost at each cut, mm */
export function cutOrder(
  placed: readonly PlacedPiece[],
  sheet: Sheet,
  { trim, kerf }: { readonly trim: number; readonly kerf: number },
): EdgeCut[] | null {
  const inside = { x: trim, y: trim, width: sheet.width - 2 * trim, height: sheet.height - 2 * trim };
  const cuts = free(placed, inside, kerf);
  return cuts === null ? null : [...trimmed(sheet, trim), ...cuts];
}

/** All four edges are made straight first. */
function trimmed({ width, height }: Sheet, trim: number): EdgeCut[] {
  if (trim === 0) return [];
  const inner = width - 2 * trim;
  return [
    { at: trim, upright: true, of: { width, height } },
    { at: inner, upright: true, of: { width: width - trim, height } },
    { at: trim, upright: false, of: { width: inner, height } },
    { at: height - 2 * trim, upright: false, of: { width: inner, height: height - trim } },
  ];
}

const SLACK = 1e-6;

function free(placed: readonly PlacedPiece[], region: Region, kerf: number): EdgeCut[] | null {
  const [only] = placed;
  if (only === undefined) return [];
  if (placed.length === 1 && only.width >= region.width - SLACK && only.height >= region.height - SLACK)
    return [];
  for (const upright of [true, false]) {
    const [start, size] = upright ? (["x", "width"] as const) : (["y", "height"] as const);
    const ends = [...new Set(placed.map((piece) => piece[start] + piece[size]))].sort((a, b) => a - b);
    for (const end of ends) {
      if (end >= region[start] + region[size] - SLACK) continue;
      const before = placed.filter((piece) => piece[start] < end - SLACK);
      if (before.some((piece) => piece[start] + piece[size] > end + SLACK)) continue;
      const near = { ...region, [size]: end - region[start] };
      const from = end + kerf;
      const far = { ...region, [start]: from, [size]: region[start] + region[size] - from };
      const [first, second] = [
        free(before, near, kerf),
        free(
          placed.filter((piece) => piece[start] >= end - SLACK),
          far,
          kerf,
        ),
      ];
      if (first === null || second === null) continue;
      return [{ at: end - region[start], upright, of: region }, ...first, ...second];
    }
  }
  return null;
}
