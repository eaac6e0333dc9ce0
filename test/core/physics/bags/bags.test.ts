import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { differencesFrom } from "../../../../scripts/checks/agree.ts";
import { models } from "../../../../scripts/checks/models/bags.ts";
import type { Row } from "../../../../scripts/checks/rows.ts";
import {
  airChangeRateFromCo2,
  airTimeConstantFromFilm,
  contentTimeConstantFromFilm,
  leakMass,
  leakTimeConstantFrom,
  MEASURED_FILMS,
  permeanceFromTransmission,
  permeanceFromWarming,
  relHumFromAirExchange,
  relHumFromHourlyExchange,
  transmissionFromPermeance,
  transmissionFromThickness,
} from "../../../../src/core/physics/bags/bags.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/bags.ts";

const published = JSON.parse(
  readFileSync(new URL("../../../reference/physics/bags.json", import.meta.url), "utf8"),
) as { checks: Row[] };
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("films, bags and boxes agree with what was published", () => {
  test.each(published.checks.map((row) => [row.model, row.inputs, row] as const))(
    "%s %j",
    (name, inputs, row) => {
      expect(differencesFrom(row.expected, models[name]?.(inputs) ?? {}, row.tolerance)).toEqual([]);
    },
  );

  test("half the carbon dioxide above a room of 450 ppm gone from 3000 in a day is 0.887 air changes", () => {
    // Method: CCI Technical Bulletin 38; the figure by hand: ln(2550/1050).
    expect(airChangeRateFromCo2({ first: 3000, last: 1500, room: 450, time: 1 })).toBeCloseTo(0.887, 3);
  });

  test("the two measured points of one polyethylene film lie within the band of activation energies", () => {
    const [cool, warm] = MEASURED_FILMS;
    const atCool = permeanceFromTransmission(cool.transmission, cool.dryBulb, cool.relHum);
    const atWarm = permeanceFromTransmission(warm.transmission, warm.dryBulb, warm.relHum);
    const { low, high } = permeanceFromWarming(atWarm, warm.dryBulb, cool.dryBulb);
    expect(atCool).toBeGreaterThan(low);
    expect(atCool).toBeLessThan(high);
  });
});

describe("films", () => {
  test("twice the thickness lets half through", () => {
    const thin = transmissionFromThickness("HDPE", 0.04);
    const thick = transmissionFromThickness("HDPE", 0.08);
    expect(thin.low / thick.low).toBeCloseTo(2, 9);
    expect(thin.high).toBeGreaterThan(thin.low);
  });

  test("transmission and permeance turn into one another", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 30, noNaN: true }),
        fc.integer({ min: 5, max: 40 }),
        (wvtr, dryBulb) => {
          const permeance = permeanceFromTransmission(wvtr, dryBulb, 0.7);
          expect(transmissionFromPermeance(permeance, dryBulb, 0.7)).toBeCloseTo(wvtr, 9);
        },
      ),
    );
  });

  test("a film lets more through when warmer, and exactly its own at its own temperature", () => {
    expect(permeanceFromWarming(3e-4, 20, 35).low).toBeGreaterThan(3e-4);
    expect(permeanceFromWarming(3e-4, 20, 5).high).toBeLessThan(3e-4);
    expect(permeanceFromWarming(3e-4, 20, 20)).toMatchObject({ low: 3e-4, high: 3e-4 });
  });

  test("a thickness in micrometres is refused", () => {
    expect(() => transmissionFromThickness("LDPE", 100)).toThrow(/100/);
    expect(() => permeanceFromWarming(3e-4, 20, 61)).toThrow(OutOfRange);
  });
});

describe("how long a bag takes", () => {
  test("paper in a polyethylene bag keeps its water for months, and the figure says that a bag does not dry", () => {
    const { halfDays, cautions } = contentTimeConstantFromFilm(4e-4, 0.35, 1.4, 0.11, 22);
    expect(halfDays).toBeGreaterThan(90);
    expect(cautions).toContain("bag-does-not-dry");
  });

  test("the air of an empty bag follows the room within a day, far sooner than a content", () => {
    const hours = airTimeConstantFromFilm(4e-4, 0.35, 0.006, 22);
    expect(hours).toBeLessThan(24);
    expect(contentTimeConstantFromFilm(4e-4, 0.35, 1.4, 0.11, 22).days * 24).toBeGreaterThan(100 * hours);
    expect(leakTimeConstantFrom(0.05)).toBeCloseTo(20, 12);
  });
});

describe("leaks", () => {
  const bag = { area: 0.4, permeance: 4e-4, volume: 0.005, airChangesPerDay: 0.3 };

  test("nothing leaks into a bag as damp as its room, and drier bags draw more", () => {
    expect(leakMass(bag, { dryBulb: 24, relHum: 0.6 }, 0.6, 30)).toBeCloseTo(0, 12);
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [dry, damp] = [Math.min(a, b), Math.max(a, b)];
        const room = { dryBulb: 24, relHum: 0.65 };
        expect(leakMass(bag, room, dry, 30)).toBeGreaterThanOrEqual(leakMass(bag, room, damp, 30));
      }),
    );
  });

  test("a box moves towards its room and never past it; two spells are one long one", () => {
    fc.assert(
      fc.property(share, share, fc.double({ min: 0, max: 3, noNaN: true }), (box, room, rate) => {
        const later = relHumFromAirExchange(box, room, rate, 2);
        expect(later).toBeGreaterThanOrEqual(Math.min(box, room) - 1e-12);
        expect(later).toBeLessThanOrEqual(Math.max(box, room) + 1e-12);
        expect(relHumFromAirExchange(later, room, rate, 5)).toBeCloseTo(
          relHumFromAirExchange(box, room, rate, 7),
          9,
        );
      }),
    );
  });

  test("counted in whole hours the box runs ahead of the exchange that never pauses", () => {
    expect(relHumFromHourlyExchange(0.3, 0.8, 0.2, 4)).toBeGreaterThan(
      relHumFromAirExchange(0.3, 0.8, 0.2, 4),
    );
    expect(() => relHumFromHourlyExchange(0.3, 0.8, 1.2, 4)).toThrow(OutOfRange);
    expect(() => relHumFromAirExchange(30, 80, 0.2, 4)).toThrow(OutOfRange);
  });
});

test("every caution of this subject is a sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].+\.$/);
});
