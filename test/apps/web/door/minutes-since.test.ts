import { expect, test } from "vitest";
import { minutesSince } from "../../../../src/apps/web/door/minutes-since.ts";

const MINUTE = 60_000;

test.each([
  [1 * MINUTE, 1 * MINUTE, 1],
  [1 * MINUTE, 8.4 * MINUTE, 7],
  [1 * MINUTE, 122 * MINUTE, null],
  [0, 5 * MINUTE, null],
])(
  "a survey begun at %d ms lasts at %d ms %s minutes: at least one, and none where somebody went away",
  (began, now, minutes) => {
    expect(minutesSince(began, now)).toBe(minutes);
  },
);
