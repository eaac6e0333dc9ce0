import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { type Boxed, boxFor, lyingFlat } from "../../../../src/core/stores/assortment/box-need.ts";
import { chooseSizes } from "../../../../src/core/stores/assortment/choose-sizes.ts";
import { fitChance } from "../../../../src/core/stores/assortment/fit-chance.ts";
import { costOfChoice } from "../../../../src/core/stores/assortment/interchange.ts";
import { chooseSites } from "../../../../src/core/stores/assortment/p-median.ts";
import { startSolver } from "../../../../src/edge/solve/solver.ts";

const solver = startSolver();
afterAll(() => solver.close());
const costs = { ownMinutes: 30, minutesPerLitre: 0.5 };
const asked = { clearance: 8, costs, share: 0.95, most: 4 };
const books = (height: number, width: number, thickness: number, count: number, kind = "book"): Boxed[] =>
  Array.from({ length: count }, (_, n) => ({
    id: `${height}-${n}`,
    kind,
    size: lyingFlat(height, width, thickness),
  }));

describe("box sizes to order", () => {
  test("a box has its clearance in every direction and is ordered by the centimetre", () => {
    expect(boxFor(lyingFlat(165, 240, 32), 8)).toEqual({ length: 250, width: 180, depth: 40 });
  });
  test("two sorts of books take two sizes without padding; one size holds both with padding", async () => {
    const { choices } = await chooseSizes(
      [...books(242, 162, 32, 10), ...books(392, 282, 42, 5)],
      asked,
      solver.solve,
    );
    expect(choices.map(({ sizes }) => sizes.length)).toEqual([1, 2]);
    expect(choices[1]?.minutes).toBe(0);
    // ten books of 250 × 170 × 40 in boxes of 400 × 290 × 50: 5.8 − 1.7 litres each, half a minute a litre
    expect(choices[0]?.minutes).toBeCloseTo(10 * 4.1 * 0.5, 6);
  });
  test("one giant among many is made to measure, unless all must fit", async () => {
    const items = [...books(242, 162, 32, 99), ...books(900, 600, 90, 1)];
    const [one] = (await chooseSizes(items, asked, solver.solve)).choices;
    expect([one?.share, one?.ownMinutes]).toEqual([0.99, 30]);
    const [all] = (await chooseSizes(items, { ...asked, share: 1 }, solver.solve)).choices;
    expect(all?.share).toBe(1);
  });
  test("one more size never costs more work", async () => {
    const items = [200, 230, 260, 300, 340].flatMap((mm, n) => books(mm, 150 + 20 * n, 20 + 10 * n, 3 + n));
    const { choices } = await chooseSizes(items, asked, solver.solve);
    choices.slice(1).forEach(({ minutes }, n) => {
      expect(minutes).toBeLessThanOrEqual((choices[n]?.minutes ?? 0) + 0.1);
    });
    expect(choices.every(({ proved }) => proved)).toBe(true);
  });
  test("fewer measured items of a kind give a wider range", () => {
    const size = { length: 250, width: 180, depth: 40 };
    const unmeasured = Array.from(
      { length: 200 },
      (_, n): Boxed => ({ id: `u${n}`, kind: "book", size: null }),
    );
    const spread = (times: number): number => {
      const items = [...books(240, 165, 30, 8 * times), ...books(300, 165, 30, 2 * times), ...unmeasured];
      const { share } = fitChance(items, [size], { clearance: 8, costs, tolerance: 0, draws: 200, seed: 1 });
      return share.p90 - share.p10;
    };
    expect(spread(1)).toBeGreaterThan(spread(20));
  });
});

describe("choosing sites", () => {
  test("no choice of as many sites is cheaper, tried one by one", async () => {
    const table = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 48, maxLength: 48 });
    await fc.assert(
      fc.asyncProperty(table, async (costTable) => {
        const problem = {
          clients: 6,
          sites: 8,
          costs: Float64Array.from(costTable),
          without: new Float64Array(6).fill(30),
          choose: 2,
        };
        const pairs = [...Array(8).keys()].flatMap((a) => [...Array(a).keys()].map((b) => [a, b]));
        const least = Math.min(...pairs.map((pair) => costOfChoice(problem, pair)));
        const found = await chooseSites(problem, solver.solve, { steps: 200, step: 1 });
        expect([found.cost, found.proved]).toEqual([least, true]);
      }),
      { numRuns: 30, seed: 1 },
    );
  });
});
