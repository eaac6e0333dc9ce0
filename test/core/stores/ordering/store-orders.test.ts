import { describe, expect, test } from "vitest";
import { storeOrders } from "../../../../src/core/stores/ordering/store-orders.ts";
import { needOf } from "../../../../src/core/stores/projection/need.ts";
import { runDown } from "../../../../src/core/stores/projection/run-down.ts";
import { NO_SPREAD, type UseSpread } from "../../../../src/core/stores/projection/spread.ts";
import { addDays, type Day } from "../../../../src/core/units/day.ts";

const monday = "2026-06-01" as Day;
const store = {
  id: "sponges",
  name: "sponges",
  use: "k-sponge-light",
  unit: "pc",
  onHand: 100,
  pack: 24,
  leadDays: 56,
  route: "air",
};
const ordered = (days: number, keepsDays: number | null, spread: UseSpread = NO_SPREAD, its = store) => {
  const need = needOf(new Float64Array(days).fill(1), spread);
  const along = (line: Float64Array) => runDown(its, [], line, monday);
  return storeOrders(its, { expected: along(need.mid), more: along(need.high) }, monday, keepsDays);
};

describe("orders of a store", () => {
  test("what keeps to the end comes at once", () => {
    const [order, ...more] = ordered(500, null);
    expect(more).toEqual([]);
    expect(order).toMatchObject({
      packs: 19,
      quantity: 456,
      neededBy: addDays(monday, 100),
      orderBy: addDays(monday, 23),
    });
    expect(order?.keepsUntil).toBeUndefined(); // 400 short and a tenth: 440, nineteen packs of 24
  });
  test("what keeps a year only comes in two, the second before the first is past its date", () => {
    const [first, second, ...more] = ordered(500, 365);
    expect(more).toEqual([]);
    expect(first?.keepsUntil).toBe(addDays(monday, 23 + 56 + 365)); // ordered on day 23, eight weeks, a year
    expect(second?.neededBy).toBe(addDays(monday, 23 + 56 + 365 + 1));
    expect((first?.quantity ?? 0) + (second?.quantity ?? 0)).toBeGreaterThanOrEqual(400 * 1.1);
  });
  test("where use may be far higher the order goes off sooner, and no larger", () => {
    const [calm, wild] = [ordered(300, null)[0], ordered(300, null, { all: 0.5, each: 0 })[0]];
    expect((wild?.orderBy ?? "") < (calm?.orderBy ?? "")).toBe(true);
    expect(wild?.quantity).toBe(calm?.quantity);
  });
  test("a last day to order stands before every other", () => {
    const its = { ...store, orderBy: addDays(monday, 4) };
    expect(ordered(500, null, NO_SPREAD, its)[0]?.orderBy).toBe(addDays(monday, 4));
  });
  test("packs are chosen by their price", () => {
    const its = {
      ...store,
      packs: [
        { size: 24, price: 30 },
        { size: 100, price: 99 },
      ],
    };
    expect(ordered(280, null, NO_SPREAD, its)[0]).toMatchObject({
      quantity: 200, // 180 short and a tenth: 198
      packing: { cost: 198, packs: [{ size: 100, count: 2, price: 99 }] },
    });
  });
});
