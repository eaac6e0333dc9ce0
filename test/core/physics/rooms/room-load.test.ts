import { describe, expect, test } from "vitest";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import {
  dehumidifierCapacity,
  roomLoad,
  ventilationLoad,
} from "../../../../src/core/physics/rooms/room-load.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/drying.ts";
import { between, holdsForAll } from "../holds-for-all.ts";

const inside = { dryBulb: 20, relHum: 0.6 };

describe("a drying room", () => {
  test("is wetted by outside air that holds more water, though its relative humidity is lower", () => {
    const outside = { dryBulb: 34, relHum: 0.45 };
    expect(ventilationLoad(50, 0.7, inside, outside)).toBeLessThan(0);
    expect(roomLoad({ volume: 50, airChangeRate: 0.7, inside, outside }, 80, 2).cautions).toContain(
      "outside-air-wets-the-room",
    );
  });
  test("aired with its own air gains and loses nothing", () =>
    holdsForAll([between(1, 500), between(0, 10)], (volume, rate) => {
      expect(ventilationLoad(volume, rate, inside, inside)).toBe(0);
    }));
  test("needs the more taken out the more damp items and people are in it", () => {
    const room = { volume: 60, airChangeRate: 0.4, inside, outside: { dryBulb: 19, relHum: 0.62 } };
    const few = roomLoad(room, 90, 1);
    expect(roomLoad(room, 190, 1).toTakeOut - few.toTakeOut).toBeCloseTo(100, 9);
    expect(roomLoad(room, 90, 3).toTakeOut).toBeGreaterThan(few.toTakeOut);
  });
  test("never asks a dehumidifier to give water", () => {
    const outside = { dryBulb: 2, relHum: 0.3 };
    expect(roomLoad({ volume: 80, airChangeRate: 2, inside, outside }, 10, 0).toTakeOut).toBe(0);
  });
  test("every caution has its sentence", () => {
    const { cautions } = roomLoad({ volume: 50, airChangeRate: 1, inside, outside: inside }, 1, 1);
    for (const code of cautions) expect(CAUTIONS[code]).toMatch(/\.$/);
  });
});

test.each([
  ["a room of no volume", () => ventilationLoad(0, 1, inside, inside)],
  ["a gale", () => ventilationLoad(50, 60.5, inside, inside)],
  ["a negative thumb rule", () => dehumidifierCapacity(50, -0.1)],
] as const)("%s is refused", (_, act) => {
  expect(act).toThrow(OutOfRange);
});
