import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { differencesFrom } from "../../../../scripts/checks/agree.ts";
import { models } from "../../../../scripts/checks/models/gel.ts";
import type { Row } from "../../../../scripts/checks/rows.ts";
import { caseGelMassFrom, dinUnitsFrom } from "../../../../src/core/physics/bags/desiccant-units.ts";
import { type Bag, relHumFromGel, waterFreed } from "../../../../src/core/physics/bags/gel-in-bag.ts";
import {
  gelContentFromRelHum,
  MEASURED_GEL,
  relHumFromGelContent,
} from "../../../../src/core/physics/bags/gel-isotherms.ts";
import {
  bearableGelMass,
  conditionedGelContent,
  floorRelHumOf,
  gelMassFromRelHum,
  gelPlan,
  packetsFrom,
} from "../../../../src/core/physics/bags/gel-plan.ts";
import { isRegenerated, regenerationFor } from "../../../../src/core/physics/bags/gel-regeneration.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { ISOTHERMS } from "../../../../src/core/physics/sorption/sorption.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/gel.ts";

const published = JSON.parse(
  readFileSync(new URL("../../../reference/physics/gel.json", import.meta.url), "utf8"),
) as { checks: Row[] };

const bagOf = (curve: keyof typeof ISOTHERMS, dryMass: number, relHum: number, airVolume = 0.004): Bag => ({
  dryBulb: 21,
  airVolume,
  airRelHum: relHum,
  contents: [{ isotherm: ISOTHERMS[curve], dryMass, relHum }],
});
const bags = fc
  .record({
    curve: fc.constantFrom("ragPaper", "leather", "palmLeaf", "newsprint"),
    dryMass: fc.double({ min: 0.1, max: 8, noNaN: true }),
    relHum: fc.double({ min: 0.6, max: 0.95, noNaN: true }),
    airVolume: fc.double({ min: 0, max: 0.1, noNaN: true }),
  })
  .map(({ curve, dryMass, relHum, airVolume }) =>
    bagOf(curve as keyof typeof ISOTHERMS, dryMass, relHum, airVolume),
  );

describe("silica gel agrees with what was published", () => {
  test.each(published.checks.map((row) => [row.model, row.inputs, row] as const))(
    "%s %j",
    (name, inputs, row) => {
      expect(differencesFrom(row.expected, models[name]?.(inputs) ?? {}, row.tolerance)).toEqual([]);
    },
  );
});

describe("what gel holds", () => {
  test("gel on the way down holds no less than on the way up", () => {
    for (const relHum of MEASURED_GEL.desorption.relHums)
      expect(gelContentFromRelHum(relHum, "desorption")).toBeGreaterThan(gelContentFromRelHum(relHum));
  });

  test("its weight gives back its humidity", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.constantFrom("adsorption", "desorption"),
        (relHum, branch) => {
          expect(relHumFromGelContent(gelContentFromRelHum(relHum, branch), branch)).toBeCloseTo(relHum, 9);
        },
      ),
    );
  });

  test("above 90 % it is full and stays so; a per cent or a negative humidity is refused", () => {
    expect(gelContentFromRelHum(0.97)).toBe(gelContentFromRelHum(0.9));
    expect(() => gelContentFromRelHum(40)).toThrow(/40/);
    expect(() => gelContentFromRelHum(-0.1)).toThrow(OutOfRange);
    expect(() => relHumFromGelContent(0.37)).toThrow(OutOfRange);
  });
});

describe("a bag with gel comes to rest", () => {
  test("where the gel has taken exactly what items and air have given", () => {
    fc.assert(
      fc.property(bags, fc.double({ min: 0.01, max: 2, noNaN: true }), (bag, dryMass) => {
        const rest = relHumFromGel(bag, { dryMass, startContent: 0.02 }, 0);
        expect(rest.waterInGel).toBeCloseTo(waterFreed(bag, rest.relHum), 8);
        expect(rest.low).toBeLessThanOrEqual(rest.relHum);
        expect(rest.high).toBeGreaterThanOrEqual(rest.relHum);
      }),
    );
  });

  test("drier with more gel, damper with a leak", () => {
    fc.assert(
      fc.property(bags, fc.double({ min: 0.02, max: 1, noNaN: true }), (bag, dryMass) => {
        const rest = relHumFromGel(bag, { dryMass, startContent: 0.03 }, 0).relHum;
        expect(relHumFromGel(bag, { dryMass: dryMass * 1.3, startContent: 0.03 }, 0).relHum).toBeLessThan(
          rest,
        );
        const leaking = { ...bag, leak: () => 0.002 };
        expect(relHumFromGel(leaking, { dryMass, startContent: 0.03 }, 0).relHum).toBeGreaterThan(rest);
      }),
    );
  });

  test("below the floor of its item it says that this is too much gel", () => {
    const leaf = bagOf("palmLeaf", 1.2, 0.75);
    const rest = relHumFromGel(leaf, { dryMass: 2, startContent: 0.02 }, floorRelHumOf(["palmLeaf"]));
    expect(rest.relHum).toBeLessThan(0.4);
    expect(rest.cautions).toContain("no-more-gel-than-the-item-bears");
    expect(rest.cautions).toContain("palm-leaf-by-wood");
  });

  test("outside 10 to 35 °C the measured gel is not asked", () => {
    const hot = { ...bagOf("ragPaper", 1, 0.8), dryBulb: 36 };
    expect(() => relHumFromGel(hot, { dryMass: 0.2, startContent: 0.02 }, 0.3)).toThrow(/36/);
  });
});

describe("gel for an item", () => {
  test("the gel counted for a target brings the bag to that target", () => {
    fc.assert(
      fc.property(bags, fc.double({ min: 0.35, max: 0.55, noNaN: true }), (bag, target) => {
        const dryMass = gelMassFromRelHum(bag, target, 0.02);
        expect(relHumFromGel(bag, { dryMass, startContent: 0.02 }, 0).relHum).toBeCloseTo(target, 6);
      }),
    );
  });

  test("no plan takes an item below its floor, whatever fits in at once, were the gel 15 % better than measured", () => {
    fc.assert(
      fc.property(
        bags,
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.double({ min: 0.42, max: 0.55, noNaN: true }),
        (bag, mostAtOnce, targetRelHum) => {
          const plan = gelPlan(bag, { targetRelHum, floorRelHum: 0.4, startContent: 0.02, mostAtOnce });
          let now = bag;
          for (const { dryMass, relHumAfter } of plan.charges) {
            expect(dryMass).toBeLessThanOrEqual(mostAtOnce);
            expect(relHumAfter).toBeGreaterThanOrEqual(targetRelHum - 1e-9);
            expect(relHumFromGel(now, { dryMass, startContent: 0.02 }, 0.4).low).toBeGreaterThanOrEqual(
              0.4 - 1e-9,
            );
            now = {
              ...now,
              airRelHum: relHumAfter,
              contents: now.contents.map((content) => ({ ...content, relHum: relHumAfter })),
            };
          }
          expect(plan.charges[0]?.dryMass ?? 0).toBeLessThanOrEqual(plan.mostGelMass);
        },
      ),
    );
  });

  test("the most an item bears brings it just to its floor if the gel is at its best", () => {
    const bag = bagOf("palmLeaf", 1.7, 0.82);
    const dryMass = bearableGelMass(bag, 0.4, 0.03);
    expect(relHumFromGel(bag, { dryMass, startContent: 0.03 }, 0.4).low).toBeCloseTo(0.4, 6);
  });

  test("a bag that leaks is brought to its target and the plan ends there", () => {
    const leaking = { ...bagOf("ragPaper", 2, 0.8), leak: () => 0.004 };
    const plan = gelPlan(leaking, {
      targetRelHum: 0.5,
      floorRelHum: 0.3,
      startContent: 0.02,
      mostAtOnce: 0.2,
    });
    expect(plan.charges.length).toBeLessThan(5);
    expect(plan.charges.at(-1)?.relHumAfter).toBeCloseTo(0.5, 2);
  });

  test("many small charges take less gel in all than one large, since each leaves fuller", () => {
    const bag = bagOf("ragPaper", 3, 0.85);
    const wanted = { targetRelHum: 0.5, floorRelHum: 0.3, startContent: 0.02 };
    const one = gelPlan(bag, wanted);
    const many = gelPlan(bag, { ...wanted, mostAtOnce: 0.15 });
    const sum = many.charges.reduce((all, { dryMass }) => all + dryMass, 0);
    expect(one.charges).toHaveLength(1);
    expect(many.charges.length).toBeGreaterThan(2);
    expect(sum).toBeLessThan(one.gelMass);
    expect(many.charges.at(-1)?.relHumAfter).toBeCloseTo(0.5, 9);
  });

  test("gel conditioned to the floor cannot take an item below it, however much there is", () => {
    const bag = bagOf("leather", 0.7, 0.8);
    const startContent = conditionedGelContent(0.4);
    const plan = gelPlan(bag, { targetRelHum: 0.5, floorRelHum: 0.4, startContent });
    expect(plan.mostGelMass).toBe(Number.POSITIVE_INFINITY);
    expect(plan.cautions).not.toContain("gel-dries-the-outside-first");
    expect(relHumFromGel(bag, { dryMass: 500, startContent }, 0.4).relHum).toBeGreaterThanOrEqual(0.4 - 1e-9);
  });

  test("packets are rounded up, but never past what the item bears", () => {
    expect(packetsFrom({ gelMass: 0.19, mostGelMass: 0.4 }, 0.05)).toEqual({ packets: 4, cautions: [] });
    expect(packetsFrom({ gelMass: 0.19, mostGelMass: 0.23 }, 0.25)).toEqual({
      packets: 0,
      cautions: ["packet-larger-than-the-item-bears"],
    });
  });

  test("a target below the floor is refused, and so is gel already fuller than the target", () => {
    const bag = bagOf("palmLeaf", 2, 0.7);
    expect(() => gelPlan(bag, { targetRelHum: 0.35, floorRelHum: 0.4, startContent: 0.02 })).toThrow(
      OutOfRange,
    );
    expect(() => gelMassFromRelHum(bag, 0.4, 0.3)).toThrow(OutOfRange);
  });

  test("a bag already dry enough needs none", () => {
    const plan = gelPlan(bagOf("ragPaper", 1, 0.42), {
      targetRelHum: 0.5,
      floorRelHum: 0.3,
      startContent: 0.02,
    });
    expect(plan.gelMass).toBe(0);
    expect(plan.charges).toEqual([]);
  });

  test("the floor of a bag is its tenderest content's", () => {
    expect(floorRelHumOf(["ragPaper", "palmLeaf"])).toBe(0.4);
    expect(floorRelHumOf(["newsprint"])).toBe(0.3);
  });
});

describe("rules beside the balance", () => {
  const din = {
    volume: 0.3,
    vapourGramsPerCubicMetre: 13.83,
    packingMass: 1.5,
    packingGramsPerKilogram: 80,
    filmArea: 2.4,
    transmission: 0.4,
    days: 90,
    filmFactor: 0.7,
    gramsPerUnit: 6,
  };

  test("the units rule leaves damp items out, and says so until their water is given", () => {
    expect(dinUnitsFrom(din).cautions).toContain("units-ignore-damp-items");
    const withDamp = dinUnitsFrom({ ...din, dampGrams: 54 });
    expect(withDamp.cautions).toEqual([]);
    expect(withDamp.units - dinUnitsFrom(din).units).toBeCloseTo(9, 9);
  });

  test("a tight film still counts with the least transmission", () => {
    expect(dinUnitsFrom({ ...din, transmission: 0.01 }).units).toBe(
      dinUnitsFrom({ ...din, transmission: 0.1 }).units,
    );
  });

  test("twice the drift needs half the gel in a case", () => {
    const of = {
      outsideRelHum: 0.7,
      setRelHum: 0.5,
      volume: 0.4,
      airChangesPerDay: 0.9,
      days: 120,
      buffer: 4,
      drift: 0.03,
    };
    const { gelMass, cautions } = caseGelMassFrom(of);
    expect(gelMass).toBeCloseTo((17.3 * 0.2 * 0.4 * 0.9 * 120) / 12, 9); // by hand
    expect(caseGelMassFrom({ ...of, drift: 0.06 }).gelMass).toBeCloseTo(gelMass / 2, 9);
    expect(cautions).toContain("case-rule-from-memory");
  });

  test("gel is dry by two weighings, and gel with an indicator is dried cooler", () => {
    expect(isRegenerated(502, 500)).toBe(true);
    expect(isRegenerated(503, 500)).toBe(false);
    expect(regenerationFor(true).high).toBeLessThanOrEqual(120);
    expect(regenerationFor(false).cautions).toContain("gel-dry-only-by-weight");
  });
});

test("every caution of this subject is a sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].+\.$/);
});
