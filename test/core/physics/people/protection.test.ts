import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { differencesFrom } from "../../../../scripts/checks/agree.ts";
import { models } from "../../../../scripts/checks/models/protection.ts";
import type { Row } from "../../../../scripts/checks/rows.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import {
  assignedFactorFrom,
  filterFrom,
  inhaledSporesFrom,
  maskFrom,
  mouldBandFromArea,
  type ProtectionTables,
  quarantineDryingFrom,
  timeLimitsFrom,
  usualRespiratorFor,
  vacuumFrom,
  wearMinutesFrom,
} from "../../../../src/core/physics/people/protection.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/protection.ts";

const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"));
const published = read("../../../reference/physics/protection.json") as { checks: Row[] };
const tables = read("../../../../data/physics/protection.json") as ProtectionTables;

describe("protection agrees with what was published", () => {
  test.each(published.checks.map((row) => [row.model, row.inputs, row] as const))(
    "%s %j",
    (name, inputs, row) => {
      expect(differencesFrom(row.expected, models[name]?.(inputs) ?? {}, row.tolerance)).toEqual([]);
    },
  );
});

describe("the table", () => {
  const TRUST = ["seen", "seen in part", "from memory", "common practice"];

  test("every entry names its source and how far it is trusted", () => {
    const rows = Object.values(tables).flatMap((part) => (typeof part === "string" ? [] : part));
    expect(rows.length).toBeGreaterThan(40);
    expect(rows.filter(({ source, status }) => !source?.trim() || !TRUST.includes(status))).toEqual([]);
  });

  test("a higher class of mask, filter or cleaner lets less through", () => {
    const rising = (values: number[]) => values.every((value, i) => i === 0 || value > (values[i - 1] ?? 0));
    expect(rising(tables.masks.map((mask) => mask.factor))).toBe(true);
    expect(rising(tables.masks.map((mask) => 1 - mask.penetration))).toBe(true);
    for (const standard of ["EN 1822", "ISO 29463"])
      expect(
        rising(tables.filters.filter((row) => row.standard === standard).map((row) => row.efficiency)),
      ).toBe(true);
    expect(rising(tables.vacuums.map((row) => 1 - row.mostPassing))).toBe(true);
  });

  test("a filter is nowhere better than on the whole, a mask nowhere better than its filter", () => {
    for (const { efficiency, localEfficiency } of tables.filters)
      if (localEfficiency !== null) expect(localEfficiency).toBeLessThan(efficiency);
    for (const mask of tables.masks) {
      expect(mask.leakageMean).toBeGreaterThanOrEqual(mask.penetration);
      expect(mask.leakageMost).toBeGreaterThan(mask.leakageMean);
      expect(mask.factor).toBeLessThanOrEqual(mask.nominal);
    }
  });

  test("the bands of a scheme leave no gap and do not overlap", () => {
    for (const scheme of ["CCI", "EPA"]) {
      const bands = tables.mouldBands.filter((row) => row.scheme === scheme);
      bands.forEach((band, i) => expect(band.toSquareMetres).toBe(bands[i + 1]?.fromSquareMetres ?? null));
    }
  });
});

describe("looking up", () => {
  test("an unknown class is refused with the known ones", () => {
    expect(() => maskFrom(tables, "FFP4")).toThrow(/FFP1, FFP2, FFP3/);
    expect(() => filterFrom(tables, "EN 1822", "H99")).toThrow(/H13/);
    expect(() => vacuumFrom(tables, "X")).toThrow(/L, M, H/);
    expect(() => mouldBandFromArea(tables, "nobody", 1)).toThrow(/CCI, EPA/);
  });

  test("every mask says that it stops no vapour and must be fitted; a recalled factor says that too", () => {
    expect(maskFrom(tables, "FFP3").cautions).toEqual([
      "fit-tested-and-clean-shaven",
      "dust-mask-stops-no-vapour",
    ]);
    expect(assignedFactorFrom(tables, "HSG53", "half mask P3").cautions).toContain("figure-recalled");
    expect(assignedFactorFrom(tables, "NIOSH 1987", "half mask").cautions).not.toContain("figure-recalled");
  });

  test("any area of growth has one band, and more growth never needs less help", () => {
    const area = fc.double({ min: 0.001, max: 60, noNaN: true });
    fc.assert(
      fc.property(area, area, fc.constantFrom("CCI", "EPA"), (a, b, scheme) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)].map((each) =>
          mouldBandFromArea(tables, scheme, each),
        );
        expect(Number(large?.needsHelp)).toBeGreaterThanOrEqual(Number(small?.needsHelp));
        expect(large?.cautions).toContain("no-limit-for-mould");
      }),
    );
    expect(mouldBandFromArea(tables, "CCI", 3).band).toBe("large");
    expect(mouldBandFromArea(tables, "EPA", 4.5).cautions).toContain("outside-help");
    expect(() => mouldBandFromArea(tables, "CCI", 0)).toThrow(OutOfRange);
  });

  test("more than an hour in a mask, or a face it does not seal on, asks for a powered hood", () => {
    expect(usualRespiratorFor(tables, { minutes: 60, sealsTight: true }).respirator).toBe("FFP3");
    expect(usualRespiratorFor(tables, { minutes: 61, sealsTight: true }).respirator).toBe("powered hood TH2");
    expect(usualRespiratorFor(tables, { minutes: 20, sealsTight: false }).respirator).toBe(
      "powered hood TH2",
    );
    expect(wearMinutesFrom(tables, "powered hood")).toBeNull();
  });

  test("twice the protection or half the time halves what is breathed in", () => {
    const of = { sporesPerCubicMetre: 70_000, factor: 10, hours: 3 };
    const { spores } = inhaledSporesFrom(of);
    expect(spores).toBeCloseTo(26_250, 9); // 70 000/10 · 1.25 · 3
    expect(inhaledSporesFrom({ ...of, factor: 20 }).spores).toBeCloseTo(spores / 2, 9);
    expect(inhaledSporesFrom({ ...of, hours: 1.5 }).spores).toBeCloseTo(spores / 2, 9);
    expect(() => inhaledSporesFrom({ ...of, factor: 0.5 })).toThrow(OutOfRange);
  });

  test("damp air starts the two days of drying again; dry hours alone release nothing", () => {
    expect(quarantineDryingFrom(tables, 30, 0.45)).toMatchObject({ isAirDry: true, hoursLeft: 18 });
    expect(quarantineDryingFrom(tables, 30, 0.55)).toMatchObject({ isAirDry: false, hoursLeft: 48 });
    expect(quarantineDryingFrom(tables, 70, 0.45).cautions).toContain("living-mould-is-dried-first");
    expect(() => quarantineDryingFrom(tables, 70, 45)).toThrow(OutOfRange);
  });

  test("the hours of mould work are called a local setting", () => {
    expect(timeLimitsFrom(tables).cautions).toContain("time-limit-is-local");
  });
});

test("every caution of this subject is a sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].+\.$/);
});
