import type { Point, Segment } from "./blank.ts";
import type { Drawing } from "./drawing.ts";
import type { Sheet } from "./sheets.ts";

/** One page of a drawing that is larger than the paper: what of the drawing stands on it. Rows and columns count from 1. */
export interface Tile extends Point, Sheet {
  readonly row: number;
  readonly column: number;
}

/** Pages that join edge to edge along crosses, those left out on which nothing is cut or folded; a drawing that fits is one page.
 *  @param field what a page holds, mm */
export function tilesOf(drawing: Drawing, field: Sheet): Tile[] {
  const lines = drawing.lines.filter(({ kind }) => kind !== "measure");
  return gridOf(drawing, field).filter((tile) => lines.some((line) => touches(line, tile)));
}

/** Cuts and folds are level or upright, so the box around one is the line itself. */
const touches = ({ from, to }: Segment, { x, y, width, height }: Tile): boolean =>
  Math.max(from.x, to.x) > x &&
  Math.min(from.x, to.x) < x + width &&
  Math.max(from.y, to.y) > y &&
  Math.min(from.y, to.y) < y + height;

function gridOf(drawing: Sheet, field: Sheet): Tile[] {
  const [rows, columns] = [Math.ceil(drawing.height / field.height), Math.ceil(drawing.width / field.width)];
  return Array.from({ length: rows * columns }, (_, n) => {
    const [row, column] = [Math.floor(n / columns), n % columns];
    return { row: row + 1, column: column + 1, x: column * field.width, y: row * field.height, ...field };
  });
}
