import { describe, expect, test } from "vitest";
import { type AirReadings, airingAdvice, airingHours } from "../../../../src/core/physics/air/airing.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { between, holdsForAll } from "../holds-for-all.ts";

const room = { dryBulb: 20, relHum: 0.6 };

describe("open the windows now?", () => {
  test("cold air at 90 % dries a room at 60 %: the humidity ratio decides, not the relative humidity", () => {
    const advice = airingAdvice(room, { dryBulb: 5, relHum: 0.9 });
    expect(advice.windows).toBe("open");
    // W inside 8.73 g/kg (test/reference/physics/moist-air.json), outside 0.9 · 872.6 Pa → 4.86 g/kg
    expect(advice.difference).toBeCloseTo(0.0087345 - 0.00486, 4);
    expect(advice.relHumThen).toBeLessThan(0.6);
    expect(advice.cautions).toEqual(["airing-not-in-rain-or-dust", "airing-cools-the-room"]);
  });
  test("warm air at 50 % wets a cool room at 60 %", () => {
    expect(airingAdvice(room, { dryBulb: 32, relHum: 0.5 }).windows).toBe("keep-shut");
  });
  test("a difference within the loggers' error is unsure, and is said", () => {
    const advice = airingAdvice(room, { dryBulb: 20, relHum: 0.58 });
    expect(advice.windows).toBe("unsure");
    expect(advice.cautions).toContain("airing-difference-within-error");
  });
  test("outside air that would leave dew on the coldest wall stays outside, drier or not", () => {
    const outside = { dryBulb: 18, relHum: 0.6 };
    expect(airingAdvice(room, outside).windows).toBe("open");
    const advice = airingAdvice(room, outside, 8);
    expect(advice.windows).toBe("keep-shut");
    expect(advice.cautions).toContain("airing-would-wet-cold-surfaces");
  });
  test("very dry air is let in with its warning", () => {
    expect(airingAdvice(room, { dryBulb: 20, relHum: 0.2 }).cautions).toContain("airing-dries-below-30");
  });
  test("when the windows should open, the room's humidity will fall, and turned about they should not", () => {
    holdsForAll(
      [between(5, 38), between(0.1, 1), between(-10, 38), between(0.1, 1)],
      (t, phi, tOut, phiOut) => {
        const [inside, outside] = [
          { dryBulb: t, relHum: phi },
          { dryBulb: tOut, relHum: phiOut },
        ];
        const advice = airingAdvice(inside, outside);
        if (advice.windows !== "open") return;
        expect(advice.relHumThen).toBeLessThan(phi);
        expect(airingAdvice(outside, inside).windows).toBe("keep-shut");
      },
    );
  });
  test("per cent is refused", () => {
    expect(() => airingAdvice(room, { dryBulb: 20, relHum: 55 })).toThrow(OutOfRange);
  });
});

describe("hours a week in which airing dries", () => {
  /** Two weeks, hourly; outside dry air from 0 to 6 o'clock UTC. */
  const weeks = 336;
  const hours = Float64Array.from({ length: weeks + 1 }, (_, h) => 480_000 + h);
  const inside: AirReadings = { hours, dryBulb: hours.map(() => 24), relHum: hours.map(() => 0.7) };
  const outside: AirReadings = {
    hours,
    dryBulb: hours.map((h) => (h % 24 < 6 ? 15 : 30)),
    relHum: hours.map(() => 0.8),
  };
  test("a week of dry nights of 6 hours has 42", () => {
    const found = airingHours(inside, outside);
    expect(found.hoursAWeek).toBeCloseTo(42, 9);
    expect([...found.byHourOfDay]).toEqual(Array.from({ length: 24 }, (_, h) => (h < 6 ? 1 : 0)));
  });
  test("the hours of the day are those of the place", () => {
    const found = airingHours(inside, outside, 5.5);
    expect(found.byHourOfDay[6]).toBe(1);
    expect(found.byHourOfDay[3]).toBe(0);
  });
  test("a weather file every three hours does for a logger every hour", () => {
    const sparse = (values: Float64Array) => values.filter((_, i) => i % 3 === 0);
    const weather = {
      hours: sparse(hours),
      dryBulb: sparse(outside.dryBulb),
      relHum: sparse(outside.relHum),
    };
    expect(airingHours(inside, weather).hoursAWeek).toBeCloseTo(42, 9);
  });
  test("where outside is silent for more than six hours nothing is compared", () => {
    const silent = { ...outside, hours: outside.hours.map((h) => (h < 480_100 ? h : h + 5000)) };
    expect(airingHours(inside, silent).comparedHours).toBe(106);
    expect(airingHours(inside, { ...outside, hours: hours.map((h) => h + 9000) }).hoursAWeek).toBeNaN();
  });
  test("missing readings are left out", () => {
    const holes = { ...inside, relHum: inside.relHum.map((phi, i) => (i % 2 ? phi : Number.NaN)) };
    expect(airingHours(holes, outside)).toMatchObject({ comparedHours: 168, dryingHours: 42 });
  });
});
