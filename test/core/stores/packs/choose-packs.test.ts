import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import type { PackSize } from "../../../../src/core/items/campaign.ts";
import { ProgrammeBuilder } from "../../../../src/core/plan/programme.ts";
import { choosePacks } from "../../../../src/core/stores/packs/choose-packs.ts";
import { startSolver } from "../../../../src/edge/solve/solver.ts";

const solver = startSolver();
afterAll(() => solver.close());

/** Every choice there is, by trying: cost, packs, units over. */
function bestByTrying(need: number, sizes: readonly PackSize[]): readonly [number, number, number] {
  let best: readonly [number, number, number] = [Infinity, Infinity, Infinity];
  const walk = (k: number, units: number, cost: number, packs: number): void => {
    if (units >= need) {
      const found = [cost, packs, units - need] as const;
      const at = found.findIndex((each, i) => each !== best[i]);
      if (at >= 0 && (found[at] ?? 0) < (best[at] ?? 0)) best = found;
      return;
    }
    for (let each = k; each < sizes.length; each++) {
      const { size, price = 1 } = sizes[each] as PackSize; // within its length
      walk(each, units + size, cost + price, packs + 1);
    }
  };
  walk(0, 0, 0, 0);
  return best;
}

const priced = fc.uniqueArray(
  fc.record({ size: fc.integer({ min: 2, max: 19 }), price: fc.integer({ min: 1, max: 30 }) }),
  { minLength: 1, maxLength: 4, selector: ({ size }) => size },
);

describe("which packs to send for", () => {
  test("a large pack that costs less than the small ones it replaces is taken, though more is left over", () => {
    const packing = choosePacks(88, [
      { size: 20, price: 8.5 },
      { size: 100, price: 35 },
    ]);
    expect(packing).toEqual({
      packs: [{ size: 100, price: 35, count: 1 }],
      quantity: 100,
      leftover: 12,
      cost: 35,
    });
  });
  test("at the same money fewer packs are taken", () => {
    expect(
      choosePacks(60, [
        { size: 20, price: 10 },
        { size: 60, price: 30 },
      ]).packs,
    ).toMatchObject([{ size: 60, count: 1 }]);
  });
  test("without a price the fewest packs are taken, of those the least left over, and no cost is said", () => {
    expect(choosePacks(105, [{ size: 20 }, { size: 100, price: 35 }])).toMatchObject({
      packs: [
        { size: 100, count: 1 },
        { size: 20, count: 1 },
      ],
      leftover: 15,
      cost: null,
    });
  });
  test("packs of half a litre and of two and a half are told apart", () => {
    expect(
      choosePacks(3.2, [
        { size: 0.5, price: 4 },
        { size: 2.5, price: 15 },
      ]),
    ).toMatchObject({ quantity: 3.5, cost: 23 });
  });
  test("no choice costs less, and none at that cost has fewer packs or less left over: held against every choice there is", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), priced, (need, sizes) => {
        const { cost, packs, leftover } = choosePacks(need, sizes);
        const count = packs.reduce((sum, each) => sum + each.count, 0);
        expect([cost, count, leftover]).toEqual(bestByTrying(need, sizes));
      }),
      { numRuns: 300 },
    );
  });
  test("a need of many thousands costs what an integer programme's optimum costs (HiGHS, a general solver)", async () => {
    const sizes = [
      { size: 24, price: 19 },
      { size: 35, price: 26 },
      { size: 90, price: 71 },
    ];
    for (const need of [997, 12_345, 83_611]) {
      const model = new ProgrammeBuilder();
      const counts = sizes.map(({ size, price }) => [model.column(price, 0, need, true), size] as const);
      model.row(need, Infinity, counts);
      const { status, objective } = await solver.solve(model.build(), { relaxed: false, gap: 0 });
      expect(status).toBe("optimal");
      expect(choosePacks(need, sizes).cost).toBe(Math.round(objective));
    }
  });
  // Frobenius number of 6, 9 and 20, the largest count they cannot make up: MathWorld, "Frobenius Number".
  test("43 is the largest number that packs of 6, 9 and 20 cannot hold exactly", () => {
    const sizes = [6, 9, 20].map((size) => ({ size, price: size }));
    expect(choosePacks(43, sizes).leftover).toBe(1);
    for (let need = 44; need < 400; need++) expect(choosePacks(need, sizes).leftover).toBe(0);
  });
  test("packs bought at once do not make a choice worse: a need and ten thousand large packs more", () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 900 }), priced, (need, sizes) => {
        const best = [...sizes].sort(
          (a, b) => a.price / a.size - b.price / b.size || b.size - a.size,
        )[0] as PackSize;
        const [small, large] = [need, need + 10_000 * best.size].map(
          (each) => choosePacks(each, sizes).cost ?? 0,
        );
        expect(large).toBeCloseTo((small ?? 0) + 10_000 * (best.price ?? 0), 6);
      }),
    );
  });
});
