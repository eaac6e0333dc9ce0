import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutOrder } from "../../../../src/core/stores/cutting/sheets/cut-order.ts";
import { cutRoll } from "../../../../src/core/stores/cutting/sheets/cut-roll.ts";
import { cutSheets } from "../../../../src/core/stores/cutting/sheets/cut-sheets.ts";
import type { SheetProblem, WantedPiece } from "../../../../src/core/stores/cutting/sheets/sheet-problem.ts";

const EFFORT = { refills: 300, seed: 1 };
const piece = (width: number, height: number, count: number, mayTurn = false): WantedPiece => ({
  name: `${width}x${height}`,
  width,
  height,
  count,
  mayTurn,
});
const problem = (pieces: readonly WantedPiece[], more: Partial<SheetProblem> = {}): SheetProblem => ({
  stocks: [{ name: "board", width: 100, height: 200, count: 50 }],
  pieces,
  kerf: 0,
  trim: 0,
  edgeToEdge: true,
  ...more,
});

describe("pieces on sheets", () => {
  test("four quarters take one sheet, proved", () => {
    const cut = cutSheets(problem([piece(50, 100, 4)]), EFFORT);
    expect([cut.layouts.length, cut.proved]).toEqual([1, true]);
  });
  test("two pieces a little over half of each side never share a sheet, and that is proved", () => {
    const cut = cutSheets(problem([piece(51, 101, 3)]), EFFORT);
    expect([cut.layouts.length, cut.proved]).toEqual([3, true]);
  });
  test("a piece whose grain matters is not turned even where turning would save a sheet", () => {
    // 200 × 100 fits a sheet of 100 × 200 only when turned
    expect(cutSheets(problem([piece(200, 100, 2, true)]), EFFORT).layouts).toHaveLength(2);
    const kept = cutSheets(problem([piece(200, 100, 2)]), EFFORT);
    expect([kept.layouts.length, kept.missing]).toEqual([0, [2]]);
  });
  test("a blade of 2 mm leaves one piece fewer, and so does a trimmed edge", () => {
    const fitting = [piece(50, 200, 2)];
    expect(cutSheets(problem(fitting), EFFORT).layouts).toHaveLength(1);
    expect(cutSheets(problem(fitting, { kerf: 2 }), EFFORT).layouts).toHaveLength(2);
    expect(cutSheets(problem([piece(50, 190, 2)], { trim: 5 }), EFFORT).layouts).toHaveLength(2);
  });
  test("of two sizes in stock the smaller is taken where it is enough, and no more than there are", () => {
    const stocks = [
      { name: "large", width: 100, height: 200, count: 5 },
      { name: "small", width: 100, height: 100, count: 1 },
    ];
    const one = cutSheets(problem([piece(90, 90, 1)], { stocks }), EFFORT);
    expect([one.layouts.map(({ stock }) => stock), one.proved]).toEqual([[1], true]);
    const three = cutSheets(problem([piece(90, 90, 3)], { stocks }), EFFORT);
    expect(three.layouts.map(({ stock }) => stock).sort()).toEqual([0, 1]);
  });
  test("the same seed gives the same layouts", () => {
    const asked = problem([piece(37, 61, 9, true), piece(23, 48, 7)]);
    expect(cutSheets(asked, EFFORT)).toEqual(cutSheets(asked, EFFORT));
  });

  const size = fc.integer({ min: 5, max: 110 });
  const anyPiece = fc.record({
    width: size,
    height: size,
    count: fc.integer({ min: 1, max: 4 }),
    mayTurn: fc.boolean(),
  });
  const any = fc.record({
    pieces: fc.array(anyPiece, { minLength: 1, maxLength: 6 }),
    kerf: fc.constantFrom(0, 1.5),
    trim: fc.constantFrom(0, 4),
    edgeToEdge: fc.boolean(),
  });
  test("none overlaps, none lies in the trim, the blade has its room, grain is kept, each is cut once or named as missing", () => {
    fc.assert(
      fc.property(any, ({ pieces, ...more }) => {
        const named = pieces.map((each) => ({ ...each, name: "" }));
        const asked = problem(named, more);
        const cut = cutSheets(asked, { refills: 40, seed: 1 });
        const { kerf, trim } = more;
        for (const { placed } of cut.layouts)
          placed.forEach((a, n) => {
            expect(a.x >= trim - 1e-6 && a.x + a.width <= 100 - trim + 1e-6).toBe(true);
            expect(a.y >= trim - 1e-6 && a.y + a.height <= 200 - trim + 1e-6).toBe(true);
            const own = named[a.piece];
            expect(a.turned && own?.mayTurn !== true).toBe(false);
            expect([a.width, a.height].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual(
              a.turned ? [own?.height, own?.width] : [own?.width, own?.height],
            );
            for (const b of placed.slice(n + 1))
              expect(
                a.x + a.width + kerf <= b.x + 1e-6 ||
                  b.x + b.width + kerf <= a.x + 1e-6 ||
                  a.y + a.height + kerf <= b.y + 1e-6 ||
                  b.y + b.height + kerf <= a.y + 1e-6,
              ).toBe(true);
          });
        const laid = cut.layouts.flatMap(({ placed }) => placed.map(({ piece: n }) => n));
        named.forEach(({ count }, n) => {
          expect(laid.filter((each) => each === n).length + (cut.missing[n] ?? 0)).toBe(count);
        });
        expect(cut.bound).toBeLessThanOrEqual(cut.area);
      }),
      { numRuns: 60, seed: 1 },
    );
  });
  test("edge to edge, there is an order of cuts for every layout", () => {
    fc.assert(
      fc.property(fc.array(anyPiece, { minLength: 1, maxLength: 5 }), (pieces) => {
        const asked = problem(pieces.map((each) => ({ ...each, name: "" })));
        for (const { placed } of cutSheets(asked, { refills: 40, seed: 1 }).layouts)
          expect(cutOrder(placed, { width: 100, height: 200 }, asked)).not.toBeNull();
      }),
      { numRuns: 40, seed: 2 },
    );
  });
  test("a pinwheel of four around a hole has no order of cuts from edge to edge", () => {
    const at = (x: number, y: number, width: number, height: number) => ({
      piece: 0,
      turned: false,
      x,
      y,
      width,
      height,
    });
    const pinwheel = [at(0, 0, 2, 1), at(2, 0, 1, 2), at(1, 2, 2, 1), at(0, 1, 1, 2)];
    expect(cutOrder(pinwheel, { width: 3, height: 3 }, { trim: 0, kerf: 0 })).toBeNull();
  });
  test("the cuts of four quarters: upright in the middle, then each half across", () => {
    const quarters = [0, 50].flatMap((x) =>
      [0, 100].map((y) => ({ piece: 0, turned: false, x, y, width: 50, height: 100 })),
    );
    const cuts = cutOrder(quarters, { width: 100, height: 200 }, { trim: 0, kerf: 0 });
    expect(cuts?.map(({ at, upright }) => [at, upright])).toEqual([
      [50, true],
      [100, false],
      [100, false],
    ]);
  });
});

describe("pieces from a roll", () => {
  test("two halves of the width lie side by side, proved", () => {
    const items = [1, 2].map(() => ({ piece: 0, width: 50, height: 70, mayTurn: false }));
    const { length, proved } = cutRoll(items, 100, { steps: 100, seed: 1 });
    expect([length, proved]).toEqual([70, true]);
  });
  test("two pieces wider than half lie one behind the other, proved", () => {
    const items = [1, 2].map(() => ({ piece: 0, width: 60, height: 70, mayTurn: false }));
    const { length, proved } = cutRoll(items, 100, { steps: 100, seed: 1 });
    expect([length, proved]).toEqual([140, true]);
  });
});
