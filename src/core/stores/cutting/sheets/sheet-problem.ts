import type { Sheet } from "../../housing/sheets.ts";

/** Sheets of one size in stock, mm; their grain runs along the height. */
export interface StockSheet extends Sheet {
  readonly name: string;
  /** Endless when more can be had. */
  readonly count: number;
}

/** A piece to cut, mm; its grain runs along the height. */
export interface WantedPiece extends Sheet {
  readonly name: string;
  readonly count: number;
  /** Its grain does not matter, so it may lie either way. */
  readonly mayTurn: boolean;
}

export interface SheetProblem {
  readonly stocks: readonly StockSheet[];
  readonly pieces: readonly WantedPiece[];
  /** Lost between two pieces to blade or saw, mm. */
  readonly kerf: number;
  /** Cut off along every edge of a sheet before it is used, mm. */
  readonly trim: number;
  /** Every cut goes from edge to edge, as a board cutter makes it. */
  readonly edgeToEdge: boolean;
}

/** Where a piece lies on its sheet, mm from the upper left corner. */
export interface PlacedPiece extends Sheet {
  readonly piece: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export interface SheetLayout {
  readonly stock: number;
  readonly placed: readonly PlacedPiece[];
}

export interface SheetCut {
  readonly layouts: readonly SheetLayout[];
  /** Area of the sheets used, mm². */
  readonly area: number;
  /** No way of cutting uses less, mm². */
  readonly bound: number;
  readonly proved: boolean;
  /** How many of each piece are not cut: too large, or the stock is used up. */
  readonly missing: readonly number[];
}

export const areaOf = ({ width, height }: Sheet): number => width * height;

/** One piece each, with the kerf beside it, and sheets with what is left inside the trim and one kerf more: then pieces lie edge to edge. */
export interface PlainProblem {
  readonly stocks: readonly (Sheet & { readonly cost: number; readonly count: number })[];
  readonly items: readonly PlainItem[];
  readonly edgeToEdge: boolean;
}
export interface PlainItem extends Sheet {
  readonly piece: number;
  readonly mayTurn: boolean;
}

export function plainProblem({ stocks, pieces, kerf, trim, edgeToEdge }: SheetProblem): PlainProblem {
  return {
    edgeToEdge,
    stocks: stocks.map((stock) => ({
      width: stock.width - 2 * trim + kerf,
      height: stock.height - 2 * trim + kerf,
      cost: areaOf(stock),
      count: stock.count,
    })),
    items: pieces.flatMap(({ width, height, count, mayTurn }, piece) =>
      Array.from({ length: count }, () => ({
        piece,
        mayTurn: mayTurn && Math.abs(width - height) > 1e-9,
        width: width + kerf,
        height: height + kerf,
      })),
    ),
  };
}

/** A millionth of a millimetre is forgiven: sizes are sums of fractions. */
export const SLACK = 1e-6;

export const fitsOn = (item: PlainItem, sheet: Sheet): boolean =>
  isWithin(item.width, item.height, sheet) || (item.mayTurn && isWithin(item.height, item.width, sheet));
const isWithin = (width: number, height: number, sheet: Sheet): boolean =>
  width <= sheet.width + SLACK && height <= sheet.height + SLACK;
