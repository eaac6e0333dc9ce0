import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readClimateFile } from "../../../src/edge/intake/climate.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { codes, readWith, rows, the } from "./campaign-folder.ts";

const climate = (text: string) => readWith({ "climate/ward.csv": text });
const hourly = (
  n: number,
  values: (i: number) => string,
  skip: (i: number) => boolean = () => false,
): string[] =>
  Array.from({ length: n }, (_, i) => i)
    .filter((i) => !skip(i))
    .map((i) => `${new Date(Date.UTC(2026, 5, 1, i)).toISOString().slice(0, 16)},${values(i)}`);
const moving = (i: number): string => `${(25 + Math.sin(i)).toFixed(2)},${(60 + Math.cos(i)).toFixed(2)}`;

describe("climate files", () => {
  test("humidity becomes a fraction, time is ISO without a zone", async () => {
    const read = await climate(
      rows("time,temperature_c,rh_pct", "2026-06-01T08:00,25.4,59.4", "2026-06-01T09:00,25.5,"),
    );
    expect(read.campaign?.climate).toEqual([
      {
        name: "ward",
        readings: [
          { at: "2026-06-01T08:00:00", dryBulb: 25.4, relHum: 0.594 },
          { at: "2026-06-01T09:00:00", dryBulb: 25.5 },
        ],
      },
    ]);
    expect(read.counts.climate).toEqual({ rows: 2, used: 2 });
    expect(read.problems).toEqual([]);
  });
  test("rows that cannot be read are noted and left out", async () => {
    const read = await climate(
      rows(
        "time,temperature_c,rh_pct",
        "2026-06-01T08:00,warm,59",
        "later,25,59",
        "2026-06-01T10:00,25,159",
        "2026-06-01T11:00,25,59",
      ),
    );
    expect(read.problems.map(({ code, line, severity }) => `${code} ${line} ${severity}`)).toEqual(
      [2, 3, 4].map((line) => `reading-unreadable ${line} note`),
    );
    expect(read.counts.climate).toEqual({ rows: 4, used: 1 });
  });
  test("a gap is noted with its ends", async () => {
    const read = await climate(
      rows("time,temperature_c,rh_pct", ...hourly(48, moving, (i) => i > 10 && i < 20)),
    );
    expect(the("reading-gap", read).expected).toBe("from 2026-06-01 10:00 to 2026-06-01 20:00");
    expect(codes(read)).toEqual(["reading-gap"]);
  });
  test("a reader that gives nothing, or the same for a day, is noted", async () => {
    const stuck = hourly(72, (i) => (i < 30 ? moving(i) : "25.00,60.00"));
    expect(the("reader-stuck", await climate(rows("time,temperature_c,rh_pct", ...stuck))).expected).toBe(
      "from 2026-06-02 06:00 to 2026-06-03 23:00",
    );
    const silent = hourly(20, (i) => (i > 4 && i < 9 ? "," : moving(i)));
    expect(the("reader-silent", await climate(rows("time,temperature_c,rh_pct", ...silent))).expected).toBe(
      "from 2026-06-01 05:00 to 2026-06-01 08:00",
    );
  });
  test("readings out of order are put in order, and fractions under a per-cent heading are noted", async () => {
    const read = await climate(rows("time,rh_pct", ...hourly(8, (i) => `0.${50 + i}`).reverse()));
    expect(the("reading-order", read).got).toBe("7");
    the("rh-fraction", read);
    expect(read.campaign?.climate[0]?.readings[0]?.at).toBe("2026-06-01T00:00:00");
  });
  test("a file without headings is noted and the campaign goes on", async () => {
    const read = await climate("2026-06-01T08:00,25.4,59.4\n");
    expect(the("climate-headings", read).severity).toBe("note");
    expect(read.campaign?.climate).toEqual([]);
  });
  test("degrees Fahrenheit are converted when the heading says so", async () => {
    const read = await climate(rows('Date Time,"Temp, °F","RH, %"', "06/25/2026 01:30:00 PM,77,50"));
    expect(read.campaign?.climate[0]?.readings).toEqual([
      { at: "2026-06-25T13:30:00", dryBulb: 25, relHum: 0.5 },
    ]); // 77 °F is 25 °C by definition of the scale
  });
});

const open = join(projectFolder(), "..", "shared", "data", "climate");
describe.skipIf(!existsSync(open))(
  "open climate files of other makers (skipped where the folder of open data is absent)",
  () => {
    const file = "variant-a-semicolon-decimal-comma.csv";
    test("titles above, semicolons, decimal commas, date and time apart", async () => {
      const { series } = await readClimateFile(join(open, file), file, null);
      expect(series.readings.length).toBeGreaterThan(100);
      expect(series.readings[0]).toEqual({
        at: "2011-06-11T08:00:00",
        dryBulb: 25.8,
        relHum: expect.closeTo(0.4505, 9),
      });
    });
    test("tabs, month first, number and dew point beside", async () => {
      const { series } = await readClimateFile(
        join(open, "variant-c-tab-us-date-gaps.txt"),
        "variant-c-tab-us-date-gaps.txt",
        null,
      );
      expect(series.readings[0]).toEqual({
        at: "2011-03-20T00:00:00",
        dryBulb: 0.45,
        relHum: expect.closeTo(0.7044, 9),
      });
    });
  },
);
