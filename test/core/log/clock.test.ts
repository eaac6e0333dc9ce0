import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  CLOCK_START,
  type Clock,
  compareClocks,
  hear,
  LAST_WALL,
  MOST_AHEAD_MS,
  MOST_COUNTER,
  tick,
} from "../../../src/core/log/clock.ts";
import { NOON } from "./some-events.ts";

const TWO_YEARS = 2 * 365 * 86_400_000;
const stamp = fc.record({ wall: fc.integer({ min: 0, max: 2 ** 45 }), counter: fc.nat(1000) });
const from = (device: string, clock: Clock) => ({ device, clock });

describe("the clock of a device", () => {
  test("goes with the wall clock, and counts where that stands still", () => {
    const first = tick(CLOCK_START, NOON);
    expect(first).toEqual({ wall: NOON, counter: 0 });
    expect(tick(first, NOON)).toEqual({ wall: NOON, counter: 1 });
    expect(tick(first, NOON + 3)).toEqual({ wall: NOON + 3, counter: 0 });
  });

  test("set back two years it still gives rising stamps", () => {
    let last = tick(CLOCK_START, NOON);
    for (let i = 0; i < 500; i++) {
      const next = tick(last, NOON - TWO_YEARS + i * 60_000);
      expect(compareClocks(next, last)).toBeGreaterThan(0);
      last = next;
    }
  });

  test("after hearing others its next stamp is later than every stamp it followed", () =>
    fc.assert(
      fc.property(stamp, fc.array(stamp), fc.integer({ min: 0, max: 2 ** 45 }), (own, heard, now) => {
        const { clock } = hear(
          own,
          heard.map((each) => from("b", each)),
          now,
        );
        const next = tick(clock, now);
        expect(compareClocks(next, own)).toBeGreaterThan(0);
        for (const each of heard)
          if (each.wall <= now + MOST_AHEAD_MS) expect(compareClocks(next, each)).toBeGreaterThan(0);
      }),
    ));

  test("counts on where somebody else's count has come to its end", () => {
    const { clock } = hear(CLOCK_START, [from("tablet-2", { wall: NOON, counter: MOST_COUNTER })], NOON);
    expect(tick(clock, NOON)).toEqual({ wall: NOON + 1, counter: 0 });
  });

  test("can name a device whose clock shows the last time there is", () => {
    const last = from("tablet-2", { wall: LAST_WALL, counter: 0 });
    expect(hear(CLOCK_START, [last], NOON).problems).toMatchObject([{ code: "clock-ahead" }]);
  });

  test("is not dragged by a clock more than a day ahead, and the device is named once", () => {
    const own = tick(CLOCK_START, NOON);
    const ahead = { wall: NOON + TWO_YEARS, counter: 0 };
    const near = { wall: NOON + MOST_AHEAD_MS, counter: 4 };
    expect(hear(own, [from("tablet-2", ahead), from("tablet-2", ahead)], NOON)).toMatchObject({
      clock: own,
      problems: [{ code: "clock-ahead", got: "tablet-2", expected: "2028-05-31 there, 2026-06-01 here" }],
    });
    expect(hear(own, [from("tablet-3", near)], NOON)).toEqual({ clock: near, problems: [] });
  });
});
