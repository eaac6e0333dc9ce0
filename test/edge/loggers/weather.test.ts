import { describe, expect, test } from "vitest";
import { codes, lines, read, table } from "./made-files.ts";

const HEAD = [
  "LOCATION,INVENTED BAY,XX,NOWHERE,TMY2-00001,000001,-6.50,39.25,3.0,12.0",
  "DESIGN CONDITIONS,0",
  "TYPICAL/EXTREME PERIODS,0",
  "GROUND TEMPERATURES,0",
  "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
  "COMMENTS 1,invented",
  "COMMENTS 2,invented",
  "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
];
const epwRow = (
  year: number,
  month: number,
  day: number,
  hour: number,
  warm: number,
  damp: number,
  minute = 60,
): string =>
  `${year},${month},${day},${hour},${minute},A7A7*0?0?,${warm},20.5,${damp},101200,0,0,346,0,0,0,0,0,0,0,350,3.6,10,10,0.1,0,0,999999099,17,0.0620,0,88`;

describe("EPW", () => {
  test("a typical year of months of different years is dated in one, the hour is the one that ends", async () => {
    const found = await read(
      lines(
        ...HEAD,
        epwRow(1982, 1, 31, 23, 26.5, 81),
        epwRow(1982, 1, 31, 24, 26.25, 82),
        epwRow(1974, 2, 1, 1, 26, 83),
      ),
    );
    expect(table(found)).toEqual([
      ["2001-01-31T23:00", 26.5, 81],
      ["2001-02-01T00:00", 26.25, 82],
      ["2001-02-01T01:00", 26, 83],
    ]);
    expect(found.reading).toMatchObject({
      kind: "epw",
      offset: 180,
      place: {
        name: "INVENTED BAY, XX, NOWHERE",
        latitude: -6.5,
        longitude: 39.25,
        elevation: 12,
        isTypicalYear: true,
        nominalYear: 2001,
      },
    });
    expect(codes(found)).toEqual([]);
  });
  test("99.9 and 999 stand for missing values", async () => {
    const found = await read(lines(...HEAD, epwRow(1982, 1, 1, 1, 99.9, 80), epwRow(1982, 1, 1, 2, 26, 999)));
    expect(table(found)).toEqual([
      ["1982-01-01T01:00", Number.NaN, 80],
      ["1982-01-01T02:00", 26, Number.NaN],
    ]);
  });
  test("a measured year keeps its year", async () => {
    const measured = HEAD.map((line) => line.replace("TMY2-00001", "measured"));
    const found = await read(
      lines(...measured, epwRow(2024, 2, 29, 1, 26, 80, 0), epwRow(2024, 2, 29, 2, 26, 80, 0)),
    );
    expect(found.reading).toMatchObject({ firstAt: "2024-02-29T01:00", place: { isTypicalYear: false } });
  });
});

test("TMY3: site line, headings with the order of the date, hours 01:00 to 24:00", async () => {
  const found = await read(
    lines(
      '999999,"INVENTED AP",XX,-5.0,25.500,-80.250,11',
      "Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),Dry-bulb source,Dry-bulb uncert (code),Dew-point (C),RHum (%),RHum source,RHum uncert (code),Lprecip quantity (hr)",
      "01/31/1995,23:00,0,19.4,A,7,17.8,90,A,7,1",
      "01/31/1995,24:00,0,18.9,A,7,17.5,91,A,7,1",
      "02/01/1981,01:00,0,18.5,A,7,17.2,92,A,7,1",
    ),
  );
  expect(table(found)).toEqual([
    ["2001-01-31T23:00", 19.4, 90],
    ["2001-02-01T00:00", 18.9, 91],
    ["2001-02-01T01:00", 18.5, 92],
  ]);
  expect(found.reading).toMatchObject({
    kind: "tmy3",
    offset: -300,
    dateOrder: "m-d-y",
    place: { name: "INVENTED AP, XX", latitude: 25.5, longitude: -80.25, isTypicalYear: true },
  });
});

test("hourly weather under a row of what and where", async () => {
  const found = await read(
    lines(
      "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation",
      "-6.5,39.25,12.0,10800,Africa/Dar_es_Salaam,EAT",
      "",
      "time,temperature_2m (°C),relative_humidity_2m (%)",
      "2026-03-15T00:00,24.2,95",
      "2026-03-15T01:00,24.0,94",
    ),
  );
  expect(table(found)[0]).toEqual(["2026-03-15T00:00", 24.2, 95]);
  expect(found.reading).toMatchObject({
    kind: "hourly weather",
    offset: 180,
    zone: "Africa/Dar_es_Salaam",
    place: { latitude: -6.5, longitude: 39.25, elevation: 12, isTypicalYear: false },
  });
});

test("names over values, then year, month, day, hour and minute apart", async () => {
  const found = await read(
    lines(
      "Source,Location ID,Latitude,Longitude,Time Zone,Elevation",
      "Invented,1,9.5,-1.25,0,150",
      "Year,Month,Day,Hour,Minute,Temperature,Relative Humidity",
      "2022,6,2,0,30,26.5,81",
      "2022,6,2,1,30,26.25,82",
    ),
  );
  expect(table(found)).toEqual([
    ["2022-06-02T00:30", 26.5, 81],
    ["2022-06-02T01:30", 26.25, 82],
  ]);
  expect(found.reading).toMatchObject({
    offset: 0,
    place: { latitude: 9.5, longitude: -1.25, elevation: 150 },
  });
});

test("months of different years under any headings are a typical year; a table of the months above is no readings", async () => {
  const years = [2012, 2007, 2015, 2009];
  const rows = years.flatMap((year, month) =>
    Array.from({ length: 28 * 24 }, (_, i) => {
      const at = new Date(Date.UTC(year, month, 1, i)).toISOString();
      return `${at.slice(0, 10).replaceAll("-", "")}:${at.slice(11, 13)}00,${(20 + month + (i % 24) / 10).toFixed(1)},${60 + (i % 20)},0`;
    }),
  );
  const found = await read(
    lines(
      "Latitude (decimal degrees): 9.500",
      "Longitude (decimal degrees): -1.250",
      "Elevation (m): 150",
      "month,year",
      ...years.map((year, month) => `${month + 1},${year}`),
      "time(UTC),T2m,RH,G(h)",
      ...rows,
      "",
      "T2m: air temperature, invented",
    ),
  );
  expect(found.reading).toMatchObject({
    kind: "hourly weather",
    rowsRead: 4 * 28 * 24,
    offset: 0,
    firstAt: "2001-01-01T00:00",
    lastAt: "2001-04-28T23:00",
    place: { latitude: 9.5, longitude: -1.25, elevation: 150, isTypicalYear: true, nominalYear: 2001 },
  });
});

test("two stretches of different years in the wrong order are no typical year", async () => {
  const rows = (start: string): string[] =>
    Array.from(
      { length: 48 },
      (_, i) =>
        `${new Date(Date.parse(start) + i * 3_600_000).toISOString().slice(0, 16)},20,${50 + (i % 7)}`,
    );
  const found = await read(
    lines("time,temp °C,rh %", ...rows("2025-06-09T00:00Z"), ...rows("2024-08-12T00:00Z")),
  );
  expect(found.reading).toMatchObject({ kind: "logger", firstAt: "2024-08-12T00:00", outOfOrder: 1 });
});
