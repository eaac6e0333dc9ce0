import { describe, expect, test } from "vitest";
import { codes, expectSame, lines, type MadeReading, made, parts, read, table } from "./made-files.ts";

const rows = (readings: readonly MadeReading[], time: (at: number) => string, delimiter = ";"): string[] =>
  readings.map(({ at, warm, damp }) => [time(at), warm, damp].join(delimiter));
const file = (
  readings: readonly MadeReading[],
  time: (at: number) => string,
  heading = "time;temperature_c;rh_pct",
): string => lines(heading, ...rows(readings, time));
const twelve = (H: string): string => String(Number(H) % 12 || 12).padStart(2, "0");
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const WRITTEN: readonly [string, (at: number) => string][] = [
  ["ISO with a T", (at) => new Date(at).toISOString().slice(0, 16)],
  ["ISO with seconds and Z", (at) => new Date(at).toISOString().replace(".000", "")],
  ["ISO with thousandths", (at) => new Date(at).toISOString().replace("Z", "")],
  [
    "year first with slashes",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${y}/${m}/${d} ${H}:${M}`;
    },
  ],
  [
    "year first without signs",
    (at) => {
      const { y, m, d, H, M, S } = parts(at);
      return `${y}${m}${d}${H}${M}${S}`;
    },
  ],
  [
    "day first with dots",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${d}.${m}.${y} ${H}:${M}`;
    },
  ],
  [
    "day first with dots, short year, no leading noughts",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${Number(d)}.${Number(m)}.${y.slice(2)} ${Number(H)}:${M}`;
    },
  ],
  [
    "day first with slashes",
    (at) => {
      const { y, m, d, H, M, S } = parts(at);
      return `${d}/${m}/${y} ${H}:${M}:${S}`;
    },
  ],
  [
    "month first, 12 hours",
    (at) => {
      const { y, m, d, H, M, S } = parts(at);
      return `${m}/${d}/${y.slice(2)} ${twelve(H)}:${M}:${S} ${Number(H) < 12 ? "AM" : "PM"}`;
    },
  ],
  [
    "month first, p.m. in Spanish",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${m}/${d}/${y} ${twelve(H)}:${M} ${Number(H) < 12 ? "a.\u00a0m." : "p.\u00a0m."}`;
    },
  ],
  [
    "short year first",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${y.slice(2)}-${m}-${d} ${H}:${M}`;
    },
  ],
  [
    "name of the month",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${d}-${MONTHS[Number(m) - 1]}-${y} ${H}:${M}`;
    },
  ],
  [
    "name of the month first",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${MONTHS[Number(m) - 1]} ${Number(d)}, ${y} ${twelve(H)}:${M} ${Number(H) < 12 ? "AM" : "PM"}`;
    },
  ],
  [
    "weekday before",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"][new Date(at).getUTCDay()]} ${d}.${m}.${y} ${H}:${M}`;
    },
  ],
  [
    "a stroke between day and time",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${d}.${m}.${y} - ${H}:${M}`;
    },
  ],
  [
    "Uhr",
    (at) => {
      const { y, m, d, H, M } = parts(at);
      return `${d}.${m}.${y} ${H}:${M} Uhr`;
    },
  ],
  ["days of a spreadsheet", (at) => (at / 86_400_000 + 25_569).toFixed(6)],
  [
    "days of a spreadsheet with a decimal comma",
    (at) => (at / 86_400_000 + 25_569).toFixed(5).replace(".", ","),
  ],
  ["seconds from 1970", (at) => String(at / 1000)],
  ["milliseconds from 1970", (at) => String(at)],
];

describe("times as loggers write them", () => {
  const readings = made("2026-05-28T06:00", 300);
  test.each(WRITTEN)("%s", async (_, time) => {
    expectSame(await read(file(readings, time)), readings);
  });
  test("a spreadsheet's day is half a day past midnight of 1899-12-30 at 0.5", async () => {
    const found = await read(lines("time;temp °C;rh", "45658.5;20;50", "45659;20;50"));
    expect(found.reading.firstAt).toBe("2025-01-01T12:00"); // 1 January 2025 is day 45658 in common spreadsheets; from memory
  });
  test("parts of the date each in a column, hours in a column of their own", async () => {
    const found = await read(
      lines(
        "year,month,day,hour,temperature,rh",
        ...readings.map(({ at, warm, damp }) => {
          const { y, m, d, H } = parts(at);
          return `${y},${Number(m)},${Number(d)},${Number(H)},${warm},${damp}`;
        }),
      ),
    );
    expectSame(found, readings);
  });
  test("date and time in two columns, with AM and PM", async () => {
    const found = await read(
      lines(
        "Date,Time,Temp (°C),RH (%)",
        ...readings.map(({ at, warm, damp }) => {
          const { y, m, d, H, M } = parts(at);
          return `${m}/${d}/${y},${twelve(H)}:${M} ${Number(H) < 12 ? "AM" : "PM"},${warm},${damp}`;
        }),
      ),
    );
    expectSame(found, readings);
  });
  test("hours 1 to 12 without AM and PM: the second round of a day is the afternoon, and that is said", async () => {
    const found = await read(
      file(readings, (at) => {
        const { y, m, d, H, M } = parts(at);
        return `${y}-${m}-${d} ${twelve(H)}:${M}`;
      }),
    );
    expectSame(found, readings);
    expect(codes(found)).toEqual(["logger-clock-twelve"]);
  });
  test("24:00 is midnight of the next day", async () => {
    const found = await read(
      lines(
        "Date;Time;Temp °C;RH %",
        "02.06.2026;23:00;20;50",
        "02.06.2026;24:00;21;51",
        "03.06.2026;01:00;22;52",
      ),
    );
    expect(table(found).map(([at]) => at)).toEqual([
      "2026-06-02T23:00",
      "2026-06-03T00:00",
      "2026-06-03T01:00",
    ]);
  });
});

describe("the order of day and month", () => {
  const slashed =
    (order: "dm" | "md") =>
    (at: number): string => {
      const { y, m, d, H, M } = parts(at);
      return `${order === "dm" ? `${d}/${m}` : `${m}/${d}`}/${y} ${H}:${M}`;
    };
  test("a day above 12 anywhere in the file decides, even after a hundred thousand rows", async () => {
    const early = made("2026-03-01T00:00", 12 * 1440, 1);
    const found = await read(file([...early, ...made("2026-03-13T00:00", 5, 1)], slashed("md")));
    expect(found.reading).toMatchObject({ dateOrder: "m-d-y", firstAt: "2026-03-01T00:00" });
    expect(codes(found)).toEqual([]);
  });
  test.each([
    ["dm", "d-m-y"],
    ["md", "m-d-y"],
  ] as const)("without one, days that follow each other decide (%s)", async (order, expected) => {
    const readings = made("2026-03-04T00:00", 24 * 6);
    const found = await read(file(readings, slashed(order)));
    expectSame(found, readings);
    expect(found.reading.dateOrder).toBe(expected);
    expect(codes(found)).toEqual(["logger-date-order-steps"]);
  });
  test("letters in the heading decide", async () => {
    const found = await read(
      lines("Time (MM/DD/YYYY HH:MM);Temp °C;RH %", "03/04/2026 08:00;20;50", "03/04/2026 09:00;20;50"),
    );
    expect(found.reading.firstAt).toBe("2026-03-04T08:00");
    expect(codes(found)).toEqual([]);
  });
  test.each([
    ["03/04/2026 08:00", "Time;Temp °C;RH %", "2026-04-03", "most of the world"],
    ["03/04/2026 08:00 AM", "Time;Temp °C;RH %", "2026-03-04", "AM and PM"],
    ["03/04/2026 08:00", "Time;Temp °F;RH %", "2026-03-04", "°F"],
  ])("%s under %s alone is asked about, with the reason", async (time, heading, day, reason) => {
    const found = await read(lines(heading, `${time};70;50`), {
      unit: { temperature: heading.includes("°F") ? "°F" : "°C" },
    });
    expect(found.reading.firstAt.slice(0, 10)).toBe(day);
    const doubt = found.reading.doubts.find(({ code }) => code === "logger-date-order");
    expect(doubt?.severity).toBe("ask");
    expect(doubt?.expected).toContain(reason);
  });
  test("dots mean day first, which is told and not asked", async () => {
    const found = await read(lines("Time;Temp °C;RH %", "03.04.2026 08:00;20;50"));
    expect(found.reading.firstAt).toBe("2026-04-03T08:00"); // dots with the day first: common practice, no source
    expect(found.reading.doubts.map(({ code, severity }) => `${code} ${severity}`)).toEqual([
      "logger-date-order note",
    ]);
  });
  test("3 March is the same day in both orders, so nothing is asked", async () => {
    const found = await read(lines("Time;Temp °C;RH %", "03/03/2026 08:00;20;50", "03/03/2026 09:00;20;50"));
    expect(found.reading.firstAt).toBe("2026-03-03T08:00");
    expect(codes(found)).toEqual([]);
  });
  test("the user's word is believed", async () => {
    const found = await read(lines("Time;Temp °C;RH %", "03/04/2026 08:00;20;50"), { dateOrder: "m-d-y" });
    expect(found.reading.firstAt).toBe("2026-03-04T08:00");
    expect(codes(found)).toEqual([]);
  });
  test("dates that a spreadsheet has turned round are left out and said", async () => {
    const found = await read(
      lines(
        "Time;Temp °C;RH %",
        "25/03/2026 08:00;20;50",
        "26/03/2026 08:00;20;50",
        "27/03/2026 08:00;20;50",
        "03/28/2026 08:00;20;50",
      ),
    );
    expect(found.reading.rowsRead).toBe(3);
    expect(codes(found)).toContain("logger-dates-mixed");
    expect(found.reading.rowsLeftOut).toEqual([
      { reason: "no-such-day", count: 1, lines: [5], example: "3/28/2026" },
    ]);
  });
});

describe("zones and summer time", () => {
  test.each([
    ["Date Time, GMT+02:00", 120],
    ["t_UTC+2", 120],
    ["Time (UTC-5:30)", -330],
    ["timestamp UTC", 0],
    ["time", null],
  ])("the heading %s means %s minutes", async (heading, offset) => {
    const found = await read(
      lines(`"${heading}",temp °C,rh %`, "2026-06-02 08:00,20,50", "2026-06-02 09:00,20,50"),
    );
    expect(found.reading.offset).toBe(offset);
  });
  test.each([
    ["Time zone: UTC+01:00", 60],
    ["Zeitzone;Europe/Berlin", 60],
    ["Timezone: Africa/Dar_es_Salaam", 180],
    ["Time Zone;-6", -360],
  ])("the preamble %s means %s minutes of standard time", async (line, offset) => {
    const found = await read(
      lines(line, "time;temp °C;rh %", "2026-06-02 08:00;20;50", "2026-06-02 09:00;20;50"),
    );
    expect(found.reading.offset).toBe(offset);
  });
  test("offsets in the cells are put to standard time", async () => {
    const found = await read(
      lines(
        "time,temp °C,rh %",
        "2026-03-29T01:00:00+01:00,20,50",
        "2026-03-29T03:00:00+02:00,21,51",
        "2026-03-29T04:00:00+02:00,22,52",
      ),
    );
    expect(table(found).map(([at]) => at)).toEqual([
      "2026-03-29T01:00",
      "2026-03-29T02:00",
      "2026-03-29T03:00",
    ]);
    expect(found.reading.offset).toBe(60);
    expect(found.reading.gaps.count).toBe(0);
  });

  /** A European wall clock: an hour ahead from 29 March 01:00 UTC to 25 October 01:00 UTC in 2026. Source: Directive 2000/84/EC, from memory. */
  const wall = (at: number): number =>
    at + (at >= Date.parse("2026-03-29T02:00Z") && at < Date.parse("2026-10-25T02:00Z") ? 3_600_000 : 0);
  const onWall = (at: number): string => new Date(wall(at)).toISOString().slice(0, 16).replace("T", " ");
  test.each([10, 15, 60])(
    "a wall clock of a whole year is put to standard time, every %d minutes",
    async (step) => {
      const readings = made("2026-01-01T00:00", (365 * 1440) / step, step);
      const found = await read(file(readings, onWall));
      expectSame(found, readings);
      expect(found.reading).toMatchObject({
        summerTime: "taken out",
        gaps: { count: 0 },
        duplicates: { count: 0 },
      });
      expect(found.reading.jumps.map(({ kind }) => kind)).toEqual(["skipped hour", "repeated hour"]);
    },
  );
  test.each([
    ["North America", "2026-03-08T02:00Z", "2026-11-01T01:00Z", "2026-01-01T00:00"],
    [
      "south-east Australia, summer over the new year",
      "2026-10-04T02:00Z",
      "2027-04-04T02:00Z",
      "2026-07-01T00:00",
    ],
  ])("a wall clock of %s", async (_, begins, ends, start) => {
    const readings = made(start, 365 * 24);
    const there = (at: number): string =>
      new Date(at + (at >= Date.parse(begins) && at < Date.parse(ends) ? 3_600_000 : 0))
        .toISOString()
        .slice(0, 16);
    expectSame(await read(file(readings, there)), readings);
  });
  test("a file that begins in summer", async () => {
    const readings = made("2026-09-01T00:00", 24 * 90);
    expectSame(await read(file(readings, onWall)), readings);
  });
  test("a stated offset is believed: the jump is said and left", async () => {
    const found = await read(file(made("2026-03-20T00:00", 24 * 20), onWall, "time UTC+1;temp °C;rh %"));
    expect(found.reading).toMatchObject({ summerTime: "none", gaps: { count: 1 } });
    expect(found.reading.doubts.find(({ code }) => code === "logger-summer-time")?.severity).toBe("ask");
  });
  test("the user may say that the clock was never changed", async () => {
    const found = await read(file(made("2026-03-20T00:00", 24 * 20), onWall), { summerTime: "none" });
    expect(found.reading).toMatchObject({ summerTime: "none", gaps: { count: 1, missing: 1 } });
  });
  test("an hour lost on another night is a gap and no jump", async () => {
    const readings = made("2026-05-20T00:00", 24 * 20).filter((_, i) => i !== 50 && i !== 51 && i !== 26);
    const found = await read(file(readings, (at) => new Date(at).toISOString().slice(0, 16)));
    expect(found.reading).toMatchObject({ jumps: [], gaps: { count: 2, missing: 3, hours: 3 } });
  });
});

describe("order, repetition, gaps", () => {
  const readings = made("2026-06-02T00:00", 48);
  const iso = (at: number): string => new Date(at).toISOString().slice(0, 16);
  test("newest first", async () => {
    const found = await read(file([...readings].reverse(), iso));
    expectSame(found, readings);
    expect(found.reading).toMatchObject({ isNewestFirst: true, outOfOrder: 0 });
  });
  test("rows out of order are put in order and counted", async () => {
    const shuffled = [...readings.slice(0, 10), ...readings.slice(20), ...readings.slice(10, 20)];
    const found = await read(file(shuffled, iso));
    expectSame(found, readings);
    expect(found.reading.outOfOrder).toBe(1);
  });
  test("a time that comes twice is kept once; other values at it are said", async () => {
    const twice = [...readings, readings[7], { ...readings[9], warm: 1 }] as MadeReading[];
    const found = await read(file(twice, iso));
    expectSame(found, readings);
    expect(found.reading.duplicates).toEqual({ count: 2, differing: 1 });
    expect(found.reading.rowsLeftOut).toEqual([{ reason: "same-time", count: 2, lines: [50, 51] }]);
  });
  test("two rows of one time that complete each other become one reading", async () => {
    const found = await read(
      lines("time,temp °C,rh %", "2026-06-02 08:00,20,", "2026-06-02 08:00,,50", "2026-06-02 09:00,21,51"),
    );
    expect(table(found)).toEqual([
      ["2026-06-02T08:00", 20, 50],
      ["2026-06-02T09:00", 21, 51],
    ]);
    expect(found.reading.duplicates).toEqual({ count: 0, differing: 0 });
  });
  test("gaps are told with their ends and what is missing", async () => {
    const found = await read(
      file(
        readings.filter((_, i) => i < 10 || i > 15),
        iso,
      ),
    );
    expect(found.reading.gaps).toEqual({
      count: 1,
      missing: 6,
      hours: 6,
      longest: [{ from: "2026-06-02T09:00", to: "2026-06-02T16:00", missing: 6 }],
    });
  });
  test("a clock that trembles by a second makes no gaps", async () => {
    const trembling = made("2026-06-02T00:00", 500, 1).map((each, i) => ({
      ...each,
      at: each.at + (i % 3 === 1 ? -1000 : 0),
    }));
    const found = await read(file(trembling, (at) => new Date(at).toISOString().slice(0, 19)));
    expect(found.reading).toMatchObject({ usualStepMinutes: 1, gaps: { count: 0 }, rowsRead: 500 });
  });
});
