import { areaBound } from "./area-bound.ts";
import type { Filled } from "./fill-sheet.ts";
import { firstPacking } from "./first-packing.ts";
import { improve } from "./improve-packing.ts";
import {
  areaOf,
  fitsOn,
  type PlacedPiece,
  type PlainItem,
  type PlainProblem,
  plainProblem,
  type SheetCut,
  type SheetLayout,
  type SheetProblem,
  type StockSheet,
} from "./sheet-problem.ts";

export interface SheetEffort {
  /** Times that some sheets are cleared and filled anew. */
  readonly refills: number;
  readonly seed: number;
}
export const SHEET_EFFORT: SheetEffort = { refills: 40_000, seed: 1 };

/**
 * The pieces on the sheets in stock with as little sheet used as is found, beside a bound that no way of cutting can beat.
 * Proved when both meet. The same seed gives the same layouts.
 */
export function cutSheets(problem: SheetProblem, effort: SheetEffort = SHEET_EFFORT): SheetCut {
  const plain = plainProblem(problem);
  const placeable = [...plain.items.keys()].filter((n) =>
    plain.stocks.some((sheet) => sheet.count > 0 && fitsOn(plain.items[n] as PlainItem, sheet)),
  );
  const bound = areaBound({ ...plain, items: placeable.map((n) => plain.items[n] as PlainItem) });
  const first = firstPacking(plain, placeable);
  const { filled, left } = improve(plain, first, bound, effort);
  const laid = new Set(filled.flatMap(({ items }) => items));
  const area = filled.reduce((sum, { stock }) => sum + areaOf(problem.stocks[stock] as StockSheet), 0);
  return {
    layouts: filled.map((sheet) => layoutOf(sheet, plain, problem)),
    area,
    bound: Math.min(bound, area),
    proved: left.length === 0 && area <= bound * (1 + 1e-9),
    missing: problem.pieces.map(
      (_, piece) => plain.items.filter((item, n) => item.piece === piece && !laid.has(n)).length,
    ),
  };
}

const layoutOf = (sheet: Filled, plain: PlainProblem, { trim, kerf }: SheetProblem): SheetLayout => ({
  stock: sheet.stock,
  placed: sheet.spots.map(
    (spot, n): PlacedPiece => ({
      piece: plain.items[sheet.items[n] as number]?.piece ?? 0,
      x: spot.x + trim,
      y: spot.y + trim,
      width: spot.width - kerf,
      height: spot.height - kerf,
      turned: spot.turned,
    }),
  ),
});
