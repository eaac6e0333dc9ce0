import type { Sheet } from "../../housing/sheets.ts";
import { SLACK } from "./sheet-problem.ts";

export interface Rectangle extends Sheet {
  readonly x: number;
  readonly y: number;
}

/** Where a piece would lie in which free rectangle; the lower the score, the better it fits. */
export interface Spot extends Rectangle {
  readonly free: Rectangle;
  readonly turned: boolean;
  readonly score: number;
}

/** Which free rectangle suits a piece: where the shorter or the longer side leaves least, the least area, or the uppermost and leftmost. */
export const FITTING_RULES = ["short side", "long side", "area", "corner"] as const;
export type FittingRule = (typeof FITTING_RULES)[number];

/** The free part of a sheet. */
export interface FreeSpace {
  readonly free: readonly Rectangle[];
  take(spot: Spot): void;
}

/** The best spot for a piece, or null. Source: rules as in Jylänki, A Thousand Ways to Pack the Bin, 2010, from memory. */
export function bestSpot(
  space: FreeSpace,
  { width, height }: Sheet,
  mayTurn: boolean,
  rule: FittingRule,
): Spot | null {
  let best: { free: Rectangle; turned: boolean; score: number } | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const free of space.free) {
    const upright = scoreOf(free, width, height, rule);
    if (upright < least) [best, least] = [{ free, turned: false, score: upright }, upright];
    if (!mayTurn) continue;
    const turned = scoreOf(free, height, width, rule);
    if (turned < least) [best, least] = [{ free, turned: true, score: turned }, turned];
  }
  if (best === null) return null;
  const [wide, high] = best.turned ? [height, width] : [width, height];
  return { ...best, x: best.free.x, y: best.free.y, width: wide, height: high };
}

function scoreOf(free: Rectangle, width: number, height: number, rule: FittingRule): number {
  const [beside, below] = [free.width - width, free.height - height];
  if (beside < -SLACK || below < -SLACK) return Number.POSITIVE_INFINITY;
  if (rule === "corner") return free.y + height + free.x * 1e-4;
  if (rule === "area") return free.width * free.height - width * height + Math.min(beside, below) * 1e-3;
  const [short, long] = beside < below ? [beside, below] : [below, beside];
  return rule === "short side" ? short + long * 1e-4 : long + short * 1e-4;
}

/** All largest free rectangles; they overlap. For a knife, which can turn corners. */
export class LargestRectangles implements FreeSpace {
  free: Rectangle[];
  constructor(sheet: Sheet) {
    this.free = [{ x: 0, y: 0, width: sheet.width, height: sheet.height }];
  }
  take(spot: Spot): void {
    const untouched: Rectangle[] = [];
    const cut: Rectangle[] = [];
    for (const free of this.free)
      if (overlaps(free, spot)) around(free, spot, cut);
      else untouched.push(free);
    this.free = untouched;
    for (const each of cut) if (!this.free.some((other) => contains(other, each))) this.#add(each, cut);
  }
  #add(rectangle: Rectangle, all: readonly Rectangle[]): void {
    if (all.some((other) => other !== rectangle && contains(other, rectangle) && !same(other, rectangle)))
      return;
    this.free.push(rectangle);
  }
}

/** Free rectangles that do not overlap: each piece parts its own by two cuts from edge to edge. */
export class EdgeToEdge implements FreeSpace {
  free: Rectangle[];
  readonly #along: "short" | "long";
  /** @param along whether the first cut runs along the shorter or the longer of what is left beside and below a piece */
  constructor(sheet: Sheet, along: "short" | "long") {
    this.free = [{ x: 0, y: 0, width: sheet.width, height: sheet.height }];
    this.#along = along;
  }
  take({ free, x, y, width, height }: Spot): void {
    const [beside, below] = [free.width - width, free.height - height];
    // the full height goes to what lies beside when the first cut is upright
    const upright = this.#along === "short" ? beside > below : beside <= below;
    const right = { x: x + width, y, width: beside, height: upright ? free.height : height };
    const under = { x, y: y + height, width: upright ? width : free.width, height: below };
    this.free = this.free.filter((each) => each !== free);
    for (const each of [right, under]) if (each.width > SLACK && each.height > SLACK) this.free.push(each);
  }
}

const overlaps = (a: Rectangle, b: Rectangle): boolean =>
  a.x < b.x + b.width - SLACK &&
  b.x < a.x + a.width - SLACK &&
  a.y < b.y + b.height - SLACK &&
  b.y < a.y + a.height - SLACK;
const contains = (outer: Rectangle, inner: Rectangle): boolean =>
  inner.x >= outer.x - SLACK &&
  inner.y >= outer.y - SLACK &&
  inner.x + inner.width <= outer.x + outer.width + SLACK &&
  inner.y + inner.height <= outer.y + outer.height + SLACK;
const same = (a: Rectangle, b: Rectangle): boolean => contains(a, b) && contains(b, a);

/** The parts of a free rectangle left, right, above and below what was taken. */
function around(free: Rectangle, taken: Rectangle, into: Rectangle[]): void {
  const { x, y, width, height } = free;
  const [right, bottom] = [x + width, y + height];
  const add = (part: Rectangle): void => {
    if (part.width > SLACK && part.height > SLACK) into.push(part);
  };
  add({ x, y, width: taken.x - x, height });
  add({ x: taken.x + taken.width, y, width: right - taken.x - taken.width, height });
  add({ x, y, width, height: taken.y - y });
  add({ x, y: taken.y + taken.height, width, height: bottom - taken.y - taken.height });
}
