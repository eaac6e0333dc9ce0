import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nextUlid, ULID } from "../../../src/core/log/ulid.ts";

const zeros = new Uint8Array(10);
const ones = new Uint8Array(10).fill(255);
const bytes = fc.uint8Array({ minLength: 10, maxLength: 10 });
const ms = fc.integer({ min: 0, max: 2 ** 48 - 1 });

/** ULID specification (github.com/ulid/spec): its largest value, and its example of a carry within one millisecond. */
describe("ULID", () => {
  test("the largest time and chance give the largest id", () => {
    expect(nextUlid(281_474_976_710_655, ones)).toBe("7ZZZZZZZZZZZZZZZZZZZZZZZZZ");
  });

  test("within one millisecond the last digit carries", () => {
    expect(nextUlid(0, zeros, "01BX5ZZKBKACTAV9WEVGEMMVRZ")).toBe("01BX5ZZKBKACTAV9WEVGEMMVS0");
  });

  test("the time of 1469918176385 is written 01ARYZ6S41", () => {
    // README of ulid/javascript: ulid(1469918176385) gives 01ARYZ6S41…, from memory.
    expect(nextUlid(1_469_918_176_385, zeros)).toBe("01ARYZ6S410000000000000000");
  });

  test("a full chance carries into the time", () => {
    expect(nextUlid(0, zeros, "01BX5ZZKBKZZZZZZZZZZZZZZZZ")).toBe("01BX5ZZKBM0000000000000000");
  });

  test("each is greater than the one before, whatever the clock and the dice say", () =>
    fc.assert(
      fc.property(fc.array(fc.tuple(ms, bytes), { minLength: 2, maxLength: 30 }), (steps) => {
        let last = "";
        for (const [at, random] of steps) {
          const next = nextUlid(at, random, last);
          if (last < "7ZZZZZZZZZ") expect(next > last).toBe(true);
          expect(next).toMatch(ULID);
          last = next;
        }
      }),
    ));
});
