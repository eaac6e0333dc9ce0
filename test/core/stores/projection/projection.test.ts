import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { needOf } from "../../../../src/core/stores/projection/need.ts";
import { onTheWay } from "../../../../src/core/stores/projection/on-the-way.ts";
import { runDown } from "../../../../src/core/stores/projection/run-down.ts";
import { NO_SPREAD, planSpread, useSpread } from "../../../../src/core/stores/projection/spread.ts";
import { addDays, type Day } from "../../../../src/core/units/day.ts";

const monday = "2026-06-01" as Day;
const daily = (quantity: number, days: number) => new Float64Array(days).fill(quantity);
const sums = (quantity: number, days: number) => needOf(daily(quantity, days), NO_SPREAD).mid;
const store = (onHand: number, expires?: Day) => ({
  ...{ id: "s", name: "s", use: "k-mask", unit: "pc", onHand, pack: 10, leadDays: 20, route: "air" },
  ...(expires ? { expires } : {}),
});

describe("what will have been used", () => {
  // Re-order point with variable demand, worked example of a textbook of management science as quoted at flylib.com (book 3.287.1.225):
  // 30 a day with a deviation of 5, lead 10 days, z 1.65: 300 + 1.65 · 5 · √10 = 326.1.
  test("over a lead time of ten days, each off by itself, it is the textbook's re-order point of 326.1", () => {
    const need = needOf(daily(30, 10), { all: 0, each: 5 / 30 }, 1.65);
    expect(need.high[9]).toBeCloseTo(326.1, 1);
  });
  test("days off by themselves even out, a team off by itself does not", () => {
    const [byDay, byTeam] = [
      { all: 0, each: 0.2 },
      { all: 0.2, each: 0 },
    ].map((spread) => needOf(daily(4, 100), spread));
    expect((byDay?.high[99] ?? 0) / 400).toBeCloseTo(1 + (1.2816 * 0.2) / 10, 6);
    expect((byTeam?.high[99] ?? 0) / 400).toBeCloseTo(1 + 1.2816 * 0.2, 6);
  });
  test("the lines never fall and never cross", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 1, maxLength: 60 }),
        (use) => {
          const { low, mid, high } = needOf(Float64Array.from(use), { all: 0.3, each: 0.6 });
          use.forEach((_, d) => {
            expect(low[d]).toBeLessThanOrEqual((mid[d] ?? 0) + 1e-9);
            expect(mid[d]).toBeLessThanOrEqual((high[d] ?? 0) + 1e-9);
            if (d > 0) expect(low[d]).toBeGreaterThanOrEqual(low[d - 1] ?? 0);
          });
        },
      ),
    );
  });
  test("fifteen measured sessions halve the variance of the team, none leave the band whole", () => {
    const band = { low: 1, typical: 2, high: 3 };
    const whole = Math.sqrt(1 / 6) / 2; // triangular 1, 2, 3: variance (3 − 1)² / 24
    expect(useSpread(band, 0, 0).all).toBeCloseTo(whole, 9);
    expect(useSpread(band, 15, 0).all ** 2).toBeCloseTo(whole ** 2 / 2, 9);
  });
  test("a plan that ends between 80 and 120 days in four campaigns of five spreads its use by a sixth", () => {
    const finish = {
      ...{ p10: addDays(monday, 80), p50: addDays(monday, 100), p90: addDays(monday, 120) },
      ...{ boxed: { p10: 1, p50: 1, p90: 1 }, draws: 9, unfinished: 0 },
    };
    expect(planSpread(finish, monday)).toBeCloseTo(40 / (2 * 1.2816 * 100), 9);
  });
});

describe("a store that runs down", () => {
  test("25 last twelve days at two a day: on the thirteenth one is short", () => {
    expect(runDown(store(25), [], sums(2, 20), monday)).toMatchObject({ outOn: 12, lost: 0 });
  });
  test("what has a date is used first, and what is left of it the day after is gone", () => {
    const run = runDown(store(30, addDays(monday, 9)), [{ at: 5, quantity: 40 }], sums(2, 40), monday);
    expect(run.lost).toBe(10); // ten days of two
    expect(run.outOn).toBe(30); // then 40 last twenty days
  });
  test("nothing is won or lost: what there was and what came is used, left, short or past its date", () => {
    fc.assert(
      fc.property(fc.nat(50), fc.nat(30), fc.nat(40), fc.nat(59), (onHand, late, quantity, at) => {
        const need = sums(1.5, 60);
        const run = runDown(store(onHand, addDays(monday, late)), [{ at, quantity }], need, monday);
        expect((run.level[59] ?? 0) + run.lost + 90).toBeCloseTo(onHand + quantity, 9);
      }),
    );
  });
});

describe("a delivery on its way", () => {
  const coming = (at: number, quantity: number) => ({ store: "s", day: addDays(monday, at), quantity });
  test("the day the store would be short without it, and how much of it must come until an order could be here", () => {
    const [only] = onTheWay(store(30), [coming(10, 100)], sums(2, 60), monday);
    expect(only).toMatchObject({ outWithout: addDays(monday, 15), least: 10 }); // 20 days to an order: 40 needed, 30 here
  });
  test("one that is not needed may stay away", () => {
    const [only] = onTheWay(store(300), [coming(10, 100)], sums(2, 60), monday);
    expect(only).toMatchObject({ outWithout: null, least: 0 });
  });
  test("one that comes after the store is empty is too late by itself", () => {
    const [only] = onTheWay(store(10), [coming(30, 100)], sums(2, 60), monday);
    expect(only?.outWithout).toBe(addDays(monday, 5));
  });
});
