import { describe, expect, test } from "vitest";
import { models } from "../../../scripts/checks/models/imaging.ts";
import {
  FADGI_BOUND_LEVELS,
  gigabytesFromShots,
  ISO_19264_LEVELS,
  pixelsFromLength,
  ppiForStroke,
  ppiForStrokeInInches,
  ppiForText,
  shotsFromLeaves,
  slotHours,
  slotHoursBand,
} from "../../../src/core/physics/imaging.ts";
import { OutOfRange } from "../../../src/core/physics/out-of-range.ts";
import { CAUTIONS } from "../../../src/core/say/cautions/imaging.ts";
import { between, holdsForAll } from "./holds-for-all.ts";
import { claimPublishedRows } from "./published-rows.ts";

claimPublishedRows("imaging.json", models);

describe("pixels", () => {
  test("an inch has as many as its ppi", () => {
    for (const ppi of [72, 300, 400, 600]) expect(pixelsFromLength(25.4, ppi)).toBe(ppi);
  });
  test("are whole, and within half of one of what the length asks", () => {
    holdsForAll([between(1, 2000), between(50, 1200)], (mm, ppi) => {
      const pixels = pixelsFromLength(mm, ppi);
      expect(Number.isInteger(pixels)).toBe(true);
      expect(Math.abs(pixels - (mm * ppi) / 25.4)).toBeLessThanOrEqual(0.5 + 1e-6);
    });
  });
  test("a stroke in inches and the same in mm ask for the same within the tutorial's rounded factor, 1 %", () => {
    holdsForAll([between(0.05, 2)], (mm) => {
      expect(ppiForStrokeInInches(2, mm / 25.4) / ppiForStroke(2, mm)).toBeCloseTo(1, 1);
    });
  });
  test("smaller letters and better quality ask for more", () => {
    holdsForAll([between(0.5, 5), between(1, 8), between(0.1, 2)], (height, quality, more) => {
      expect(ppiForText(quality + more, height, "tonal")).toBeGreaterThan(
        ppiForText(quality, height, "tonal"),
      );
      expect(ppiForText(quality, height + more, "tonal")).toBeLessThan(ppiForText(quality, height, "tonal"));
    });
  });
});

describe("shots and hours", () => {
  test("a book of 120 leaves has 128 pictures by openings and 249 by pages; 150 palm leaves have 309", () => {
    expect(shotsFromLeaves("openings", 120, 6, 1)).toBe(128);
    expect(shotsFromLeaves("pages", 120, 6, 1)).toBe(249);
    expect(shotsFromLeaves("leaves-both-sides", 150, 8, 1)).toBe(309);
  });
  test("128 pictures at 60 an hour with 20 minutes to set up take 3.3 hours of a camera available three quarters", () => {
    expect(slotHours(128, 60, 20, 0.75)).toBeCloseTo(3.289, 3);
  });
  test("the band holds its likely figure and says what it rests on", () => {
    const band = slotHoursBand(128, "overhead-openings", 20);
    expect(band.low).toBeLessThan(band.likely);
    expect(band.likely).toBeLessThan(band.high);
    expect(band.cautions).toContain("imaging-rates-are-no-source");
  });
  test("two items take as long as their sum", () => {
    holdsForAll([between(1, 900), between(1, 900), between(10, 120)], (a, b, rate) => {
      expect(slotHours(a + b, rate, 30)).toBeCloseTo(slotHours(a, rate, 10) + slotHours(b, rate, 20), 9);
    });
  });
  test("three copies need three times the room", () => {
    expect(gigabytesFromShots(128, 92.8, 0.05, 3)).toBeCloseTo(3 * gigabytesFromShots(128, 92.8, 0.05, 1), 9);
  });
  test("a camera that is never available, or takes no pictures, is refused", () => {
    expect(() => slotHours(10, 60, 5, 0)).toThrow(OutOfRange);
    expect(() => slotHours(10, 0, 5)).toThrow(OutOfRange);
    expect(() => shotsFromLeaves("pages", -1, 0, 0)).toThrow(OutOfRange);
    expect(() => ppiForText(8, 0, "tonal")).toThrow(OutOfRange);
  });
});

test("each level of both tables asks no less than the next", () => {
  for (const levels of [ISO_19264_LEVELS, FADGI_BOUND_LEVELS])
    levels.slice(1).forEach((lower, i) => {
      const higher = levels[i] as (typeof levels)[number];
      expect(higher.meanDeltaE).toBeLessThanOrEqual(lower.meanDeltaE);
      expect(higher.extremeDeltaE).toBeLessThanOrEqual(lower.extremeDeltaE);
      expect(higher.sampling).toBeGreaterThan(lower.sampling);
      expect(higher.toneDeltaL).toBeLessThan(lower.toneDeltaL);
    });
});
test("every caution has one sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].*[.]$/);
});
