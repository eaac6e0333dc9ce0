import { describe, expect, test } from "vitest";
import { models } from "../../../../scripts/checks/models/storage.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import {
  bandCautions,
  lifeFromClimate,
  lifeFromSeries,
  mayUnwrapFromCold,
  permanenceRatio,
  placeInBand,
  type StorageBand,
  seasonAndSwing,
  sharesInBand,
} from "../../../../src/core/physics/rooms/storage.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/storage.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { between, holdsForAll } from "../holds-for-all.ts";
import { claimPublishedRows } from "../published-rows.ts";

claimPublishedRows("storage-bands.json", models);
claimPublishedRows("lifetime.json", models);

const { bands } = readPublished("physics/storage-bands.json") as { bands: StorageBand[] };
const band = (id: string): StorageBand => bands.find((each) => each.id === id) as StorageBand;

describe("the bands", () => {
  test("each has its own id, rising ends, a source and how far it is trusted", () => {
    expect(new Set(bands.map((each) => each.id)).size).toBe(bands.length);
    for (const { id, dryBulb, relHum, source, status } of bands) {
      for (const [low, high] of [dryBulb, relHum ?? [null, null]])
        if (low !== null && high !== null) expect(low, id).toBeLessThan(high);
      expect(source, id).not.toBe("");
      expect(["seen", "seen in part", "from memory", "common practice"]).toContain(status);
    }
  });
  test("an end that is null does not bind, a humidity that is not told is not judged", () => {
    expect(placeInBand(band("films-frozen"), -40, 0.4)).toEqual({ dryBulb: "within", relHum: "within" });
    expect(placeInBand(band("film-and-colour-cold"), 6, 0.99)).toEqual({ dryBulb: "above", relHum: null });
    expect(placeInBand(band("archive-mixed"), 12.9, 0.61)).toEqual({ dryBulb: "below", relHum: "above" });
  });
  test("recalled, replaced, silent and mould-prone bands say so", () => {
    expect(bandCautions(band("glass-plates"))).toEqual(["band-from-memory"]);
    expect(bandCautions(band("older-strongrooms"))).toEqual(["band-superseded", "band-reaches-mould"]);
    expect(bandCautions(band("film-and-colour-cold"))).toContain("band-tells-no-humidity");
    expect(bandCautions(band("films-frozen"))).toEqual([]);
  });
  test("shares count each reading once within, and missing ones not at all", () => {
    const shares = sharesInBand(
      band("archive-mixed"),
      Float64Array.of(15, 15, 25, 25, Number.NaN),
      Float64Array.of(0.5, 0.7, 0.5, 0.2, 0.5),
    );
    expect(shares).toMatchObject({
      readings: 4,
      within: 0.25,
      tooWarm: 0.5,
      tooDamp: 0.25,
      tooDry: 0.25,
      tooCold: 0,
    });
  });
});

describe("chemical life", () => {
  test("is one at 20 °C and 50 %", () => expect(lifeFromClimate(20, 0.5)).toBeCloseTo(1, 12));
  test("is longer the colder and the drier", () => {
    holdsForAll(
      [between(-30, 58), between(0.06, 0.98), between(0.01, 2), between(0.001, 0.01)],
      (t, phi, warmer, damper) => {
        expect(lifeFromClimate(t + warmer, phi)).toBeLessThan(lifeFromClimate(t, phi));
        expect(lifeFromClimate(t, phi + damper)).toBeLessThan(lifeFromClimate(t, phi));
      },
    );
  });
  test("about doubles for each 5 K less, as the title of its source says", () => {
    holdsForAll([between(5, 30)], (t) => {
      const ratio = lifeFromClimate(t - 5, 0.5) / lifeFromClimate(t, 0.5);
      expect(ratio).toBeGreaterThan(1.8);
      expect(ratio).toBeLessThan(2.4);
    });
  });
  test("in a steady store is that of the climate", () => {
    const life = lifeFromSeries(new Float64Array(50).fill(15), new Float64Array(50).fill(0.4));
    expect(life?.paper).toBeCloseTo(lifeFromClimate(15, 0.4), 9);
  });
  test("half the time at 10 °C and half at 30 °C is shorter than at 20 °C: rates are averaged, not climates", () => {
    const life = lifeFromSeries(Float64Array.of(10, 30, Number.NaN), Float64Array.of(0.5, 0.5, 0.5));
    // 4.2587 and 0.2582 times the life (100 kJ/mol), by hand from the source's equation
    expect(life?.paper).toBeCloseTo(2 / (1 / 4.2587 + 1 / 0.2582), 2);
    expect(life?.paper).toBeLessThan(0.6);
    expect(life?.readings).toBe(2);
  });
  test("from readings outside its home says so", () => {
    const series = (t: number, phi: number) =>
      lifeFromSeries(Float64Array.of(t), Float64Array.of(phi))?.cautions;
    expect(series(-10, 0.4)).toContain("life-outside-fitted-climate");
    expect(series(20, 0.85)).toContain("life-outside-fitted-climate");
    expect(series(20, 0.5)).toEqual(["life-is-a-comparison", "life-tells-nothing-of-mould"]);
  });
  test("without readings is not told", () => {
    expect(lifeFromSeries(new Float64Array(0), new Float64Array(0))).toBeNull();
  });
  test.each([
    [-30.1, 0.5],
    [60.1, 0.5],
    [20, 0.04],
    [20, 1.01],
  ])("is refused at %d °C, %d", (t, phi) => {
    expect(() => lifeFromClimate(t, phi)).toThrow(OutOfRange);
  });
  test("there and back is no gain: the permanence of a climate against itself by way of another is one", () => {
    holdsForAll(
      [between(0, 30), between(0, 30), between(0.2, 0.8), between(0.2, 0.8)],
      (t1, t2, phi1, phi2) => {
        const [a, b] = [
          { dryBulb: t1, relHum: phi1 },
          { dryBulb: t2, relHum: phi2 },
        ];
        expect(permanenceRatio(a, b, 120_000) * permanenceRatio(b, a, 120_000)).toBeCloseTo(1, 9);
      },
    );
  });
});

describe("the season and the swing", () => {
  const year = (swing: number) =>
    Float64Array.from(
      { length: 8760 },
      (_, h) => 0.5 + 0.1 * Math.sin((2 * Math.PI * h) / 8760) + swing * Math.sin((2 * Math.PI * h) / 24),
    );
  test("a store that swings little need not be held closer than ±10 %", () => {
    expect(seasonAndSwing(year(0.02), 1)).toMatchObject({ low: -0.1, high: 0.1 });
  });
  test("a store that swings ±20 % each day keeps the 7th to the 93rd of a hundred, the season taken out", () => {
    const found = seasonAndSwing(year(0.2), 1);
    // A sine's 93rd of a hundred: sin(0.86 · 90°) = 0.976.
    expect(found?.high).toBeCloseTo(0.2 * Math.sin(0.43 * Math.PI), 2);
    expect(found?.low).toBeCloseTo(-0.2 * Math.sin(0.43 * Math.PI), 2);
    expect(found?.season[2190]).toBeCloseTo(0.6, 2);
  });
  test("less than a year is refused", () => expect(seasonAndSwing(new Float64Array(8759), 1)).toBeNull());
});

test("what comes from the cold is unwrapped only above the room's dew point", () => {
  // 25 °C and 80 %: dew point 21.3 °C (test/reference/physics/moist-air.json)
  expect(mayUnwrapFromCold(21, 25, 0.8)).toBe(false);
  expect(mayUnwrapFromCold(23.4, 25, 0.8)).toBe(true);
});

test("every caution has one sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].*[.]$/);
});
