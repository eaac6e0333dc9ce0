import { type Blank, edgesOf, type Part, point } from "./blank.ts";
import type { Walls } from "./cross.ts";
import type { Book } from "./measures.ts";

/** mm */
export interface TwoStripAsk {
  readonly stock: number;
  readonly clearance: number;
  /** By how much the two flaps of a strip lie over each other. */
  readonly overlap: number;
}

/** Published overlap of the flaps of a strip: 2 to 4 inches, 50 to 100 mm. Source: University of Maine library instructions. */
export const OVERLAP = { low: 50, usual: 75, high: 100 } as const;

/** Length of the strip of a phase box around head and tail, one flap full, one half; it is as wide as the book.
 *  Source: Indiana University Libraries, Book Repair Manual: 2.5 L + 2 D + 12 mm. */
export const phaseStripLengthFrom = (length: number, depth: number): number => 2.5 * length + 2 * depth + 12;

/** The strip around head and tail lies on the other, so its floor lifts the book by one thickness for the other's walls. */
export function twoStripWalls(thickness: number, stock: number): Walls {
  const wall = (layers: number): number => thickness + layers * stock;
  return { tail: wall(1), head: wall(2), fore: wall(4), spine: wall(5) };
}

/** A four-flap wrapper of two strips that cross under the book, each 2a + 2T + overlap long; the folds of each run with its grain.
 *  Source: University of Maine library instructions; clearance and thickness of the stock come on top. */
export function twoStripBlanks(book: Book, { stock, clearance, overlap }: TwoStripAsk): Blank[] {
  const walls = twoStripWalls(book.thickness, stock);
  const flap = (a: number): number => (a + overlap) / 2;
  return [
    stripBlank("inner-strip", {
      wide: book.width + clearance,
      lengths: [flap(book.height), walls.head, book.height + clearance, walls.tail, flap(book.height)],
      flaps: ["head-flap", "tail-flap"],
    }),
    stripBlank("outer-strip", {
      wide: book.height + clearance,
      lengths: [flap(book.width), walls.spine, book.width + clearance, walls.fore, flap(book.width)],
      flaps: ["spine-flap", "fore-edge-flap"],
    }),
  ];
}

interface Strip {
  readonly wide: number;
  readonly lengths: readonly number[];
  readonly flaps: readonly [Part, Part];
}

/** Drawn lying, so that the grain, across the strip, runs along its height. */
function stripBlank(part: Part, { wide, lengths, flaps: [first, last] }: Strip): Blank {
  const across = edgesOf(lengths);
  const [, x1 = 0, x2 = 0, x3 = 0, x4 = 0, width = 0] = across;
  const field = (name: Part, x: number, w: number) => ({ part: name, x, y: 0, width: w, height: wide });
  return {
    part,
    count: 1,
    width,
    height: wide,
    outline: [point(0, 0), point(width, 0), point(width, wide), point(0, wide)],
    folds: [x1, x2, x3, x4].map((x) => ({ from: point(x, 0), to: point(x, wide) })),
    fields: [field(first, 0, x1), field(part, x2, x3 - x2), field(last, x4, width - x4)],
    across,
    down: [0, wide],
    inside: [],
  };
}
