import type { Drawing, Label, Line } from "../housing/drawing.ts";
import { tenths } from "../housing/measures.ts";
import type { Sheet } from "../housing/sheets.ts";
import type { PlacedPiece, WantedPiece } from "./sheets/sheet-problem.ts";

const LETTERS = 14;

/** A sheet with its pieces at true scale: each with its name and size, and an arrow along the grain where that matters. */
export function sheetDrawing(
  placed: readonly PlacedPiece[],
  sheet: Sheet,
  pieces: readonly WantedPiece[],
): Drawing {
  return {
    width: sheet.width,
    height: sheet.height,
    lines: [
      ...outline({ x: 0, y: 0, ...sheet }, "measure"),
      ...placed.flatMap((piece) => outline(piece, "cut")),
    ],
    labels: placed.flatMap((piece) => labelsOf(piece, pieces[piece.piece]?.name ?? "")),
    grain: placed.filter(({ piece }) => pieces[piece]?.mayTurn === false).map(grainOf),
  };
}

function outline({ x, y, width, height }: Sheet & { x: number; y: number }, kind: Line["kind"]): Line[] {
  const [right, bottom] = [x + width, y + height];
  const corners = [
    { x, y },
    { x: right, y },
    { x: right, y: bottom },
    { x, y: bottom },
  ];
  return corners.map((from, n) => ({ kind, from, to: corners[(n + 1) % 4] ?? from }));
}

function labelsOf({ x, y, width, height }: PlacedPiece, name: string): Label[] {
  const upright = height > 1.5 * width;
  const size = Math.min(LETTERS, Math.min(width, height) / 5, Math.max(width, height) / 8);
  const middle = { x: x + width / 2, y: y + height / 2 };
  const off = (by: number): { x: number; y: number } =>
    upright ? { ...middle, x: middle.x + by } : { ...middle, y: middle.y + by };
  return [
    { ...off(-0.7 * size), size, upright, says: { figure: name } },
    { ...off(0.7 * size), size, upright, says: { figure: `${tenths(width)} × ${tenths(height)}` } },
  ];
}

function grainOf({ x, y, width, height }: PlacedPiece): Drawing["grain"][number] {
  const reach = Math.min(60, 0.3 * height);
  const [across, middle] = [x + 0.12 * width, y + height / 2];
  return { from: { x: across, y: middle - reach }, to: { x: across, y: middle + reach } };
}
