import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { models } from "../../../../scripts/checks/models/mould.ts";
import {
  GROWTH_CLASSES,
  type GrowthClass,
  growthAfter,
  growthClassFor,
  growthRelHum,
  hoursToIndex,
  INDEX_WORDS,
  indexAfterDecline,
  indexAfterGrowth,
  indexCeiling,
  isGrowing,
  weeksToFirstGrowth,
} from "../../../../src/core/physics/mould/mould-growth.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { between, holdsForAll } from "../holds-for-all.ts";
import { claimPublishedRows } from "../published-rows.ts";

claimPublishedRows("mould-growth.json", models);

const classes = Object.values(GROWTH_CLASSES);
const anyClass = between(0, 3.999);
const classAt = (n: number): GrowthClass => classes[Math.floor(n)] as GrowthClass;
const verySensitive = GROWTH_CLASSES["very-sensitive"];

describe("growth", () => {
  test("a damper hour never grows less", () => {
    holdsForAll(
      [anyClass, between(-5, 55), between(0.5, 0.99), between(0, 0.01), between(0, 5)],
      (n, t, phi, more, index) => {
        const step = (at: number) => indexAfterGrowth(index, t, at, 100, classAt(n));
        expect(step(phi + more)).toBeGreaterThanOrEqual(step(phi) - 1e-12);
      },
    );
  });
  test("two short steps are one long step, also across index 1", () => {
    holdsForAll(
      [anyClass, between(1, 49), between(0.8, 1), between(1, 2000), between(1, 2000), between(0, 4)],
      (n, t, phi, a, b, index) => {
        const step = (from: number, hours: number) => indexAfterGrowth(from, t, phi, hours, classAt(n));
        expect(step(step(index, a), b)).toBeCloseTo(step(index, a + b), 9);
      },
    );
  });
  test("twelve hundred steps of five minutes are a hundred hours", () => {
    holdsForAll([anyClass, between(1, 49), between(0.8, 1), between(0, 4)], (n, t, phi, index) => {
      let stepped = index;
      for (let i = 0; i < 1200; i++) stepped = indexAfterGrowth(stepped, t, phi, 1 / 12, classAt(n));
      expect(stepped).toBeCloseTo(indexAfterGrowth(index, t, phi, 100, classAt(n)), 9);
    });
  });
  test("is that of the equation stepped by tenths of an hour, a day's rate being a day's", () => {
    let index = 0;
    for (let i = 0; i < 6720; i++) {
      const k1 = index < 1 ? 1 : 2;
      const ceiling = 1 + 7 * ((80.04 - 97) / (80.04 - 100)) - 2 * ((80.04 - 97) / (80.04 - 100)) ** 2;
      const k2 = Math.max(0, 1 - Math.exp(2.3 * (index - ceiling)));
      index += ((k1 * k2) / (7 * 1.48352) / 24) * 0.1;
    }
    expect(indexAfterGrowth(0, 20, 0.97, 672, verySensitive)).toBeCloseTo(index, 2);
  });
  test("never passes its ceiling, nor 6", () => {
    holdsForAll([anyClass, between(1, 49), between(0.8, 1), between(0, 100_000)], (n, t, phi, hours) => {
      const ceiling = indexCeiling(t, phi, classAt(n));
      expect(indexAfterGrowth(0, t, phi, hours, classAt(n))).toBeLessThanOrEqual(ceiling + 1e-9);
      expect(ceiling).toBeLessThanOrEqual(6);
    });
  });
  test("reaches an index in the hours foretold", () => {
    holdsForAll([anyClass, between(5, 45), between(0.85, 1), between(0.1, 0.95)], (n, t, phi, part) => {
      const index = indexCeiling(t, phi, classAt(n)) * part;
      const hours = hoursToIndex(index, t, phi, classAt(n));
      if (index > 0.01)
        expect(indexAfterGrowth(0, t, phi, hours ?? Number.NaN, classAt(n))).toBeCloseTo(index, 6);
    });
  });
  test("never reaches its ceiling, and is there already at 0 hours", () => {
    expect(hoursToIndex(1, 25, 0.8, verySensitive)).toBeNull();
    expect(hoursToIndex(1, 25, 0.95, verySensitive, 1.5)).toBe(0);
  });
  test.each([0, 50, -3])("is none at %d °C, however damp", (t) => {
    for (const each of classes) expect(isGrowing(t, 1, each)).toBe(false);
  });
  test("is none below 80 % in any class, which is why the index alone is no all-clear", () => {
    holdsForAll([anyClass, between(-20, 60), between(0, 0.7999)], (n, t, phi) => {
      expect(indexAfterGrowth(0, t, phi, 10_000, classAt(n))).toBe(0);
    });
  });
});

describe("decline", () => {
  test("goes the faster the nearer to wood, and never below nought", () => {
    holdsForAll(
      [between(0, 6), between(0, 100), between(0, 5000), between(0, 0.9)],
      (index, dry, hours, factor) => {
        const slower = indexAfterDecline(index, dry, hours, factor);
        expect(indexAfterDecline(index, dry, hours, factor + 0.1)).toBeLessThanOrEqual(slower);
        expect(slower).toBeGreaterThanOrEqual(0);
      },
    );
  });
  test("rests between the 6th and the 24th dry hour", () => {
    expect(indexAfterDecline(2, 6, 18, 1)).toBe(2);
  });
  test("is the same in one step or many", () => {
    let now = { index: 3, dryHours: 0 };
    for (let i = 0; i < 700; i++) now = growthAfter(now, 20, 0.5, 0.3, verySensitive, 1);
    expect(now.index).toBeCloseTo(indexAfterDecline(3, 0, 210, 1), 9);
  });
  test("starts anew after a damp hour", () => {
    const wet = growthAfter({ index: 2, dryHours: 100 }, 20, 0.97, 1, verySensitive, 1);
    expect(wet.dryHours).toBe(0);
  });
});

describe("classes", () => {
  test("the more sensitive grows sooner", () => {
    const hours = classes.map((each) => hoursToIndex(1, 20, 0.97, each) as number);
    expect([...hours].sort((a, b) => a - b)).toEqual(hours);
  });
  test("what is dirty or was overgrown is very sensitive and recedes slowly; clean paper is sensitive", () => {
    expect(growthClassFor("paper", false)).toEqual({ growthClass: "sensitive", declineFactor: 0.5 });
    expect(growthClassFor("paper", true)).toEqual({ growthClass: "very-sensitive", declineFactor: 0.25 });
    expect(growthClassFor("palm-leaf", false).growthClass).toBe("very-sensitive");
  });
  test("there are words for 0 to 6", () => expect(INDEX_WORDS).toHaveLength(7));
  test("the growth humidity falls as it warms, down to the least of the class", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 14, noNaN: true }), (t) => {
        for (const each of classes)
          expect(growthRelHum(t + 0.5, each)).toBeLessThanOrEqual(growthRelHum(t, each));
      }),
    );
  });
});

test.each([
  [0, 0.9],
  [51, 0.9],
  [20, 0],
  [20, 1.01],
])("the time to first growth is refused at %d °C, %d", (t, phi) => {
  expect(() => weeksToFirstGrowth(t, phi)).toThrow(OutOfRange);
});
