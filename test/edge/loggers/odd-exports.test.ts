import { describe, expect, test } from "vitest";
import { codes, expectSame, lines, type MadeReading, made, parts, read } from "./made-files.ts";

const readings = made("2026-03-01T00:00", 200);
const comma = (value: number): string => String(value).replace(".", ",");
type Parts = ReturnType<typeof parts>;
type Row = (time: Parts, each: MadeReading, i: number) => string;

const file = (head: readonly string[], row: Row): string =>
  lines(...head, ...readings.map((each, i) => row(parts(each.at), each, i)));

/** Exports as they are met in the wild, all invented: the lines above the readings and how one row is written. */
const EXPORTS: readonly [string, readonly string[], Row][] = [
  [
    "a French read-out with a preamble and everything quoted",
    [
      '"Rapport"',
      '"Début";"01/03/2026 00:00:00"',
      '"Nombre de mesures";"200"',
      "",
      '"Date";"Heure";"Température (°C)";"Humidité (%HR)"',
    ],
    ({ y, m, d, H, M, S }, { warm, damp }) =>
      `"${d}/${m}/${y}";"${H}:${M}:${S}";"${comma(warm)}";"${comma(damp)}"`,
  ],
  [
    "columns held apart by spaces",
    ["Logger: A", "Date       Time      Temp    RH"],
    ({ y, m, d, H, M, S }, { warm, damp }) =>
      `${y}-${m}-${d} ${H}:${M}:${S}  ${warm.toFixed(2).padStart(6)}  ${damp.toFixed(2).padStart(6)}`,
  ],
  [
    "the unit in a column of its own",
    ["Date,Time,Temperature,Unit,Humidity,Unit"],
    ({ y, m, d, H, M }, { warm, damp }) => `${d}-${m}-${y},${H}:${M},${warm},C,${damp},%`,
  ],
  [
    "sixty lines of settings first",
    [...Array.from({ length: 60 }, (_, i) => `# setting ${i}: ${i * 3}`), "Time,Temp C,RH %"],
    ({ y, m, d, H, M }, { warm, damp }) => `${y}-${m}-${d} ${H}:${M},${warm},${damp}`,
  ],
  [
    "headings over two rows and units in a third",
    ["TIMESTAMP\tRECORD\tAirTC_Avg\tRH", "TS\tRN\tDeg C\t%", "\t\tAvg\tSmp"],
    ({ y, m, d, H, M, S }, { warm, damp }, i) => `"${y}-${m}-${d} ${H}:${M}:${S}"\t${i}\t${warm}\t${damp}`,
  ],
  [
    "pressure with thousands beside",
    ["Datum;Luftdruck [hPa];Luftfeuchtigkeit [%];Temperatur [°C];Taupunkt [°C]"],
    ({ y, m, d, H, M }, { warm, damp }) =>
      `${d}.${m}.${y} ${H}:${M};1.013,2;${comma(damp)};${comma(warm)};12,1`,
  ],
  [
    "saved as one column: each row in one pair of quotation marks",
    ['"time,temp,rh"'],
    ({ y, m, d, H, M }, { warm, damp }) => `"${y}-${m}-${d} ${H}:${M},${warm},${damp}"`,
  ],
  [
    "headings behind a #",
    ["# station: X", "#time,temp_C,rh"],
    ({ y, m, d, H, M }, { warm, damp }) => `${y}-${m}-${d} ${H}:${M},${warm},${damp}`,
  ],
  [
    "time with a dot",
    ["Data;Ora;Temp. (°C);U.R. (%)"],
    ({ y, m, d, H, M }, { warm, damp }) => `${d}/${m}/${y};${H}.${M};${comma(warm)};${comma(damp)}`,
  ],
  [
    "hours with an h",
    ["Date et heure;Temp. (°C);HR (%)"],
    ({ y, m, d, H, M }, { warm, damp }) => `${d}/${m}/${y} ${H}h${M};${comma(warm)};${comma(damp)}`,
  ],
  [
    "month names in Spanish with dots",
    ["Fecha;Temperatura;Humedad"],
    ({ y, d, H, M }, { warm, damp }) => `${d}-mar.-${y} ${H}:${M};${comma(warm)};${comma(damp)}`,
  ],
  [
    "month names in German",
    ["Zeit;Temperatur;Feuchte"],
    ({ y, d, H, M }, { warm, damp }) => `${Number(d)}. März ${y} ${H}:${M};${comma(warm)};${comma(damp)}`,
  ],
  [
    "a spreadsheet's day and part of a day in two columns",
    ["Date;Time;T;RH"],
    (_, { at, warm, damp }) => {
      const day = at / 86_400_000 + 25_569;
      return `${Math.floor(day)};${comma(Number((day % 1).toFixed(5)))};${comma(warm)};${comma(damp)}`;
    },
  ],
  [
    "time behind the values",
    ["T;RH;Zeit"],
    ({ y, m, d, H, M }, { warm, damp }) => `${comma(warm)};${comma(damp)};${d}.${m}.${y} ${H}:${M}`,
  ],
  [
    "values with their unit behind a hard space",
    ["Time;Temp;RH"],
    ({ y, m, d, H, M }, { warm, damp }) =>
      `${d}.${m}.${y} ${H}:${M};${comma(warm)}\u00a0°C;${comma(damp)}\u00a0%`,
  ],
  [
    "one sign for °C, fullwidth headings",
    ["时间,温度(℃),湿度(%)"],
    ({ y, m, d, H, M }, { warm, damp }) => `${y}-${m}-${d} ${H}:${M},${warm},${damp}`,
  ],
  [
    "Cyrillic headings",
    ["Дата и время;Температура, °C;Влажность, %"],
    ({ y, m, d, H, M }, { warm, damp }) => `${d}.${m}.${y} ${H}:${M};${comma(warm)};${comma(damp)}`,
  ],
  [
    "ISO without signs and with Z",
    ["time,temp,rh"],
    ({ y, m, d, H, M, S }, { warm, damp }) => `${y}${m}${d}T${H}${M}${S}Z,${warm},${damp}`,
  ],
  [
    "six figures for the day, four for the time",
    ["time,temp,rh"],
    ({ y, m, d, H, M }, { warm, damp }) => `${y.slice(2)}${m}${d} ${H}${M},${warm},${damp}`,
  ],
  [
    "day of the year",
    ["Year,DOY,Hour,Temp,RH"],
    ({ y, H }, { at, warm, damp }) =>
      `${y},${Math.floor((at - Date.parse("2026-01-01T00:00Z")) / 86_400_000) + 1},${Number(H)},${warm},${damp}`,
  ],
  [
    "year, month, day and hour by two letters",
    ["-BEGIN-", "Dates (month/day/year): 03/01/2026 through 03/09/2026", "-END-", "YEAR,MO,DY,HR,T2M,RH2M"],
    ({ y, m, d, H }, { warm, damp }) => `${y},${Number(m)},${Number(d)},${Number(H)},${warm},${damp}`,
  ],
  [
    "alarm words between the values",
    ["Nr;Date;Alarm;Temp;Alarm;RH"],
    ({ y, m, d, H, M }, { warm, damp }, i) =>
      `${i};${d}.${m}.${y} ${H}:${M};ok;${comma(warm)};HIGH;${comma(damp)}`,
  ],
  [
    "each quantity in a row of its own",
    ["time,parameter,value"],
    ({ y, m, d, H, M }, { warm, damp }) =>
      `${y}-${m}-${d} ${H}:${M},temperature,${warm}\n${y}-${m}-${d} ${H}:${M},humidity,${damp}`,
  ],
];

describe("odd exports are read without a hint, and again when what was understood is given back", () => {
  test.each(EXPORTS)("%s", async (_, head, row) => {
    const text = file(head, row);
    const found = await read(text);
    expectSame(found, readings);
    const again = await read(text, found.reading);
    expectSame(again, readings);
    expect({ ...again.reading, doubts: [] }).toEqual({ ...found.reading, doubts: [] });
  });
  test("dates without a year are put into one without 29 February, and that is asked about", async () => {
    const found = await read(
      file(
        ["Month,Day,Hour,DryBulb,RelHum"],
        ({ m, d, H }, { warm, damp }) => `${Number(m)},${Number(d)},${Number(H)},${warm},${damp}`,
      ),
    );
    expect(found.reading).toMatchObject({ rowsRead: 200, firstAt: "2001-03-01T00:00" });
    expect(codes(found)).toEqual(["logger-no-year"]);
  });
  test("two exports in one file are read as one, and claims of each are not held against it", async () => {
    const one = (from: number, to: number): string[] => [
      "Logger X",
      `Samples ${to - from}`,
      "Time,Temp C,RH %",
      ...readings
        .slice(from, to)
        .map(({ at, warm, damp }) => `${new Date(at).toISOString().slice(0, 16)},${warm},${damp}`),
    ];
    const found = await read(lines(...one(0, 120), "", ...one(120, 200)));
    expectSame(found, readings);
    expect(codes(found)).toEqual(["logger-rows-left-out"]);
  });
  test("readings twice a day at 8 and 12 are no clock of twelve hours", async () => {
    const found = await read(
      lines(
        "time,temp °C,rh %",
        ...Array.from(
          { length: 20 },
          (_, i) =>
            `2026-06-${String(i + 1).padStart(2, "0")} 08:00,20.${i},50\n2026-06-${String(i + 1).padStart(2, "0")} 12:00,25.${i},51`,
        ),
      ),
    );
    expect(found.reading.clock).toBe(24);
    expect(found.reading.rowsRead).toBe(40);
  });
  test("another sensor far down in the file is left out and asked about", async () => {
    const rows = (name: string, n: number): string[] =>
      made("2026-03-01T00:00", n, 10).map(
        ({ at, warm, damp }) => `${name},${new Date(at).toISOString().slice(0, 16)},${warm},${damp}`,
      );
    const text = lines("Sensor,Time,Temp °C,RH %", ...rows("Ward", 9000), ...rows("Bench", 300));
    const found = await read(text);
    expect(found.reading.rowsRead).toBe(9000);
    expect(codes(found)).toEqual(["logger-several-sensors"]);
    expect((await read(text, { sensor: "Bench" })).reading.rowsRead).toBe(300);
  });
});
