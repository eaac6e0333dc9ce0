import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { LoggerReading } from "../../../src/edge/intake/loggers/logger-reading.ts";
import { readLogger } from "../../../src/edge/intake/loggers/read-logger.ts";
import { projectFolder } from "../../../src/edge/published.ts";

/** Files of real loggers and weather services; their sources and licences stand in DATA.md beside them. */
const open = join(projectFolder(), "..", "shared", "data");

/** Rows, first and last time and means as that page and the files themselves give them, not as this reader does. */
const FILES: readonly [string, Partial<LoggerReading>, { warm?: number; damp?: number }][] = [
  [
    "climate/office-occupancy-datatest.txt.gz",
    { rowsRead: 2665, firstAt: "2015-02-02T14:19", usualStepMinutes: 1, dateOrder: "y-m-d" },
    {},
  ],
  [
    "climate/house-r4-indoor1.csv.gz",
    { rowsRead: 14449, firstAt: "2010-11-15T00:00", offset: 120, delimiter: ",", summerTime: "none" },
    {},
  ],
  [
    "climate/house-r4-attic-insulation-top.csv.gz",
    { rowsRead: 14449, firstAt: "2010-11-15T00:00", offset: 120 },
    {},
  ],
  [
    "climate/house-r4-outdoor-station.csv.gz",
    { rowsRead: 14449, firstAt: "2010-11-15T00:00", offset: 120 },
    {},
  ],
  [
    "climate/variant-a-semicolon-decimal-comma.csv",
    { rowsRead: 2000, firstAt: "2011-06-11T08:00", delimiter: ";", decimalMark: ",", dateOrder: "d-m-y" },
    {},
  ],
  [
    "climate/variant-b-fahrenheit-am-pm.csv",
    { rowsRead: 2000, firstAt: "2011-06-11T08:00", clock: 12, offset: 120, dateOrder: "m-d-y" },
    {},
  ],
  [
    "climate/variant-c-tab-us-date-gaps.txt",
    {
      rowsRead: 1960,
      firstAt: "2011-03-20T00:00",
      delimiter: "\t",
      dateOrder: "m-d-y",
      claims: { samples: 2000, stepMinutes: 60 },
    },
    {},
  ],
  [
    "weather/tanzania-coast-hourly-2023-2026.csv.gz",
    { rowsRead: 26136, firstAt: "2023-03-15T00:00", offset: 180, kind: "hourly weather" },
    { warm: 25.7, damp: 0.81 },
  ],
  [
    "weather/miami-fl-tmy3.csv.gz",
    { rowsRead: 8760, kind: "tmy3", offset: -300 },
    { warm: 24.5, damp: 0.73 },
  ],
  ["weather/houston-tx.epw.gz", { rowsRead: 8760, kind: "epw", offset: -360 }, { warm: 20.0, damp: 0.75 }],
];

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe.skipIf(!existsSync(open))(
  "open files, without a hint (skipped where the folder of open data is absent)",
  () => {
    const load = async (file: string) => {
      const outcome = await readLogger(join(open, file));
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      return outcome.value;
    };
    test.each(FILES)("%s", async (file, expected, means) => {
      const { reading, series } = await load(file);
      expect(reading).toMatchObject(expected);
      expect(reading.doubts.filter(({ severity }) => severity !== "note")).toEqual([]);
      if (means.warm !== undefined)
        expect(Math.abs(mean(series.dryBulb) - means.warm)).toBeLessThanOrEqual(0.05); // one decimal is given
      if (means.damp !== undefined)
        expect(Math.abs(mean(series.relHum) - means.damp)).toBeLessThanOrEqual(0.005); // whole per cent are given
    });
    test("the same 2,000 readings in two dresses and in the file they were cut from", async () => {
      const [whole, comma, fahrenheit] = await Promise.all(
        [
          "climate/house-r4-indoor1.csv.gz",
          "climate/variant-a-semicolon-decimal-comma.csv",
          "climate/variant-b-fahrenheit-am-pm.csv",
        ].map(load),
      );
      const from = whole?.series.minutes.indexOf(comma?.series.minutes[0] ?? -1) ?? -1;
      expect(from).toBeGreaterThan(0);
      for (const dress of [comma, fahrenheit]) {
        expect(dress?.series.minutes).toEqual(whole?.series.minutes.slice(from, from + 2000));
        dress?.series.dryBulb.forEach((value, i) => {
          if (Math.abs(value - (whole?.series.dryBulb[from + i] ?? 0)) > 0.006)
            throw new Error(`reading ${i}: ${value}`); // °F was rounded to hundredths
        });
        dress?.series.relHum.forEach((value, i) => {
          if (Math.abs(value - (whole?.series.relHum[from + i] ?? 0)) > 1e-9)
            throw new Error(`reading ${i}: ${value}`);
        });
      }
    });
    test("the block of 36 h and the single hours lost, though 2,000 are claimed", async () => {
      const { reading } = await load("climate/variant-c-tab-us-date-gaps.txt");
      expect(reading.gaps).toMatchObject({ count: 5, missing: 40, hours: 40 });
      expect(reading.gaps.longest.map(({ missing }) => missing).sort((a, b) => b - a)).toEqual([
        36, 1, 1, 1, 1,
      ]);
      expect(reading.doubts.map(({ code }) => code)).toEqual(["logger-gaps", "logger-claim-samples"]);
    });
  },
);
