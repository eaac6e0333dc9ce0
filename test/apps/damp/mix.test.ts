import { describe, expect, test } from "vitest";
import { clearAir } from "../../../src/apps/cli/damp/clear-air.ts";
import { mix } from "../../../src/apps/cli/damp/mix.ts";
import { answer, said } from "./said.ts";

describe("leafward mix", () => {
  test("a litre of 70 % from 96 % at 20 °C is 588.7 g of alcohol and 296.8 g of water, 26.5 mL less than its parts", async () => {
    // OIML R 22 (1975) general formula, coefficients as printed in Council Directive 76/766/EEC
    const { recipe } = (await answer(mix, "--want 70 --volume 1000 --stock 96 --temp 20")) as unknown as {
      recipe: {
        stockMass: number;
        waterMass: number;
        contraction: number;
        stockVolume: number;
        checkWeight: number;
      };
    };
    expect(recipe.stockMass).toBeCloseTo(588.74, 1);
    expect(recipe.waterMass).toBeCloseTo(296.82, 1);
    expect(recipe.contraction).toBeCloseTo(26.52, 1);
    expect(recipe.stockVolume).toBeCloseTo(729.17, 1);
    expect(recipe.checkWeight).toBeCloseTo(88.556, 2);
  });
  test("says what to weigh and what to measure, rounded as a balance and a cylinder are", async () => {
    const { flat, code } = await said(mix, "--want 70 --volume 1000 --stock 96 --temp 20");
    expect(flat).toContain(
      "Weigh 589 g of the 96 % alcohol and add 297 g of clean water: that gives 1 L of 70 % by volume.",
    );
    expect(flat).toContain("measure 729 mL of the alcohol and fill up with water to 1 L");
    expect(flat).toContain("it must weigh 88.6 g");
    expect(code).toBe(0);
  });
  test("flame, ventilation, items, nitrate film, buying locally and local rules always come along", async () => {
    for (const typed of ["", "--want 10", "--room 40m3 --changes 1"]) {
      const { flat } = await said(mix, typed);
      for (const part of [
        "flame",
        "Ventilate",
        "never on an item",
        "nitrate film",
        "locally",
        "local rules",
        "Flash point",
      ])
        expect(flat).toContain(part);
    }
  });
  test("in a room it says how much may be out, and what a spill would do", async () => {
    const { flat } = await said(mix, "--room 40m3 --changes 1 --temp 26");
    expect(flat).toContain("Have no more than 450 mL of it open at one time");
    expect(flat).toContain("22 % of what can explode");
  });
  test("a room without air change allows nothing to be wiped for hours", async () => {
    expect((await said(mix, "--room 40m3 --changes 0")).flat).toContain("no air change");
  });
  test("stronger than the stock cannot be made", async () => {
    const { code, complaints } = await said(mix, "--want 98 --stock 96");
    expect(code).toBe(2);
    expect(complaints).toContain('--want: it is "98"; expected 5 to 96 %.');
  });
  test("a comma that could part thousands or decimals is not believed; a decimal comma is", async () => {
    expect((await said(mix, "--volume 1,000")).complaints).toContain("without the comma");
    expect((await said(mix, "--volume 1,5L")).flat).toContain("1.5 L");
  });
  test("an unknown option is named, with where the options stand", async () => {
    const { code, complaints } = await said(mix, "--strength 70");
    expect(code).toBe(2);
    expect(complaints).toContain("Unknown option '--strength'");
    expect(complaints).toContain("npx leafward mix --help");
  });
  test("help is shown, whatever else is typed", async () => {
    const { code, text } = await said(mix, "--want 700 --help");
    expect(code).toBe(0);
    expect(text).toContain("leafward mix --want 70");
  });
});

describe("leafward clear-air", () => {
  test("with settling it waits less than the published clearance, which counts air changes alone", async () => {
    // CDC, MMWR 1994;43(RR-13), Table S3-1: 138 min for 99 % at 2 air changes an hour, perfectly mixed
    const { minutes99 } = (await answer(clearAir, "--room 5x4x3 --changes 2 --mixing 1")) as unknown as {
      minutes99: number;
    };
    expect(minutes99).toBeLessThan(138);
    expect(minutes99).toBeGreaterThan(100);
  });
  test("says when to go in masked to wipe, and when to unmask", async () => {
    const { flat } = await said(clearAir, "--room 5x4x3 --changes 2 --purifier 300 m3/h");
    expect(flat).toContain(
      "wait 110 min before going in again, mask on, to wipe down; after wiping wait 110 min more before anyone unmasks",
    );
  });
  test("a purifier shortens the wait, a room full of shelves lengthens it, half an hour is the least", async () => {
    const wait = async (typed: string) =>
      ((await answer(clearAir, `--room 60m3 ${typed}`)) as unknown as { enterAfterMinutes: number })
        .enterAfterMinutes;
    expect(await wait("--changes 2 --purifier 300m3/h")).toBeLessThan(await wait("--changes 2"));
    expect(await wait("--changes 2 --mixing 10")).toBeGreaterThan(await wait("--changes 2"));
    expect(await wait("--changes 60 --mixing 1")).toBe(30);
  });
  test("cubic feet a minute are understood", async () => {
    const [metric, feet] = [
      await answer(clearAir, "--room 60m3 --purifier 339.8m3/h"),
      await answer(clearAir, "--room 60m3 --purifier 200cfm"),
    ];
    expect((feet.minutes99 as number) / (metric.minutes99 as number)).toBeCloseTo(1, 3);
  });
  test("without a room it asks for one", async () => {
    const { code, complaints } = await said(clearAir, "--changes 2");
    expect(code).toBe(2);
    expect(complaints).toContain("--room: it is missing");
  });
});
