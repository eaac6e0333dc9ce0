import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { sayProblem } from "../../../src/core/say/problems.ts";
import { readClimateFile } from "../../../src/edge/intake/climate.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { codes, folderWith, readWith, rows, the } from "./campaign-folder.ts";

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
  test("rows that cannot be read are noted with the first of their lines, and left out", async () => {
    const read = await climate(
      rows(
        "time,temperature_c,rh_pct",
        "2026-06-01T07:00,25,59",
        "2026-06-01T08:00,warm,",
        "later,25,59",
        "2026-06-01T09:00,25,159",
        "2026-06-01T10:00,25,59",
      ),
    );
    expect(read.problems.map(sayProblem)).toEqual([
      "climate/ward.csv: 1 value cannot be relative humidity and stayed empty. Figures such as -999 stand for a missing value; look at the sensor if there are many.",
      'climate/ward.csv, line 4: 1 row left out: the time cannot be read, e.g. "later,25,59". Nothing needs to be done if these are lines of the logger itself.',
      "climate/ward.csv, line 3: 1 row left out: there is neither temperature nor humidity. Nothing needs to be done if these are lines of the logger itself.",
      'climate/ward.csv: 1 value, "warm", cannot be a number and stayed empty. Look at these rows.',
    ]);
    expect(read.problems.every(({ severity }) => severity === "note")).toBe(true);
    expect(read.counts.climate).toEqual({ rows: 5, used: 3 });
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
  test("a silent stretch is no gap; what is missing beside it is", async () => {
    const read = await climate(
      rows(
        "time,temperature_c,rh_pct",
        ...hourly(
          60,
          (i) => (i > 19 && i < 30 ? "," : moving(i)),
          (i) => i > 24 && i < 28,
        ),
      ),
    );
    expect(codes(read)).toEqual(["reader-silent"]);
    expect(the("reader-silent", read).expected).toBe("from 2026-06-01 20:00 to 2026-06-02 05:00");
    expect(read.counts.climate).toEqual({ rows: 57, used: 50 });
    const late = await climate(
      rows(
        "time,temperature_c,rh_pct",
        ...hourly(
          60,
          (i) => (i > 19 && i < 25 ? "," : moving(i)),
          (i) => i > 24 && i < 40,
        ),
      ),
    );
    expect(codes(late)).toEqual(["reading-gap", "reader-silent"]);
    expect(the("reading-gap", late).expected).toBe("from 2026-06-02 00:00 to 2026-06-02 16:00");
  });
  test("a reader that falls silent to the end is noted, one line of the logger's own is not", async () => {
    const silent = hourly(40, (i) => (i > 29 ? "," : moving(i)));
    expect(the("reader-silent", await climate(rows("time,temperature_c,rh_pct", ...silent))).expected).toBe(
      "from 2026-06-02 06:00 to 2026-06-02 15:00",
    );
    const stopped = [...hourly(40, moving), "2026-06-02T15:10,,"];
    expect(codes(await climate(rows("time,temperature_c,rh_pct", ...stopped)))).toEqual([
      "logger-rows-left-out",
    ]);
  });
  test("a silence between equal values parts them", async () => {
    const still = hourly(60, (i) =>
      i === 30 || i === 31 ? "," : i < 20 || i > 40 ? moving(i) : "25.00,60.00",
    );
    expect(codes(await climate(rows("time,temperature_c,rh_pct", ...still)))).toEqual(["reader-silent"]);
  });
  test("the newest reading may come first; humidity that is never above 1 is a fraction", async () => {
    const read = await climate(rows("time,rh_pct", ...hourly(8, (i) => `0.${50 + i}`).reverse()));
    const fraction = the("logger-unit-humidity", read);
    expect(fraction.severity).toBe("note");
    expect(fraction.remedy).toContain("write per cent");
    expect(read.campaign?.climate[0]?.readings[0]).toEqual({ at: "2026-06-01T00:00:00", relHum: 0.5 });
  });
  test("readings out of order are put in order", async () => {
    const [first = "", second = "", ...others] = hourly(8, moving);
    const read = await climate(rows("time,temperature_c,rh_pct", second, first, ...others));
    expect(the("logger-order", read).got).toBe("1 row");
    expect(read.campaign?.climate[0]?.readings.map(({ at }) => at.slice(11, 13))).toEqual([
      "00",
      "01",
      "02",
      "03",
      "04",
      "05",
      "06",
      "07",
    ]);
  });
  test("a file without headings is read, and what was taken for what is noted", async () => {
    const read = await climate(rows("2026-06-01T08:00,25.4,59.4", "2026-06-01T09:00,25.5,59.3"));
    expect(the("logger-no-headings", read).remedy).toBe(
      "Put the headings time, temperature_c, rh_pct above the readings.",
    );
    expect(read.campaign?.climate[0]?.readings[1]).toEqual({
      at: "2026-06-01T09:00:00",
      dryBulb: 25.5,
      relHum: expect.closeTo(0.593, 9),
    });
  });
  test.each(["", "a letter about the loggers\n", "time,light_lux\n2026-06-01T08:00,40\n"])(
    "%j is no file of readings; that is noted and the campaign goes on",
    async (text) => {
      const read = await climate(text);
      expect(read.problems.map(({ severity, file }) => `${severity} ${file}`)).toEqual([
        "note climate/ward.csv",
      ]);
      expect(read.campaign?.climate).toEqual([]);
    },
  );
  test("a workbook among the climate files is to be mended", async () => {
    const { severity, remedy } = the("logger-not-text", await climate("PK\u0003\u0004rest"));
    expect(severity).toBe("stop");
    expect(remedy).toContain("CSV");
  });

  const undated = rows(
    "time,temperature_c,rh_pct",
    "03/04/2026 08:00,25.4,59.4",
    "03/04/2026 09:00,25.5,59.3",
  );
  test("dates that nothing settles are asked about, and no reading is used", async () => {
    const read = await climate(undated);
    expect(sayProblem(the("ambiguous-date", read))).toBe(
      'climate/ward.csv: "3/4/2026" can be read in two ways (day first or month first). Until then no reading is used: write yyyy-mm-dd, or set "dates" in campaign.json to "day first" or "month first".',
    );
    expect(codes(read)).toEqual(["ambiguous-date"]);
    expect(read.campaign?.climate).toEqual([]);
    expect(read.counts.climate).toEqual({ rows: 2, used: 0 });
  });
  test.each([
    ["day first", undated, "2026-04-03"],
    ["month first", undated, "2026-03-04"],
    ["month first", undated.replaceAll("03/04", "25/04"), "2026-04-25"],
    ["month first", undated.replaceAll("/", "."), "2026-04-03"],
  ] as const)(
    "the campaign's %s settles what the file leaves open, and nothing else: %s",
    async (order, text, day) => {
      const folder = await folderWith({ "climate/ward.csv": text });
      const { series } = await readClimateFile(
        join(folder, "climate", "ward.csv"),
        "climate/ward.csv",
        order,
      );
      expect(series.readings.map(({ at }) => at.slice(0, 10))).toEqual([day, day]);
    },
  );
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
