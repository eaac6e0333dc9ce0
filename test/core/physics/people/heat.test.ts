import { describe, expect, test } from "vitest";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import {
  type Clothing,
  heatAlertFromRate,
  heatIndexBand,
  heatLimitFromRate,
  heatOutlook,
  LIGHT_WORK,
  MODERATE_WORK,
  shareOfHeatDay,
  wbgtFromGlobe,
  wbgtFromRelHum,
} from "../../../../src/core/physics/people/heat.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/heat.ts";
import { between, holdsForAll } from "../holds-for-all.ts";

const outlook = (
  dryBulb: number,
  relHum: number,
  clothing: Clothing = "cloth-coverall",
  metabolicRate = LIGHT_WORK,
) => heatOutlook({ room: { dryBulb, relHum }, clothing, hood: false, metabolicRate });

describe("WBGT", () => {
  // Bernard's indoor form on Stull's wet bulb (both from memory). Ours takes the thermodynamic wet bulb, up to 0.4 K from Stull's fit there.
  test.each([
    [28, 0.8, 26.1],
    [30, 0.8, 28.1],
    [32, 0.7, 29.0],
    [32, 0.8, 30.0],
    [34, 0.6, 29.7],
    [34, 0.75, 31.4],
    [36, 0.5, 30.3],
  ])("of %d °C at %d is about %d °C", (t, phi, wbgt) => {
    expect(Math.abs(wbgtFromRelHum(t, phi) - wbgt)).toBeLessThan(0.4);
  });
  test("is seven parts natural wet bulb and three parts globe (ISO 7243)", () => {
    expect(wbgtFromGlobe(25, 35)).toBeCloseTo(28, 12);
  });
  test("lies between wet bulb and air, and rises with warmth and damp", () => {
    holdsForAll(
      [between(1, 55), between(0.05, 0.95), between(0.1, 4), between(0.01, 0.05)],
      (t, phi, warmer, damper) => {
        expect(wbgtFromRelHum(t, phi)).toBeLessThanOrEqual(t);
        expect(wbgtFromRelHum(t + warmer, phi)).toBeGreaterThan(wbgtFromRelHum(t, phi));
        expect(wbgtFromRelHum(t, phi + damper)).toBeGreaterThan(wbgtFromRelHum(t, phi));
      },
    );
  });
  test.each([
    [-1, 0.5],
    [61, 0.5],
    [30, 55],
  ])("is refused at %d °C, %d", (t, phi) => {
    expect(() => wbgtFromRelHum(t, phi)).toThrow(OutOfRange);
  });
});

describe("alert and limit", () => {
  // NIOSH RAL 59.9 − 14.1 log10 W (seen in part) and REL 56.7 − 11.5 log10 W (from memory)
  test.each([
    [180, 28.1, 30.8],
    [300, 25.0, 28.2],
  ])("at %d W are %d and %d °C", (watts, alert, limit) => {
    expect(heatAlertFromRate(watts)).toBeCloseTo(alert, 1);
    expect(heatLimitFromRate(watts)).toBeCloseTo(limit, 1);
  });
  test.each([99, 601])("are refused at %d W", (watts) =>
    expect(() => heatLimitFromRate(watts)).toThrow(OutOfRange),
  );
});

describe("work in heat", () => {
  // Common practice, no source: light work in cloth. 30 °C at 80 % is left out, being within 0.4 K of the alert.
  test.each([
    [28, 0.8, "fine"],
    [32, 0.7, "alert"],
    [32, 0.8, "alert"],
    [34, 0.6, "alert"],
    [34, 0.75, "over-limit"],
    [36, 0.5, "alert"],
  ])("at %d °C and %d, light work is %s", (t, phi, state) => expect(outlook(t, phi).state).toBe(state));
  test("heavier work and heavier clothing never make it better", () => {
    const rank = ["fine", "alert", "over-limit"];
    holdsForAll([between(15, 45), between(0.2, 0.95)], (t, phi) => {
      const of = (clothing: Clothing, rate: number) => rank.indexOf(outlook(t, phi, clothing, rate).state);
      expect(of("cloth-coverall", MODERATE_WORK)).toBeGreaterThanOrEqual(of("cloth-coverall", LIGHT_WORK));
      expect(of("sms-coverall", LIGHT_WORK)).toBeGreaterThanOrEqual(of("cloth-coverall", LIGHT_WORK));
      expect(of("vapour-barrier", LIGHT_WORK)).toBeGreaterThanOrEqual(of("double-cloth", LIGHT_WORK));
    });
  });
  test("a vapour barrier is impossible where cloth is fine", () => {
    expect(outlook(28, 0.8).state).toBe("fine");
    const barrier = outlook(28, 0.8, "vapour-barrier");
    expect(barrier.state).toBe("over-limit");
    expect(barrier.cautions).toContain("heat-no-vapour-barrier");
  });
  test("a hood adds a degree", () => {
    const room = { naturalWetBulb: 26, globe: 30 };
    const felt = (hood: boolean) =>
      heatOutlook({ room, clothing: "sms-coverall", hood, metabolicRate: 200 }).felt;
    expect(felt(true) - felt(false)).toBeCloseTo(1, 12);
  });
  test("new people are over their limit where others are at alert", () => {
    expect(outlook(32, 0.7)).toMatchObject({ state: "alert", newPeople: "over-limit" });
  });
  test("the mask stays on in every outlook, and no caution offers a lighter one", () => {
    holdsForAll([between(0, 55), between(0, 1)], (t, phi) => {
      expect(outlook(t, phi).cautions).toContain("heat-mask-stays-on");
    });
    for (const sentence of Object.values(CAUTIONS))
      expect(sentence).not.toMatch(/mask off|without (the|a) mask/i);
  });
  test("an estimate near a bound says so and warns by its worse end; a measured one has no such error", () => {
    // 31.6 °C at 60 %: WBGT 27.6 by estimate, alert 28.1
    const near = outlook(31.6, 0.6);
    expect(near).toMatchObject({ state: "fine", isNearNext: true, error: 1 });
    expect(near.cautions).toEqual(
      expect.arrayContaining(["heat-rest-outside", "heat-estimated-without-globe"]),
    );
    const measured = heatOutlook({
      room: { naturalWetBulb: 26, globe: 31 },
      clothing: "cloth-coverall",
      hood: false,
      metabolicRate: 180,
    });
    expect(measured).toMatchObject({ state: "fine", isNearNext: false, error: 0 });
    expect(measured.cautions).not.toContain("heat-estimated-without-globe");
  });
});

test("new people begin with a fifth of the day, those who return with half (NIOSH)", () => {
  expect([1, 2, 3, 4, 5, 9].map((day) => shareOfHeatDay(day, false))).toEqual([0.2, 0.4, 0.6, 0.8, 1, 1]);
  expect([1, 2, 3, 4, 9].map((day) => shareOfHeatDay(day, true))).toEqual([0.5, 0.6, 0.8, 1, 1]);
  expect(() => shareOfHeatDay(0, false)).toThrow(OutOfRange);
});
test("the weather service's bands begin at 27, 32, 39 and 52 °C (from memory)", () => {
  expect([26.9, 27, 32, 39, 52].map(heatIndexBand)).toEqual([
    "fine",
    "caution",
    "extreme caution",
    "danger",
    "extreme danger",
  ]);
});
test("every caution has one sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].*[.]$/);
});
