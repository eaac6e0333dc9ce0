import { describe, expect, test } from "vitest";
import { models } from "../../../../scripts/checks/models/mould.ts";
import {
  ashrae160Of2009,
  criticalRelHum,
  dosePerDay,
  NO_GROWTH_RELHUM,
  passesAshrae160Of2009,
  passesAshrae160Of2016,
  upperCriticalRelHum,
  WATER_ACTIVITY_MINIMA,
} from "../../../../src/core/physics/mould/mould-limits.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { between, holdsForAll } from "../holds-for-all.ts";
import { claimPublishedRows } from "../published-rows.ts";

claimPublishedRows("mould-limits.json", models);

describe("the parabola", () => {
  test("is lowest at 27 °C", () => {
    holdsForAll([between(1, 30)], (t) => {
      expect(criticalRelHum(t, "a")).toBeGreaterThanOrEqual(criticalRelHum(27, "a"));
    });
    expect(criticalRelHum(27, "a")).toBeCloseTo(0.73653, 5);
  });
  test("lies higher for each less ready group, and the upper curve above the lower", () => {
    holdsForAll([between(1, 30)], (t) => {
      const rows = (["a", "b", "c", "d", "e"] as const).map((group) => criticalRelHum(t, group));
      expect([...rows].sort((a, b) => a - b)).toEqual(rows);
      expect(upperCriticalRelHum(t, "a")).toBeGreaterThan(criticalRelHum(t, "a"));
    });
  });
  test.each([0.9, 30.1])("is refused at %d °C", (t) =>
    expect(() => criticalRelHum(t, "a")).toThrow(OutOfRange),
  );
});

describe("the dose", () => {
  test("never falls as the air gets damper, but for the printed step at 75 %", () => {
    holdsForAll([between(1, 30), between(0, 0.98), between(0, 0.02)], (t, phi, more) => {
      const step = phi <= 0.75 && phi + more > 0.75 ? 0.02 : 1e-12;
      expect(dosePerDay(t, phi + more)).toBeGreaterThanOrEqual(dosePerDay(t, phi) - step);
    });
  });
  test("declines in frost", () => expect(dosePerDay(-5, 0.99)).toBe(-0.5));
  test.each([
    [30.1, 0.5],
    [20, 1.01],
  ])("is refused at %d °C, %d", (t, phi) => {
    expect(() => dosePerDay(t, phi)).toThrow(OutOfRange);
  });
});

describe("acceptance of buildings", () => {
  test("in 2009 counts the months of 5 to 40 °C and refuses 80 %", () => {
    expect([
      passesAshrae160Of2009(20, 0.8),
      passesAshrae160Of2009(4.9, 0.95),
      passesAshrae160Of2009(41, 0.95),
    ]).toEqual([false, true, true]);
  });
  test("since 2016 refuses index 3", () => {
    expect([passesAshrae160Of2016(2.99), passesAshrae160Of2016(3)]).toEqual([true, false]);
  });
  test("over a series looks at every 30 days: one damp month in four is found", () => {
    const hours = 24 * 120;
    const dryBulb = new Float64Array(hours).fill(18);
    const relHum = Float64Array.from({ length: hours }, (_, i) => (i >= 1000 && i < 1720 ? 0.83 : 0.6));
    const found = ashrae160Of2009(dryBulb, relHum, 1);
    expect(found?.passes).toBe(false);
    expect(found?.worstRelHum).toBeCloseTo(0.83, 9);
    expect(
      ashrae160Of2009(
        dryBulb,
        relHum.map((each) => each - 0.04),
        1,
      )?.passes,
    ).toBe(true);
    expect(ashrae160Of2009(dryBulb.subarray(0, 700), relHum.subarray(0, 700), 1)).toBeNull();
  });
});

test("no mould of the table grows where nothing grows", () => {
  for (const row of WATER_ACTIVITY_MINIMA)
    expect(row.least, row.organism).toBeGreaterThanOrEqual(NO_GROWTH_RELHUM);
});
