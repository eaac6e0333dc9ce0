import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { looksFor } from "../../../../src/core/plan/sample/looks-for.ts";
import { binomialInterval, lotInterval } from "../../../../src/core/plan/sample/share-interval.ts";

describe("a share seen in a sample", () => {
  // Newcombe 1998, Statistics in Medicine 17, 857-872, table I, method 5, 95 % (from memory; the same to four places in SciPy 1.17.1).
  test.each([
    [81, 263, 0.2527, 0.3676],
    [15, 148, 0.0578, 0.1617],
    [0, 20, 0, 0.1684],
    [1, 29, 0.0009, 0.1776],
  ])("%d of %d: the ends of the published table", (found, looked, low, high) => {
    const ends = binomialInterval({ looked, found });
    expect(ends.low).toBeCloseTo(low, 4);
    expect(ends.high).toBeCloseTo(high, 4);
  });
  // NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1: 4 defective of 20, 90 % (from memory).
  test("4 of 20, nine in ten sure, is 0.071354 to 0.40103 as in the engineers' handbook", () => {
    const ends = binomialInterval({ looked: 20, found: 4 }, 0.9);
    expect(ends.low).toBeCloseTo(0.071354, 6);
    expect(ends.high).toBeCloseTo(0.40103, 5);
  });
  // SciPy 1.17.1, binomtest(found, looked).proportion_ci(sureness, method="exact").
  test.each([
    [14, 90, 0.95, 0.08773586461618244, 0.24720258014589797],
    [682, 925, 0.95, 0.707668264079039, 0.7654065582414781],
    [20, 20, 0.95, 0.8315665290169145, 1],
    [3, 7, 0.9, 0.1287563928042363, 0.7746784159675543],
  ])(
    "%d of %d agrees with a general statistics library to nine places",
    (found, looked, sureness, low, high) => {
      const ends = binomialInterval({ looked, found }, sureness);
      expect(ends.low).toBeCloseTo(low, 9);
      expect(ends.high).toBeCloseTo(high, 9);
    },
  );
});

describe("a share seen in a lot of so many", () => {
  // Every count of marked items tried against the two tails of SciPy 1.17.1, scipy.stats.hypergeom, 95 %.
  test.each([
    [14, 90, 6000, 530, 1479],
    [14, 90, 120, 15, 24],
    [0, 30, 210, 0, 22],
    [3, 10, 40, 4, 24],
    [30, 30, 31, 30, 31],
    [7, 60, 940, 47, 208],
    [1, 29, 100, 1, 15],
  ])("%d of %d looked at, %d in all: the fewest and the most", (found, looked, all, low, high) => {
    expect(lotInterval({ looked, found }, all)).toMatchObject({ lowItems: low, highItems: high });
  });
  test("with all looked at nothing is open", () => {
    expect(lotInterval({ looked: 41, found: 17 }, 41)).toMatchObject({ lowItems: 17, highItems: 17 });
  });
  test("with none looked at everything is", () => {
    expect(lotInterval({ looked: 0, found: 0 }, 37)).toMatchObject({ low: 0, high: 1 });
    expect(lotInterval({ looked: 0, found: 0 }, 0)).toMatchObject({ lowItems: 0, highItems: 0 });
  });
  test("it holds what was seen, is no wider than the endless one but for one item, and tends to it", () =>
    fc.assert(
      fc.property(fc.nat(200), fc.nat(200), fc.nat(2000), (a, b, rest) => {
        const [found, looked] = [Math.min(a, b), Math.max(a, b, 1)];
        const all = looked + rest;
        const lot = lotInterval({ looked, found }, all);
        const endless = binomialInterval({ looked, found });
        expect(lot.lowItems).toBeGreaterThanOrEqual(found);
        expect(lot.highItems).toBeLessThanOrEqual(all - looked + found);
        expect(lot.low).toBeGreaterThanOrEqual(endless.low - 1 / all);
        expect(lot.high).toBeLessThanOrEqual(endless.high + 1 / all);
      }),
      { seed: 12, numRuns: 300 },
    ));
  test("what is not there is there the other way round", () => {
    const seen = lotInterval({ looked: 90, found: 14 }, 600);
    const rest = lotInterval({ looked: 90, found: 76 }, 600);
    expect([600 - rest.highItems, 600 - rest.lowItems]).toEqual([seen.lowItems, seen.highItems]);
  });
});

describe("how many to look at", () => {
  test("some 400 tell any share to five points", () => {
    // Common practice, no source: 400 random items give about ± 5 points.
    expect(looksFor(0.05, 0.5, null)).toBeGreaterThan(380);
    expect(looksFor(0.05, 0.5, null)).toBeLessThan(415);
  });
  test("a small lot asks fewer, a rarer share fewer still, never more than there are", () => {
    expect(looksFor(0.05, 0.5, 600)).toBeLessThan(looksFor(0.05, 0.5, 6000));
    expect(looksFor(0.05, 0.1, 6000)).toBeLessThan(looksFor(0.05, 0.5, 6000));
    expect(looksFor(0.05, 0.5, 11)).toBeLessThanOrEqual(11);
  });
  test("the number found is enough and one look less is not", () => {
    const n = looksFor(0.05, 0.5, 6000);
    const width = (looked: number): number => {
      const { low, high } = lotInterval({ looked, found: Math.round(looked / 2) }, 6000);
      return high - low;
    };
    expect(width(n)).toBeLessThanOrEqual(0.1);
    expect(width(n - 1)).toBeGreaterThan(0.1);
  });
});
