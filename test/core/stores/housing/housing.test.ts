import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Blank } from "../../../../src/core/stores/housing/blank.ts";
import {
  type Choices,
  HOUSING_KINDS,
  type Housing,
  type HousingKind,
  housingFor,
} from "../../../../src/core/stores/housing/housing.ts";
import type { Book } from "../../../../src/core/stores/housing/measures.ts";
import { twoStripWalls } from "../../../../src/core/stores/housing/two-strip.ts";

/** The book of the worked examples. */
const EXAMPLE: Book = { height: 240, width: 165, thickness: 32 };

function made(kind: HousingKind, book = EXAMPLE, chosen: Partial<Choices> = {}): Housing {
  const outcome = housingFor(kind, book, chosen);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}
const refusals = (kind: HousingKind, book: Book, chosen: Partial<Choices> = {}): (string | undefined)[] => {
  const outcome = housingFor(kind, book, chosen);
  return outcome.ok ? [] : outcome.problems.map(({ got }) => got);
};
const only = (housing: Housing): Blank => housing.blanks[0] as Blank; // these kinds have one
const rounded = (values: readonly number[]): number[] => values.map((mm) => Math.round(mm * 10) / 10);

describe("worked examples, to a tenth of a millimetre", () => {
  test("a jacket: 648 by 321, creases at 140, 143, 308, 340, 505, 508", () => {
    // layout of a public leaflet on film jackets; turn-in and ease: common practice, no source
    const { width, height, across, down } = only(
      made("jacket", EXAMPLE, { boardThickness: 3, flap: 140, turnIn: 40 }),
    );
    expect([width, height]).toEqual([648, 321]);
    expect(across).toEqual([0, 140, 143, 308, 340, 505, 508, 648]);
    expect(down).toEqual([0, 40, 281, 321]);
  });
  test.each([
    [0.5, 565.5, 547.5],
    [1, 565.5, 788.5],
  ])("a four-flap wrapper, head and tail flaps %d of the height: %d by %d", (headFraction, width, height) => {
    // our geometry, common practice, no source
    const blank = only(made("four-flap", EXAMPLE, { stock: 0.5, clearance: 1, headFraction }));
    expect([blank.width, blank.height]).toEqual([width, height]);
    const at = (edges: readonly number[]) => edges.slice(1).map((edge, i) => edge - (edges[i] ?? 0));
    expect(rounded(at(blank.across))).toEqual([166, 34, 166, 33.5, 166]);
    expect(rounded(at(blank.down)).slice(1, 4)).toEqual([33, 241, 32.5]);
  });
  test("a soft phase box without clearance: 318 by 242", () => {
    // University of Brighton, book-arts worksheet: 10.1+0.8+10.1+0.7+10.1 = 31.8 cm; 7.6+0.7+7.6+0.7+7.6 = 24.2 cm
    const tiny = { height: 76, width: 101, thickness: 7 };
    const { width, height } = only(made("phase-box", tiny, { clearance: 0, stock: 0.3 }));
    expect([width, height]).toEqual([318, 242]);
  });
  test("a strip around a book is 2a + 2T + overlap, and what the stock and the clearance add", () => {
    // University of Maine library instructions; here a 165, T 32, overlap 75: 469, + 1 clearance + (4 + 5) × 0.5
    expect(made("two-strip").blanks.map(({ width }) => width)).toEqual([
      2 * 240 + 64 + 75 + 1 + 1.5,
      469 + 1 + 4.5,
    ]);
  });
  test("a drop-back box: every board, and the closed size", () => {
    // start of the geometry: a published instruction (base = W + 1 board by H + 2 boards); play, cloth, square: common practice, no source
    const { blanks, dropBack } = made("drop-back");
    const sizes = blanks.map(({ part, count, width, height }) => [part, count, ...rounded([width, height])]);
    expect(sizes).toEqual([
      ["case-board", 2, 177.1, 261.7],
      ["case-spine", 1, 40.6, 261.7],
      ["outer-base", 1, 173.7, 254.9],
      ["outer-fore-wall", 1, 37.7, 254.9],
      ["outer-side-wall", 2, 37.7, 171.2],
      ["inner-base", 1, 169.4, 247.3],
      ["inner-fore-wall", 1, 33.9, 247.3],
      ["inner-side-wall", 2, 33.9, 166.9],
    ]);
    expect(rounded(Object.values(dropBack?.overall ?? {}))).toEqual([180.4, 262.5, 46.4]);
  });
});

/** Books that every kind takes. */
const books = fc.record({
  height: fc.integer({ min: 100, max: 500 }),
  width: fc.integer({ min: 80, max: 400 }),
  thickness: fc.integer({ min: 3, max: 120 }),
});
const kinds = fc.constantFrom(...HOUSING_KINDS);

describe("for any book", () => {
  test("a thicker book needs no less of anything", () => {
    fc.assert(
      fc.property(books, kinds, fc.integer({ min: 1, max: 20 }), (book, kind, more) => {
        const [thin, thick] = [made(kind, book), made(kind, { ...book, thickness: book.thickness + more })];
        thin.blanks.forEach((blank, at) => {
          expect(thick.blanks[at]?.width).toBeGreaterThanOrEqual(blank.width);
          expect(thick.blanks[at]?.height).toBeGreaterThanOrEqual(blank.height);
        });
      }),
    );
  });
  test("outline, folds and measures stay on the piece, and the measures add up to it", () => {
    fc.assert(
      fc.property(books, kinds, (book, kind) => {
        for (const { width, height, outline, folds, across, down } of made(kind, book).blanks) {
          const points = [...outline, ...folds.flatMap(({ from, to }) => [from, to])];
          for (const { x, y } of points) {
            expect(x >= 0 && x <= width).toBe(true);
            expect(y >= 0 && y <= height).toBe(true);
          }
          expect([across.at(-1), down.at(-1)]).toEqual([width, height]);
          expect([...across].sort((a, b) => a - b)).toEqual(across);
        }
      }),
    );
  });
  test("the inner tray goes into the outer one, the book into the inner one, the trays into the case", () => {
    fc.assert(
      fc.property(books, (book) => {
        const box = made("drop-back", book).dropBack;
        if (!box) throw new Error("a drop-back box has trays");
        const { inner, outer, overall } = box;
        expect(
          inner.clear.W > book.width && inner.clear.H > book.height && inner.clear.D > book.thickness,
        ).toBe(true);
        for (const side of ["W", "H", "D"] as const) {
          expect(outer.clear[side]).toBeGreaterThan(inner.outside[side]);
          expect(overall[side]).toBeGreaterThan(outer.outside[side]);
        }
      }),
    );
  });
  test("each wall of two strips clears what closed before it", () => {
    const { tail, head, fore, spine } = twoStripWalls(32, 0.5);
    // over the floor of the inner strip and two flaps, then three
    expect([tail, head, fore, spine]).toEqual([32.5, 33, 34, 34.5]);
  });
  test("head and tail flaps slip between the others", () => {
    const { fields } = only(made("four-flap"));
    const width = (part: string) => fields.find((field) => field.part === part)?.width ?? 0;
    expect(width("head-flap")).toBe(width("base") - 2);
  });
});

describe("nonsense is refused, with what was given", () => {
  test.each<[string, HousingKind, Book, Partial<Choices>, string]>([
    ["centimetres", "four-flap", { height: 24, width: 165, thickness: 32 }, {}, "the height is 24 mm"],
    ["no thickness", "jacket", { ...EXAMPLE, thickness: 0 }, {}, "the thickness is 0 mm"],
    ["no number", "drop-back", { ...EXAMPLE, width: Number.NaN }, {}, "the width is NaN mm"],
    ["a flap beyond the hinge", "jacket", EXAMPLE, { flap: 166 }, "the flap is 166 mm"],
    ["board for a soft box", "phase-box", EXAMPLE, { stock: 1.524 }, "the thickness of the card is 1.5 mm"],
    [
      "card too thick for its clearance",
      "phase-box",
      EXAMPLE,
      { stock: 0.8, clearance: 0 },
      "the clearance is 0 mm",
    ],
    ["flaps that hardly meet", "two-strip", EXAMPLE, { overlap: 10 }, "the overlap is 10 mm"],
    ["a tray without play", "drop-back", EXAMPLE, { clearance: 0 }, "the play is 0 mm"],
  ])("%s", (_, kind, book, chosen, got) => {
    expect(refusals(kind, book, chosen)).toEqual([got]);
  });
  test("every wrong measure of the book at once", () => {
    expect(refusals("jacket", { height: 5, width: 5000, thickness: 900 })).toHaveLength(3);
  });
});
