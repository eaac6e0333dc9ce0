import { describe, expect, test } from "vitest";
import { TYPED, typedDoubt, weightDoubt } from "../../../src/core/ward/typed-doubt.ts";

/* Bounds for slips of the finger: common practice, no source. */

describe("a figure just typed", () => {
  test.each([
    [0.57, 0.58, null],
    [0.57, null, null],
    [0.85, 0.57, "far-from-before"],
    [0.72, 0.57, null],
    [0.02, null, "unusual"],
    [1.57, 0.57, "impossible"],
    [-0.01, null, "impossible"],
    [Number.NaN, null, "impossible"],
  ])("as humidity, %d after %s, is held %s", (value, before, doubt) => {
    expect(typedDoubt(value, TYPED.relHum, before)).toBe(doubt);
  });
  test("as temperature, 62 °C is asked again after 26, and 120 °C is not taken", () => {
    expect(typedDoubt(62, TYPED.dryBulb, 26)).toBe("unusual");
    expect(typedDoubt(36, TYPED.dryBulb, 26)).toBe("far-from-before");
    expect(typedDoubt(120, TYPED.dryBulb, 26)).toBe("impossible");
  });
  test("as weight, a digit too many or too few is asked again, drying is not", () => {
    expect(weightDoubt(6130, 613)).toBe("far-from-before");
    expect(weightDoubt(61, 613)).toBe("far-from-before");
    expect(weightDoubt(571, 580)).toBeNull();
    expect(weightDoubt(0, 580)).toBe("impossible");
    expect(weightDoubt(580, null)).toBeNull();
  });
});
