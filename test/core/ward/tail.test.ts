import { describe, expect, test } from "vitest";
import { models } from "../../../scripts/checks/models/forecast.ts";
import { OutOfRange } from "../../../src/core/physics/out-of-range.ts";
import {
  aitkenAsymptote,
  dryMassFromWet,
  tailFromWeighings,
  timeToTarget,
} from "../../../src/core/ward/tail.ts";
import { between, holdsForAll } from "../physics/holds-for-all.ts";
import { claimPublishedRows } from "../physics/published-rows.ts";

claimPublishedRows("forecast.json", models);

/** Hemlock slab of Gilliland and Sherwood, quoted in Seader and Henley, Separation Process Principles, ch. 18. */
const hemlock = [
  [6, 57.2],
  [7, 51.7],
  [8, 46.1],
  [9, 41.8],
  [10, 38.5],
  [12, 30.8],
].map(([hours = 0, percent = 0]) => ({ hours, moistureContent: percent / 100 }));

describe("the tail", () => {
  test("fitted on 6 to 12 h foretells the 14.3 % point of the hemlock slab at 21.5 h; it came at 20", () => {
    const tail = tailFromWeighings(hemlock, 0.066);
    const at = 12 + timeToTarget(0.308, 0.143, 0.066, tail?.rate ?? 0);
    expect(at).toBeGreaterThan(20);
    expect(at).toBeLessThan(22);
  });
  test("returns what a pure exponential was made of", () =>
    holdsForAll(
      [between(0.001, 0.2), between(0.01, 0.5), between(0.02, 0.1)],
      (rate, amplitude, asymptote) => {
        const weighed = [3, 11, 17, 29].map((hours) => ({
          hours,
          moistureContent: asymptote + amplitude * Math.exp(-rate * hours),
        }));
        const tail = tailFromWeighings(weighed, asymptote);
        expect((tail?.rate ?? 0) / rate).toBeCloseTo(1, 4);
        expect((tail?.amplitude ?? 0) / amplitude).toBeCloseTo(1, 4);
      },
    ));
  test("is not there when the weight rises or only one weighing lies above the asymptote", () => {
    expect(
      tailFromWeighings(
        [...hemlock].map((each) => ({ ...each, hours: -each.hours })),
        0.066,
      ),
    ).toBeNull();
    expect(tailFromWeighings(hemlock.slice(0, 1), 0.066)).toBeNull();
  });
  test("never reaches what lies at its asymptote", () => {
    expect(() => timeToTarget(0.09, 0.065, 0.065, 0.1)).toThrow(OutOfRange);
  });
});

test("a fitted asymptote is worthless: Aitken on the hemlock slab returns −5.0 where 6.6 was true", () => {
  expect(aitkenAsymptote(46.1, 26.4, 14.3)).toBeCloseTo(-5.0, 1);
  expect(aitkenAsymptote(9, 8, 7)).toBeNull();
});

test("dry matter and water make up the damp mass", () =>
  holdsForAll([between(1, 1e5), between(0, 2)], (wet, content) => {
    const { dry, water } = dryMassFromWet(wet, content);
    expect((dry + water) / wet).toBeCloseTo(1, 12);
    expect(water / dry).toBeCloseTo(content, 9);
  }));
