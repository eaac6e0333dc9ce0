import { describe, expect, test } from "vitest";
import { gel } from "../../../src/apps/cli/damp/gel.ts";
import { answer, said } from "./said.ts";

const PAPER = "--mass 1.5kg --material rag-paper --from 80 --to 50";

interface GelAnswer {
  plan: { gelMass: number; mostGelMass: number | null; charges: { dryMass: number; relHumAfter: number }[] };
  dinUnits: number;
  waterKilograms: number;
  dryMassKilograms: number;
}
const plan = async (typed: string) => (await answer(gel, typed)) as unknown as GelAnswer;

describe("leafward gel", () => {
  test("says how much goes in and where the bag comes to rest, as a span", async () => {
    const { flat, code } = await said(gel, PAPER);
    expect(flat).toMatch(
      /Put in \d+ g of fresh dry gel: the bag then comes to rest at about 50 % \(\d+ to \d+ %\)/,
    );
    expect(code).toBe(0);
  });
  test("the water paper gives up is what its regain says", async () => {
    // Regain of white bond paper, International Critical Tables as repeated in ASHRAE Fundamentals, from memory: 10.8 % at 80 %, 6.5 % at 50 %
    const { waterKilograms, dryMassKilograms } = await plan(PAPER);
    expect(waterKilograms / dryMassKilograms).toBeGreaterThan(0.038);
    expect(waterKilograms / dryMassKilograms).toBeLessThan(0.047);
  });
  test("twice the item needs twice the gel", async () => {
    const [one, two] = [await plan(PAPER), await plan(PAPER.replace("1.5kg", "3kg"))];
    expect(two.plan.gelMass / one.plan.gelMass).toBeCloseTo(2, 6);
  });
  test("near its floor palm leaf gets its gel in small charges, none beyond what it bears", async () => {
    const { plan: small } = await plan("--mass 1.5kg --material palm-leaf --from 85 --to 41");
    expect(small.charges.length).toBeGreaterThan(1);
    for (const charge of small.charges) expect(charge.relHumAfter).toBeGreaterThanOrEqual(0.4);
    for (const charge of small.charges) expect(charge.dryMass).toBeLessThanOrEqual(small.mostGelMass ?? 0);
  });
  test("below the floor of the material it refuses, and says why", async () => {
    const { code, complaints } = await said(gel, "--mass 1kg --material palm-leaf --from 80 --to 30");
    expect(code).toBe(2);
    expect(complaints).toContain('--to: it is "30"; expected 40 to 80 %. Below the floor the item is harmed');
  });
  test("what fits in at one time makes more changes, not more gel at once", async () => {
    const { plan: few } = await plan(`${PAPER} --at-once 80g`);
    expect(few.charges.length).toBeGreaterThan(2);
    for (const { dryMass } of few.charges) expect(dryMass).toBeLessThanOrEqual(0.08 + 1e-9);
  });
  test("units of DIN 55474 count the item's own water, which the standard leaves out", async () => {
    const { dinUnits, waterKilograms } = await plan(PAPER);
    expect(dinUnits).toBeGreaterThan((1000 * waterKilograms) / 7); // 7 g a unit at 50 %: DIN 55474, as two suppliers give it
  });
  test("colour gel is dried cooler, and blue gel is poisonous", async () => {
    const { flat } = await said(gel, `${PAPER} --colour-gel`);
    expect(flat).toContain("99 to 120 °C");
    expect(flat).toContain("cobalt");
    expect((await said(gel, PAPER)).flat).toContain("130 to 150 °C");
  });
  test("conditioned gel has no over-dry limit", async () => {
    expect((await said(gel, `${PAPER} --conditioned 45`)).flat).toContain("no limit");
  });
  test("a leaking film over months asks for more", async () => {
    const [shut, leaking] = [await plan(PAPER), await plan(`${PAPER} --days 180 --room 85 --film 0.05`)];
    expect(leaking.plan.gelMass).toBeGreaterThan(shut.plan.gelMass);
  });
  test("what is dry already needs no gel", async () => {
    expect((await said(gel, "--mass 1kg --material rag-paper --from 45 --to 50")).flat).toContain(
      "No gel is needed",
    );
  });
  test("a mass without its unit is not guessed", async () => {
    const { code, complaints } = await said(gel, PAPER.replace("1.5kg", "1.5"));
    expect(code).toBe(2);
    expect(complaints).toContain("a mass with its unit");
  });
});
