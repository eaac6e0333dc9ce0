import type { Sheet } from "./sheets.ts";

/* What is cut: a blank with its folds, drawn with the inside up, the head at the top, mm from the upper left corner. */

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Segment {
  readonly from: Point;
  readonly to: Point;
}

/** What a blank or one of its fields is; the words for it are in the sentences. */
export type Part =
  | "jacket"
  | "front"
  | "back"
  | "spine"
  | "flap"
  | "turn-in"
  | "four-flap"
  | "phase-box"
  | "inner-strip"
  | "outer-strip"
  | "base"
  | "head-flap"
  | "tail-flap"
  | "fore-edge-flap"
  | "spine-flap"
  | "inner-base"
  | "inner-fore-wall"
  | "inner-side-wall"
  | "outer-base"
  | "outer-fore-wall"
  | "outer-side-wall"
  | "case-board"
  | "case-spine";

/** A named field of a blank. */
export interface Field extends Point, Sheet {
  readonly part: Part;
}

/** A piece to cut; its grain runs along its height as drawn. */
export interface Blank extends Sheet {
  readonly part: Part;
  readonly count: number;
  /** Corners of the cut, in order; the last is joined to the first. */
  readonly outline: readonly Point[];
  readonly folds: readonly Segment[];
  readonly fields: readonly Field[];
  /** Where measures stand, from the left edge and from the top, both edges among them. */
  readonly across: readonly number[];
  readonly down: readonly number[];
  /** Level measures that stand on the piece itself, as they differ from those around it. */
  readonly inside: readonly Segment[];
}

export const point = (x: number, y: number): Point => ({ x, y });

/** Running sums from nought: the edges and folds of lengths laid end to end. */
export const edgesOf = (lengths: readonly number[]): number[] =>
  lengths.reduce<number[]>((edges, length) => [...edges, (edges.at(-1) ?? 0) + length], [0]);

/** A flat board, no fold in it. */
export const flatBoard = (part: Part, count: number, width: number, height: number): Blank => ({
  part,
  count,
  width,
  height,
  outline: [point(0, 0), point(width, 0), point(width, height), point(0, height)],
  folds: [],
  fields: [{ part, x: 0, y: 0, width, height }],
  across: [0, width],
  down: [0, height],
  inside: [],
});
