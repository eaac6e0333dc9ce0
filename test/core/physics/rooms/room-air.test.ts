import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { differencesFrom } from "../../../../scripts/checks/agree.ts";
import { models } from "../../../../scripts/checks/models/room-air.ts";
import type { Row } from "../../../../scripts/checks/rows.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import {
  clearanceMinutesFrom,
  cubicMetresPerHourFromCfm,
  ethanolInRoom,
  LEAST_WAIT,
  mostSolutionAtOnce,
  mostSolutionPerHour,
  type Room,
  reentryWaitFrom,
  settlingVelocityFrom,
  slipFromDiameter,
  vapourFromRelease,
  vapourFromSteadyUse,
  vapourFromWipes,
} from "../../../../src/core/physics/rooms/room-air.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/room-air.ts";

const published = JSON.parse(
  readFileSync(new URL("../../../reference/physics/room-air.json", import.meta.url), "utf8"),
) as { checks: Row[] };

const ROOM: Room = { volume: 50, airChangeRate: 2, mixingFactor: 1 };
const rooms = fc.record({
  volume: fc.double({ min: 15, max: 400, noNaN: true }),
  airChangeRate: fc.double({ min: 0.1, max: 12, noNaN: true }),
  mixingFactor: fc.double({ min: 1, max: 10, noNaN: true }),
});

describe("the air of a room agrees with what was published", () => {
  test.each(published.checks.map((row) => [row.model, row.inputs, row] as const))(
    "%s %j",
    (name, inputs, row) => {
      expect(differencesFrom(row.expected, models[name]?.(inputs) ?? {}, row.tolerance)).toEqual([]);
    },
  );

  test("one cubic foot a minute is 1.699 m³/h", () => {
    expect(cubicMetresPerHourFromCfm(1)).toBeCloseTo(1.699, 3);
  });
});

describe("waiting", () => {
  test("clearance rounded to the minute is the published table also where air is poorly mixed", () => {
    // CDC table B.1: 12 air changes, 99 %: 23 minutes; times the mixing factor.
    expect(Math.round(clearanceMinutesFrom(12, 0.99, 1))).toBe(23);
    expect(clearanceMinutesFrom(12, 0.99, 3)).toBeCloseTo(3 * clearanceMinutesFrom(12, 0.99, 1), 9);
  });

  test("more air, a purifier or larger dust never lengthens the wait; poor mixing never shortens it", () => {
    fc.assert(
      fc.property(rooms, fc.double({ min: 2, max: 5, noNaN: true }), (room, height) => {
        const { rate } = reentryWaitFrom(room, { height });
        expect(
          reentryWaitFrom({ ...room, airChangeRate: room.airChangeRate + 1 }, { height }).rate,
        ).toBeGreaterThan(rate);
        expect(reentryWaitFrom(room, { height, cleanAirRate: 200 }).rate).toBeGreaterThan(rate);
        expect(reentryWaitFrom(room, { height, diameter: 6 }).rate).toBeGreaterThan(rate);
        expect(reentryWaitFrom({ ...room, mixingFactor: 10 }, { height }).rate).toBeLessThanOrEqual(rate);
      }),
    );
  });

  test("nobody goes back in before half an hour, and surfaces are wiped first", () => {
    const wait = reentryWaitFrom({ ...ROOM, airChangeRate: 60 }, { height: 2.5 });
    expect(wait.minutes99).toBeLessThan(LEAST_WAIT);
    expect(wait.waitMinutes).toBe(LEAST_WAIT);
    expect(wait.cautions).toContain("wipe-surfaces-after-waiting");
  });

  test("a twice larger sphere falls a little less than four times as fast", () => {
    const ratio = settlingVelocityFrom({ diameter: 6 }) / settlingVelocityFrom({ diameter: 3 });
    expect(ratio).toBeLessThan(4);
    expect(ratio).toBeGreaterThan(3.85);
    expect(slipFromDiameter(0.3)).toBeGreaterThan(slipFromDiameter(3));
  });

  test("still air, a particle of a tenth of a millimetre and a clearance of all of it are refused", () => {
    expect(() => clearanceMinutesFrom(0, 0.99, 1)).toThrow(OutOfRange);
    expect(() => settlingVelocityFrom({ diameter: 100 })).toThrow(/100/);
    expect(() => clearanceMinutesFrom(4, 1, 1)).toThrow(OutOfRange);
    expect(() => reentryWaitFrom({ ...ROOM, mixingFactor: 0.5 }, { height: 3 })).toThrow(OutOfRange);
  });
});

describe("vapour in a room", () => {
  test("what was released leaves with the air that leaves: mean times air equals mass", () => {
    fc.assert(
      fc.property(rooms, fc.double({ min: 10, max: 1e5, noNaN: true }), (room, milligrams) => {
        const hours = 7;
        const { mean, last } = vapourFromRelease(room, milligrams, hours);
        const flow = (room.airChangeRate / room.mixingFactor) * room.volume;
        expect((flow * mean * hours + last * room.volume) / milligrams).toBeCloseTo(1, 9);
      }),
    );
  });

  test("steady use climbs towards its steady value and never past it", () => {
    fc.assert(
      fc.property(rooms, fc.double({ min: 0.1, max: 10, noNaN: true }), (room, hours) => {
        const { steady, last } = vapourFromSteadyUse(room, 20_000, hours);
        expect(last).toBeLessThanOrEqual(steady * (1 + 1e-12));
        expect(vapourFromSteadyUse(room, 20_000, hours + 1).last).toBeGreaterThanOrEqual(last * (1 - 1e-12));
      }),
    );
  });

  test("a room without air change keeps what is given to it", () => {
    const shut = { ...ROOM, airChangeRate: 0 };
    expect(vapourFromRelease(shut, 5000, 3).mean).toBe(100);
    expect(vapourFromSteadyUse(shut, 5000, 3)).toEqual({ steady: Number.POSITIVE_INFINITY, last: 300 });
  });

  test("50 mL of 70 % wiped out every hour of eight means 271 mg/m³, with peaks of 639", () => {
    // Worked with the same balance by hand: 552.5/(2·8)·Σ(1 − e^−2j), 552.5/(1 − e^−2).
    const { mean, peak } = vapourFromWipes(ROOM, { milligrams: 27_624, everyHours: 1, times: 8 });
    expect(mean).toBeCloseTo(270.8, 0);
    expect(peak).toBeCloseTo(639, 0);
  });

  test("in 50 m³ at two air changes 69 mL an hour keeps to 380 mg/m³, and 572 mL at once reaches a tenth of burning", () => {
    expect(mostSolutionPerHour(ROOM, 0.7, 380)).toBeCloseTo(68.8, 1);
    expect(mostSolutionAtOnce(ROOM, 0.7)).toBeCloseTo(572, 0);
  });

  test("a litre spilt tells people to leave; a wipe does not, but says that the mask is no help", () => {
    const spill = ethanolInRoom(ROOM, { volume: 1000, volumeFraction: 0.7, limit: 380, hours: 8 });
    expect(spill.cautions.slice(0, 2)).toEqual(["can-burn-leave-the-room", "above-the-limit"]);
    expect(spill.shareOfLowerLimit).toBeCloseTo(0.17, 2);
    const wipe = ethanolInRoom(ROOM, { volume: 40, volumeFraction: 0.7, limit: 380, hours: 8 });
    expect(wipe.cautions).not.toContain("can-burn-leave-the-room");
    expect(wipe.cautions).not.toContain("above-the-limit");
    expect(wipe.cautions).toContain("mask-does-not-stop-vapour");
  });
});

test("every caution of this subject is a sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].+\.$/);
});
