import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { betaPert } from "../../../../src/core/plan/risk/beta-pert.ts";
import { quantileOf } from "../../../../src/core/plan/risk/quantile.ts";

describe("one in ten, half, nine in ten", () => {
  // Definition 1 of Hyndman and Fan (1996): the k-th of n values for (k − 1)/n < share ≤ k/n.
  test.each([
    [200, 0.1, 20],
    [200, 0.5, 100],
    [200, 0.9, 180],
    [28, 0.1, 3],
    [28, 0.9, 26],
    [50, 0.9, 45],
    [1, 0.1, 1],
  ])("of the values 1 to %i the share %f is reached at %i", (n, share, value) =>
    expect(
      quantileOf(
        Int32Array.from({ length: n }, (_, k) => k + 1),
        share,
      ),
    ).toBe(value),
  );
  test("at least that share lies at or below it, and less than that share below it", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1 }),
        fc.constantFrom(0.1, 0.5, 0.9),
        (values, share) => {
          const sorted = values.sort((a, b) => a - b);
          const value = quantileOf(sorted, share);
          expect(sorted.filter((each) => each <= value).length / sorted.length).toBeGreaterThanOrEqual(
            share - 1e-9,
          );
          expect(sorted.filter((each) => each < value).length / sorted.length).toBeLessThan(share);
        },
      ),
    );
  });
});

describe("a low-typical-high band by chance", () => {
  const band = (low: number, typical: number, high: number) => ({ low, typical, high });
  const US = Array.from({ length: 999 }, (_, k) => (k + 1) / 1000);
  /** Most by which the share below a draw is off the draw's own u. */
  const worst = (typical: number, shareBelow: (x: number) => number): number =>
    Math.max(...US.map((u) => Math.abs(shareBelow(betaPert(band(0, typical, 1), u)) - u)));
  // Distribution functions of the beta distribution with whole parameters are binomial sums: Abramowitz and Stegun, 26.5.6 and 26.5.24 (from memory).
  test("typical in the middle: Beta(3, 3), x³(10 − 15x + 6x²)", () =>
    expect(worst(0.5, (x) => x ** 3 * (10 - 15 * x + 6 * x * x))).toBeLessThan(0.002));
  test("typical at a quarter: Beta(2, 4), 1 − (1 − x)⁵ − 5x(1 − x)⁴", () =>
    expect(worst(0.25, (x) => 1 - (1 - x) ** 5 - 5 * x * (1 - x) ** 4)).toBeLessThan(0.002));
  test("typical at the low end: Beta(1, 5), 1 − (1 − x)⁵", () =>
    expect(worst(0, (x) => 1 - (1 - x) ** 5)).toBeLessThan(0.003));
  test("the mean is the plan's 1-4-1 weighting, within a thousandth of the width", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (place) => {
        const mean = US.reduce((sum, u) => sum + betaPert(band(2, 2 + 9 * place, 11), u), 0) / US.length;
        expect(Math.abs(mean - (2 + 4 * (2 + 9 * place) + 11) / 6)).toBeLessThan(9e-3);
      }),
      { numRuns: 50 },
    );
  });
  test("it rises with the draw and never leaves the band", () => {
    const values = [0, ...US, 0.99999].map((u) => betaPert(band(4, 5, 30), u));
    expect(values).toEqual([...values].sort((a, b) => a - b));
    expect(values[0]).toBeGreaterThanOrEqual(4);
    expect(values.at(-1)).toBeLessThanOrEqual(30);
    expect(betaPert(band(8, 8, 8), 0.3)).toBe(8);
  });
});
