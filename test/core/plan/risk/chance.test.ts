import { describe, expect, test } from "vitest";
import { chanceAt, hashOf, keyOf, triangular } from "../../../../src/core/plan/chance.ts";

describe("draws by name", () => {
  // Test vectors of MurmurHash3_x86_32 as its implementers pass them around (public domain; from memory).
  test.each([
    [0, [], 0],
    [1, [], 0x514e28b7],
    [0xffffffff, [], 0x81f16f39],
    [0, [0xffffffff], 0x76293b50],
    [0, [0x87654321], 0xf55b516b],
    [0x5082edee, [0x87654321], 0x2362f9de],
  ] as [number, number[], number][])("seed %i and words %j hash as published", (seed, words, hash) =>
    expect(hashOf(seed, words)).toBe(hash),
  );
  test("a draw stays the same whatever is drawn beside it", () => {
    const item = keyOf("B00049");
    const alone = chanceAt(7, item, 3);
    for (const other of ["B00048", "B00050", "P1"]) chanceAt(7, keyOf(other), 3);
    expect(chanceAt(7, item, 3)).toBe(alone);
  });
  test("ten thousand draws of neighbours fill ten tenths evenly, and a draw says nothing of the next", () => {
    const draws = Array.from({ length: 10_000 }, (_, k) => chanceAt(1, k, 0));
    const tenths = new Array<number>(10).fill(0);
    for (const u of draws) tenths[Math.floor(10 * u)] = (tenths[Math.floor(10 * u)] ?? 0) + 1;
    const chiSquare = tenths.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    expect(chiSquare).toBeLessThan(27.877); // 99.9 % point, 9 degrees of freedom: NIST/SEMATECH e-Handbook, table 1.3.6.7.4
    const products = draws.slice(1).map((u, k) => (u - 0.5) * ((draws[k] ?? 0) - 0.5));
    const correlation = (12 * products.reduce((sum, each) => sum + each, 0)) / products.length;
    expect(Math.abs(correlation)).toBeLessThan(0.033); // 3.3 standard errors of 1/√10,000
  });
});

// Closed form of the triangular distribution: Evans, Hastings and Peacock, Statistical Distributions, chapter Triangular (from memory).
test("triangular draws are the inverse of the triangle's area", () => {
  const [low, typical, high] = [3, 7, 19];
  for (const u of [0.01, 0.2, 0.25, 0.5, 0.9, 0.999]) {
    const x = triangular(low, typical, high, u);
    const area =
      x < typical
        ? (x - low) ** 2 / ((high - low) * (typical - low))
        : 1 - (high - x) ** 2 / ((high - low) * (high - typical));
    expect(area).toBeCloseTo(u, 12);
  }
});
