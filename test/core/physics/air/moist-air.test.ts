import { existsSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { models } from "../../../../scripts/checks/models/moist-air.ts";
import * as air from "../../../../src/core/physics/air/moist-air.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { between, holdsForAll } from "../holds-for-all.ts";
import { claimPublishedRows } from "../published-rows.ts";

claimPublishedRows("moist-air.json", models);

const dryBulbs = between(-40, 80);
const relHums = between(0.01, 1);
const pressures = between(60_000, 110_000);

describe("saturation", () => {
  test("rises with temperature, without a step where ice meets water", () => {
    holdsForAll([between(-100, 199.9)], (t) => {
      expect(air.satVapourPressure(t + 0.1)).toBeGreaterThan(air.satVapourPressure(t));
    });
    const below = air.satVapourPressure(0.01);
    expect(air.satVapourPressure(0.01 + 1e-9) / below).toBeCloseTo(1, 5);
  });
  test("as a ratio is the quick form of the plain one", () => {
    holdsForAll([between(-40, 90), between(-40, 90)], (a, b) => {
      const plain = air.satVapourPressure(a) / air.satVapourPressure(b);
      expect(air.satPressureRatio(a, b) / plain).toBeCloseTo(1, 11);
    });
  });
  test("by Magnus's form is a little lower at room temperature, never by more than 0.6 % from 0 to 50 °C", () => {
    for (let t = 0; t <= 50; t += 0.5)
      expect(Math.abs(air.magnusPressureOverWater(t) / air.satVapourPressure(t) - 1)).toBeLessThan(0.006);
  });
  test.each([-100.001, 200.001, Number.NaN])("is refused at %d °C", (t) => {
    expect(() => air.satVapourPressure(t)).toThrow(OutOfRange);
  });
});

describe("turning round", () => {
  test("the dew point of saturated air is its temperature, from −100 to 200 °C and close to the triple point", () => {
    const all = fc.oneof(between(-100, 200), between(0, 0.02));
    holdsForAll([all], (t) => {
      expect(air.dewPointFromVapourPressure(air.satVapourPressure(t))).toBeCloseTo(t, 5);
    });
  });
  test("humidity ratio gives the relative humidity back", () => {
    holdsForAll([dryBulbs, relHums, pressures], (t, phi, p) => {
      expect(air.relHumFromHumidityRatio(t, air.humidityRatioFromRelHum(t, phi, p), p)).toBeCloseTo(phi, 9);
    });
  });
  test("wet bulb gives the humidity ratio back, where the reading is not between ice and water", () => {
    holdsForAll([dryBulbs, relHums, pressures], (t, phi, p) => {
      const wet = air.wetBulbFromRelHum(t, phi, p);
      fc.pre(phi < 1 && Math.abs(wet) > 1e-3);
      const W = air.humidityRatioFromRelHum(t, phi, p);
      expect(Math.abs(air.humidityRatioFromWetBulb(t, wet, p) - W)).toBeLessThan(1e-8 + 1e-6 * W);
    });
  });
});

describe("moist air", () => {
  test("has dew point, wet bulb and dry bulb in that order above freezing", () => {
    holdsForAll([between(15, 60), between(0.35, 0.99)], (t, phi) => {
      const wet = air.wetBulbFromRelHum(t, phi);
      expect(air.dewPointFromRelHum(t, phi)).toBeLessThan(wet);
      expect(wet).toBeLessThan(t);
    });
  });
  test("is lighter the damper it is", () => {
    holdsForAll([dryBulbs, between(0, 0.03)], (t, W) => {
      expect(air.densityFromHumidityRatio(t, W + 0.001)).toBeLessThan(air.densityFromHumidityRatio(t, W));
    });
  });
  test("at a colder surface has a higher relative humidity", () => {
    holdsForAll([dryBulbs, relHums, between(0.1, 15)], (t, phi, colder) => {
      expect(air.relHumAtSurface(t, phi, t - colder)).toBeGreaterThan(phi);
    });
  });
  test.each([-0.001, 1.001])("is refused at a relative humidity of %d", (phi) => {
    expect(() => air.vapourPressureFromRelHum(20, phi)).toThrow(/relative humidity is/);
  });
  test("that boils is refused", () => {
    expect(() => air.satHumidityRatio(110)).toThrow(OutOfRange);
  });
  test("so dry that it has no dew point above −100 °C is refused", () => {
    expect(() => air.dewPointFromRelHum(20, 0)).toThrow(OutOfRange);
  });
});

/** ASHRAE 2017 ch. 1 tables 1 to 3 and worked values of an open psychrometrics library's tests; kept beside the project, not in it. */
const pointsFile = new URL("../../../../../shared/data/psychrometrics/reference-points.csv", import.meta.url);
type Read = (a: number, b: number, c: number) => number;
const byQuantity: Record<string, Read> = {
  "saturation vapour pressure": (t) => air.satVapourPressure(t),
  "saturation humidity ratio": (t, p) => air.satHumidityRatio(t, p),
  "humidity ratio of vapour pressure Pa": (pW, p) => air.humidityRatioFromVapourPressure(pW, p),
  "humidity ratio of dry bulb C": (t, wet, p) => air.humidityRatioFromWetBulb(t, wet, p),
  "wet bulb": (t, phi, p) => air.wetBulbFromRelHum(t, phi, p),
  "vapour pressure": (t, phi) => air.vapourPressureFromRelHum(t, phi),
  "moist air enthalpy": (t, W) => air.enthalpyFromHumidityRatio(t, W),
  "moist air volume": (t, W, p) => air.specificVolumeFromHumidityRatio(t, W, p),
  "moist air density": (t, W, p) => air.densityFromHumidityRatio(t, W, p),
  "dry air volume": (t, p) => air.specificVolumeFromHumidityRatio(t, 0, p),
  "standard pressure": (altitude) => air.pressureFromAltitude(altitude),
  "specific humidity": (W) => air.specificHumidityFromHumidityRatio(W),
};

if (existsSync(pointsFile)) {
  const rows = readFileSync(pointsFile, "utf8")
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(","));
  describe("the reference points of shared/data/psychrometrics", () => {
    test.each(rows)("%s: %s %s, %s %s, %s %s is %s %s", (...row) => {
      const [quantity = "", given = "", a, , b, , c, result, , tolerance, kind] = row;
      const read = byQuantity[quantity] ?? byQuantity[`${quantity} of ${given}`];
      const room = Number(tolerance) * (kind === "relative" ? Math.abs(Number(result)) : 1);
      const got = read?.(Number(a), Number(b), Number(c)) ?? Number.NaN;
      expect(Math.abs(got - Number(result))).toBeLessThanOrEqual(room * (1 + 1e-9));
    });
  });
} else
  test.skip("skipped: the reference points of ../shared/data/psychrometrics are not beside the project", () => {});
