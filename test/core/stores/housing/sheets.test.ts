import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatBoard } from "../../../../src/core/stores/housing/blank.ts";
import { onSheets } from "../../../../src/core/stores/housing/on-sheets.ts";
import {
  type IsoSeries,
  isoSheet,
  mmFromPoints,
  tearFromGrammage,
  yieldOf,
} from "../../../../src/core/stores/housing/sheets.ts";

describe("standard sheets, in mm", () => {
  // ISO 216 (A, B), ISO 269 (C), ISO 217 (RA, SRA); sizes 3 and over of A, B and C from memory
  test.each<[IsoSeries, number[][]]>([
    [
      "A",
      [
        [841, 1189],
        [594, 841],
        [420, 594],
        [297, 420],
        [210, 297],
        [148, 210],
        [105, 148],
      ],
    ],
    [
      "B",
      [
        [1000, 1414],
        [707, 1000],
        [500, 707],
        [353, 500],
        [250, 353],
        [176, 250],
        [125, 176],
      ],
    ],
    [
      "C",
      [
        [917, 1297],
        [648, 917],
        [458, 648],
        [324, 458],
        [229, 324],
        [162, 229],
        [114, 162],
      ],
    ],
    [
      "RA",
      [
        [860, 1220],
        [610, 860],
        [430, 610],
      ],
    ],
    [
      "SRA",
      [
        [900, 1280],
        [640, 900],
        [450, 640],
      ],
    ],
  ])("the series %s is the printed table", (series, table) => {
    table.forEach(([width, height], n) => expect(isoSheet(series, n)).toEqual({ width, height }));
  });
  test("board of 60 points is 1.524 mm", () => {
    expect(mmFromPoints(60)).toBeCloseTo(1.524, 9); // a point is 0.001 in, an inch 25.4 mm
  });
  test("permanent paper of 50 g/m² must bear 230 mN, from 70 g/m² on 350 mN", () => {
    // ISO 9706, as tabulated by the Library of Congress
    expect([50, 70, 80].map(tearFromGrammage)).toEqual([230, 350, 350]);
  });
});

describe("what a sheet gives", () => {
  const jacket = { width: 648, height: 321 };
  const halfFlaps = { width: 565.5, height: 547.5 };
  test("the jacket of the worked example: one from B2, three from B1 and from 32 by 40 inches", () => {
    // worked example: B2 1, B1 3, 32x40 in 3 (either way round)
    expect(yieldOf(jacket, isoSheet("B", 2)).either).toBe(1);
    expect(yieldOf(jacket, isoSheet("B", 1)).either).toBe(3);
    expect(yieldOf(jacket, { width: 813, height: 1016 }).either).toBe(3);
  });
  test("the four-flap wrapper with half flaps: one from B1 or 32 by 40 inches, two from 815 by 1100", () => {
    expect(yieldOf(halfFlaps, isoSheet("B", 1)).either).toBe(1);
    expect(yieldOf(halfFlaps, { width: 813, height: 1016 }).either).toBe(1);
    expect(yieldOf(halfFlaps, { width: 815, height: 1100 }).either).toBe(2);
  });
  test("pieces never have more area than their sheet", () => {
    const side = fc.integer({ min: 10, max: 1500 });
    fc.assert(
      fc.property(side, side, side, side, (w, h, width, height) => {
        const { either, withGrain } = yieldOf({ width: w, height: h }, { width, height });
        expect(either * w * h).toBeLessThanOrEqual(width * height);
        expect(withGrain).toBeLessThanOrEqual(either);
      }),
    );
  });

  const board = flatBoard("case-board", 2, 300, 400);
  const sheet = { width: 813, height: 1016 };
  test("with the grain along the long side pieces stand, along the short side they lie", () => {
    // standing floor(813/300) × floor(1016/400) = 4; lying floor(1016/300) × floor(813/400) = 6
    const pieces = (grain: "long" | "short" | "unknown") =>
      onSheets([board], sheet, { grain, boxes: 1 })[0]?.pieces;
    expect([pieces("long"), pieces("short"), pieces("unknown")]).toEqual([4, 6, 6]);
  });
  test("a sheet may lie or stand: its long side is its long side", () => {
    const lying = { width: 1016, height: 813 };
    expect(onSheets([board], lying, { grain: "long", boxes: 1 })[0]?.pieces).toBe(4);
  });
  test("a tenth more is cut for spoilage", () => {
    // 20 boxes of 2 boards: 44 boards of 6 to a sheet
    expect(onSheets([board], sheet, { grain: "short", boxes: 20 })[0]).toMatchObject({
      wanted: 44,
      sheets: 8,
    });
  });
  test("too small a sheet gives none, and says so", () => {
    expect(onSheets([board], isoSheet("A", 4), { grain: "unknown", boxes: 1 })[0]).toMatchObject({
      pieces: 0,
      sheets: null,
    });
  });
});
