import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { differencesFrom } from "../../../../scripts/checks/agree.ts";
import { models } from "../../../../scripts/checks/models/sorption.ts";
import type { Row } from "../../../../scripts/checks/rows.ts";
import { SALTS } from "../../../../src/core/physics/air/hygrometer-salts.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { GAB_ROWS, slopeFromGab } from "../../../../src/core/physics/sorption/gab-isotherm.ts";
import { monotoneCurve } from "../../../../src/core/physics/sorption/monotone-curve.ts";
import {
  hendersonMoistureContentFromRelHum,
  hendersonRelHumFromMoistureContent,
} from "../../../../src/core/physics/sorption/pulp-isotherm.ts";
import { ISOTHERMS } from "../../../../src/core/physics/sorption/sorption.ts";
import { tableIsotherm } from "../../../../src/core/physics/sorption/table-isotherm.ts";
import { RELHUM_PER_KELVIN, relHumFromWarming } from "../../../../src/core/physics/sorption/wood-isotherm.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/sorption.ts";

const published = JSON.parse(
  readFileSync(new URL("../../../reference/physics/sorption.json", import.meta.url), "utf8"),
) as { checks: Row[] };
const table = JSON.parse(
  readFileSync(new URL("../../../../data/physics/isotherms.json", import.meta.url), "utf8"),
) as { regain: { relHums: number[]; rows: { id: string; material: string; moistureContents: number[] }[] } };
const curves = Object.values(ISOTHERMS).map((curve) => [curve.material, curve] as const);
const drawings = table.regain.rows.map(
  (row) => [row.id, tableIsotherm({ ...row, relHums: table.regain.relHums }, [])] as const,
);

describe("sorption curves agree with what was published", () => {
  test.each(published.checks.map((row) => [row.model, row.inputs, row] as const))(
    "%s %j",
    (name, inputs, row) => {
      expect(differencesFrom(row.expected, models[name]?.(inputs) ?? {}, row.tolerance)).toEqual([]);
    },
  );

  test("paper at 5 to 7 % moisture rests at 34 to 55 % relative humidity, the band called dry after floods", () => {
    // NARA (Kaplan & Ludwig 2003): 5-7 % moisture is considered dry.
    expect(ISOTHERMS.ragPaper.relHumFromMoistureContent(0.05, 21)).toBeCloseTo(0.34, 2);
    expect(ISOTHERMS.ragPaper.relHumFromMoistureContent(0.07, 23)).toBeCloseTo(0.55, 2);
  });
});

describe.each([...curves, ...drawings])("the curve of %s", (_, curve) => {
  const relHum = fc.double({ min: 0.001, max: 0.9, noNaN: true });

  test("gives back the humidity it was asked for", () => {
    fc.assert(
      fc.property(relHum, fc.double({ min: 1, max: 49, noNaN: true }), (at, dryBulb) => {
        const content = curve.moistureContentFromRelHum(at, dryBulb);
        expect(curve.relHumFromMoistureContent(content, dryBulb)).toBeCloseTo(at, 8);
      }),
    );
  });

  test("rises, and its slope is how steeply", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.89, noNaN: true }), (at) => {
        const rise =
          curve.moistureContentFromRelHum(at + 1e-5, 22) - curve.moistureContentFromRelHum(at - 1e-5, 22);
        expect(rise).toBeGreaterThan(0);
        expect(curve.slope(at, 22)).toBeGreaterThan(0);
        expect(rise / 2e-5 / curve.slope(at, 22)).toBeCloseTo(1, 2);
      }),
    );
  });

  test("is dry at no humidity, and refuses a negative one, a per cent and a furnace", () => {
    expect(curve.moistureContentFromRelHum(0, 22)).toBeCloseTo(0, 12);
    expect(() => curve.moistureContentFromRelHum(-0.01, 22)).toThrow(OutOfRange);
    expect(() => curve.moistureContentFromRelHum(55, 22)).toThrow(/55/);
    expect(() => curve.moistureContentFromRelHum(0.5, 131)).toThrow(OutOfRange);
    expect(() => curve.relHumFromMoistureContent(0.9, 22)).toThrow(OutOfRange);
    expect(() => curve.relHumFromMoistureContent(-0.001, 22)).toThrow(OutOfRange);
  });
});

test("a table is not continued beyond its last point", () => {
  for (const [, curve] of drawings)
    expect(() => curve.moistureContentFromRelHum(0.91, 22)).toThrow(OutOfRange);
});

test("a fitted row stays by the table it was fitted to, within three times its own root mean square", () => {
  const pairs = [
    ["newsprint", GAB_ROWS.newsprint, ISOTHERMS.newsprint],
    ["writing-paper", GAB_ROWS.writingPaper, ISOTHERMS.writingPaper],
    ["rag-paper", GAB_ROWS.ragPaper, ISOTHERMS.ragPaper],
    ["leather", GAB_ROWS.leather, ISOTHERMS.leather],
    ["catgut", GAB_ROWS.catgut, ISOTHERMS.parchment],
    ["cotton-cloth", GAB_ROWS.cotton, ISOTHERMS.cotton],
    ["jute", GAB_ROWS.jute, ISOTHERMS.jute],
  ] as const;
  for (const [id, row, curve] of pairs) {
    const published = table.regain.rows.find((each) => each.id === id)?.moistureContents ?? [];
    published.forEach((content, i) => {
      const fitted = curve.moistureContentFromRelHum(table.regain.relHums[i] ?? 0, 24);
      expect(Math.abs(fitted - content) * 100).toBeLessThan(3 * row.rms);
    });
  }
});

test("a smooth curve through points never leaves the steps between them", () => {
  const step = fc.tuple(
    fc.double({ min: 0.1, max: 3, noNaN: true }),
    fc.double({ min: 0, max: 5, noNaN: true }),
  );
  fc.assert(
    fc.property(
      fc.array(step, { minLength: 2, maxLength: 8 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (steps, share) => {
        const xs = steps.reduce((all, [dx]) => [...all, (all.at(-1) ?? 0) + dx], [0]);
        const ys = steps.reduce((all, [, dy]) => [...all, (all.at(-1) ?? 0) + dy], [0]);
        const x = share * (xs.at(-1) ?? 0);
        const i = Math.max(
          1,
          xs.findIndex((each) => each >= x),
        );
        const y = monotoneCurve(xs, ys, "x", "1").at(x);
        expect(y).toBeGreaterThanOrEqual((ys[i - 1] ?? 0) - 1e-9);
        expect(y).toBeLessThanOrEqual((ys[i] ?? 0) + 1e-9);
      },
    ),
  );
  expect(() => monotoneCurve([0, 2, 1], [0, 1, 2], "x", "1")).toThrow(RangeError);
});

test("between 20 and 30 °C warming a closed bag raises its humidity within the stated band, elsewhere not above it", () => {
  const perKelvin = (relHum: number, dryBulb: number) =>
    (relHumFromWarming(relHum, dryBulb, dryBulb + 5).relHum - relHum) / 5;
  const relHums = fc.double({ min: 0.4, max: 0.7, noNaN: true });
  fc.assert(
    fc.property(relHums, fc.double({ min: 20, max: 25, noNaN: true }), (relHum, dryBulb) => {
      expect(perKelvin(relHum, dryBulb)).toBeGreaterThan(RELHUM_PER_KELVIN.low);
      expect(perKelvin(relHum, dryBulb)).toBeLessThan(RELHUM_PER_KELVIN.high);
    }),
  );
  fc.assert(
    fc.property(relHums, fc.double({ min: 5, max: 40, noNaN: true }), (relHum, dryBulb) => {
      expect(perKelvin(relHum, dryBulb)).toBeGreaterThan(0);
      expect(perKelvin(relHum, dryBulb)).toBeLessThan(RELHUM_PER_KELVIN.high);
    }),
  );
});

test("the pulp curve and its inverse are one curve", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.98, noNaN: true }),
      fc.integer({ min: 5, max: 95 }),
      (relHum, dryBulb) => {
        const content = hendersonMoistureContentFromRelHum(relHum, dryBulb);
        expect(hendersonRelHumFromMoistureContent(content, dryBulb)).toBeCloseTo(relHum, 9);
      },
    ),
  );
});

test("the slope of a row with C = 1 needs no special case", () => {
  expect(slopeFromGab({ m0: 0.07, C: 1, K: 0.6 }, 0.5)).toBeCloseTo((0.07 * 0.6) / 0.7 ** 2, 12);
});

test("every caution has its sentence, and stand-ins say that they are", () => {
  const used = new Set(Object.values(ISOTHERMS).flatMap((curve) => curve.cautions));
  expect([...used].filter((code) => !CAUTIONS[code])).toEqual([]);
  expect(ISOTHERMS.palmLeaf.cautions).toContain("palm-leaf-by-wood");
  expect(ISOTHERMS.parchment.cautions).toContain("parchment-by-catgut");
  expect(Object.keys(SALTS)).toContain("NaCl");
});
