import { existsSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { cutLengths } from "../../../../src/core/stores/cutting/lengths/cut-lengths.ts";
import { startSolver } from "../../../../src/edge/solve/solver.ts";

const solver = startSolver();
afterAll(() => solver.close());
const endless = Number.POSITIVE_INFINITY;
const strips = (lengths: readonly number[]): { length: number; count: number }[] =>
  [...new Set(lengths)].map((length) => ({
    length,
    count: lengths.filter((each) => each === length).length,
  }));

describe("strips from lengths in stock", () => {
  test("three halves of a length take two, proved", async () => {
    const cut = await cutLengths({
      stocks: [{ length: 10, count: endless, cost: 1 }],
      pieces: [{ length: 5, count: 3 }],
    });
    expect([cut.cost, cut.proved]).toEqual([2, true]);
  });
  test("longest first would take a fifth length where four are enough", async () => {
    // 6 + 2 + 2, 4 + 3 + 3: worked by hand
    const pieces = strips([6, 4, 3, 3, 2, 2, 6, 4, 3, 3, 2, 2]);
    const cut = await cutLengths({ stocks: [{ length: 10, count: endless, cost: 1 }], pieces }, solver.solve);
    expect([cut.cost, cut.bound, cut.proved]).toEqual([4, 4, true]);
  });
  test("of two lengths in stock the one is taken that leaves less", async () => {
    const stocks = [
      { length: 100, count: 5 },
      { length: 60, count: 5 },
    ];
    const cut = await cutLengths({ stocks, pieces: [{ length: 30, count: 4 }] }, solver.solve);
    expect([cut.cost, cut.proved]).toEqual([120, true]);
  });
  test("what is too long or no longer in stock is named as missing", async () => {
    const stocks = [{ length: 100, count: 1 }];
    const cut = await cutLengths(
      {
        stocks,
        pieces: [
          { length: 60, count: 2 },
          { length: 120, count: 1 },
        ],
      },
      solver.solve,
    );
    expect([[...cut.missing], cut.proved]).toEqual([[1, 1], false]);
  });
  test("every piece is cut once, no pattern is longer than its stock, no bound above its cost", async () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(lengths, async (list) => {
        const pieces = strips(list);
        const cut = await cutLengths({ stocks: [{ length: 100, count: endless, cost: 1 }], pieces });
        for (const { counts } of cut.patterns)
          expect(
            counts.reduce((sum, count, n) => sum + count * (pieces[n]?.length ?? 0), 0),
          ).toBeLessThanOrEqual(100);
        const done = pieces.map((_, n) =>
          cut.patterns.reduce((sum, { counts, times }) => sum + times * (counts[n] ?? 0), 0),
        );
        expect(done).toEqual(pieces.map(({ count }) => count));
        expect(cut.bound).toBeLessThanOrEqual(cut.cost);
        expect(cut.bound).toBeGreaterThanOrEqual(
          Math.ceil(list.reduce((sum, each) => sum + each, 0) / 100 - 1e-9),
        );
      }),
      { numRuns: 40, seed: 1 },
    );
  });
});

// Optima: Falkenauer and Waescher sets as listed by BPPLIB, read in rafaelmartinelli/BPPLib.jl.
const published = new URL("../../../../../shared/data/packing/bin-packing-1d.json", import.meta.url);
if (existsSync(published)) {
  type Instance = { name: string; capacity: number; items: number[]; optimal: number };
  const { instances } = JSON.parse(readFileSync(published, "utf8")) as { instances: Instance[] };
  const some = instances.filter(({ name }) => /u120_0[0-4]|t120_00|TEST0022|TEST0065/.test(name));
  test.each(some)(
    "$name is cut from as few lengths as published, proved",
    async ({ capacity, items, optimal }) => {
      const cut = await cutLengths(
        { stocks: [{ length: capacity, count: endless, cost: 1 }], pieces: strips(items) },
        solver.solve,
      );
      expect([cut.cost, cut.proved]).toEqual([optimal, true]);
    },
    120_000,
  );
} else
  test.skip("skipped: the published lengths of ../shared/data/packing are not beside the project", () => {});
