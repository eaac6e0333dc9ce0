import { type Blank, edgesOf, type Part, point } from "./blank.ts";
import type { Book } from "./measures.ts";

/** Heights of the four walls, in the order in which the flaps close. mm */
export interface Walls {
  readonly tail: number;
  readonly head: number;
  readonly fore: number;
  readonly spine: number;
}

/** mm */
export interface FourFlapAsk {
  /** Thickness of the paper or board. */
  readonly stock: number;
  readonly clearance: number;
  /** Of the base's height, each of head and tail flap: one half or one. */
  readonly headFraction: number;
}

/** Head and tail flaps are narrower by this on each side, so that they slip between the others. Common practice, no source. */
const FLAP_TRIM = 1;

/** Each wall is one thickness higher than the one that closes before it. Common practice, no source. */
export function fourFlapWalls(thickness: number, stock: number): Walls {
  const wall = (layers: number): number => thickness + layers * stock;
  return { tail: wall(1), head: wall(2), fore: wall(3), spine: wall(4) };
}

/** A four-flap wrapper of one piece; it closes tail, head, fore-edge, spine. */
export const fourFlapBlank = (book: Book, { stock, clearance, headFraction }: FourFlapAsk): Blank =>
  crossBlank("four-flap", {
    book,
    clearance,
    walls: fourFlapWalls(book.thickness, stock),
    headFraction,
  });

/** mm */
export interface PhaseBoxAsk {
  /** On height, width and depth alike. */
  readonly clearance: number;
}

/** By how much the wall of the flap that closes last is higher. Source: University of Brighton, book-arts worksheet (card of 300 g/m²) */
export const LAST_WALL_EXTRA = 1;

/** A soft phase box of one piece of card, four full flaps, the spine flap closing last. Source: the same worksheet. */
export function phaseBoxBlank(book: Book, { clearance }: PhaseBoxAsk): Blank {
  const wall = book.thickness + clearance;
  const walls = { tail: wall, head: wall, fore: wall, spine: wall + LAST_WALL_EXTRA };
  return crossBlank("phase-box", { book, clearance, walls, headFraction: 1 });
}

interface Cross {
  readonly book: Book;
  readonly clearance: number;
  readonly walls: Walls;
  readonly headFraction: number;
}

/** A cross around its base, the spine on the left. */
function crossBlank(part: Part, { book, clearance, walls, headFraction }: Cross): Blank {
  const [wide, high] = [book.width + clearance, book.height + clearance];
  const across = edgesOf([wide, walls.spine, wide, walls.fore, wide]);
  const down = edgesOf([headFraction * high, walls.head, high, walls.tail, headFraction * high]);
  const [, x1 = 0, x2 = 0, x3 = 0, x4 = 0, width = 0] = across;
  const [, y1 = 0, y2 = 0, y3 = 0, y4 = 0, height = 0] = down;
  const [left, right] = [x2 + FLAP_TRIM, x3 - FLAP_TRIM];
  const corners: readonly (readonly [number, number])[] = [
    ...([
      [left, 0],
      [right, 0],
      [right, y2],
      [x3, y2],
    ] as const),
    ...([
      [width, y2],
      [width, y3],
      [x3, y3],
      [right, y3],
    ] as const),
    ...([
      [right, height],
      [left, height],
      [left, y3],
      [x2, y3],
    ] as const),
    ...([
      [0, y3],
      [0, y2],
      [x2, y2],
      [left, y2],
    ] as const),
  ];
  const level = [y1, y2, y3, y4].map((y) => ({ from: point(left, y), to: point(right, y) }));
  const upright = [x1, x2, x3, x4].map((x) => ({ from: point(x, y2), to: point(x, y3) }));
  const field = (name: Part, x: number, y: number, w: number, h: number) => ({
    part: name,
    x,
    y,
    width: w,
    height: h,
  });
  return {
    part,
    count: 1,
    width,
    height,
    outline: corners.map(([x, y]) => point(x, y)),
    folds: [...level, ...upright],
    fields: [
      field("base", x2, y2, x3 - x2, y3 - y2),
      field("head-flap", left, 0, right - left, y1),
      field("tail-flap", left, y4, right - left, height - y4),
      field("spine-flap", 0, y2, x1, y3 - y2),
      field("fore-edge-flap", x4, y2, width - x4, y3 - y2),
    ],
    across,
    down,
    inside: [y1 / 4, height - y1 / 4].map((y) => ({ from: point(left, y), to: point(right, y) })),
  };
}
