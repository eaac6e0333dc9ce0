import { gzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { codes, expectSame, lines, made, parts, read, refusal, table } from "./made-files.ts";

const HOT: [string, number, number][] = [
  ["2026-06-02T08:00", 25.4, 59.5],
  ["2026-06-02T09:00", 25.6, 58],
  ["2026-06-02T10:00", 26.1, 57.25],
];
const plain = lines(
  "time,temperature_c,rh_pct",
  "2026-06-02T08:00,25.4,59.5",
  "2026-06-02T09:00,25.6,58",
  "2026-06-02T10:00,26.1,57.25",
);
const german = lines(
  "Datum;Uhrzeit;Temperatur [°C];rel. Feuchte [%]",
  "02.06.2026;08:00;25,4;59,5",
  "02.06.2026;09:00;25,6;58",
  "02.06.2026;10:00;26,1;57,25",
);

describe("letters and packing", () => {
  test.each<[string, Uint8Array]>([
    ["UTF-8", Buffer.from(german)],
    ["UTF-8 with a mark", Buffer.from(`\uFEFF${german}`)],
    ["UTF-16 with a mark", Buffer.from(`\uFEFF${german}`, "utf16le")],
    ["UTF-16, the other way round", Buffer.from(`\uFEFF${german}`, "utf16le").swap16()],
    ["UTF-16 without a mark", Buffer.from(german, "utf16le")],
    ["Latin-1", Buffer.from(german, "latin1")],
    ["gzip", gzipSync(german)],
    ["gzip of UTF-16", gzipSync(Buffer.from(`\uFEFF${german}`, "utf16le"))],
    ["line ends of Windows", Buffer.from(german.replaceAll("\n", "\r\n"))],
    ["line ends of old Macs", Buffer.from(german.replaceAll("\n", "\r"))],
    ["no line end at the end", Buffer.from(german.trimEnd())],
  ])("%s", async (_, bytes) => {
    const found = await read(bytes);
    expect(table(found)).toEqual(HOT);
    expect(found.reading).toMatchObject({
      delimiter: ";",
      decimalMark: ",",
      dateOrder: "d-m-y",
      headings: ["Datum", "Uhrzeit", "Temperatur [°C]", "rel. Feuchte [%]"],
    });
  });
  test("a packed file that was cut short gives what came before, and says so", async () => {
    const long = lines(
      "time,temperature_c,rh_pct",
      ...made("2026-06-01T00:00", 4000).map(
        ({ at, warm, damp }) => `${new Date(at).toISOString()},${warm},${damp}`,
      ),
    );
    const packed = gzipSync(long);
    const found = await read(packed.subarray(0, packed.length - 2000));
    expect(found.reading.rowsRead).toBeGreaterThan(1000);
    expect(codes(found)).toContain("logger-cut-short");
  });
});

describe("delimiters and decimals", () => {
  test.each<[string, string]>([
    ["comma", plain],
    ["semicolon", plain.replaceAll(",", ";")],
    ["tab", plain.replaceAll(",", "\t")],
    ["upright stroke", plain.replaceAll(",", "|")],
    ["spaces", plain.replaceAll("T", " ").replace("time", "date time").replaceAll(",", "  ")],
    ["everything quoted", plain.replace(/[^,\n]+/g, '"$&"')],
    ["decimal commas in quoted cells", plain.replace(/(\d+)\.(\d+)/g, '"$1,$2"')],
    ["semicolon and decimal comma", plain.replaceAll(",", ";").replaceAll(".", ",")],
    ["a delimiter at the end of each row", plain.replaceAll("\n", ",\n")],
    ["units behind the numbers", plain.replace(/(\d\d\.?\d*),([\d.]+)\n/g, "$1 °C,$2 %\n")],
    ["spaces around the cells", plain.replaceAll(",", " , ")],
    ["a line that announces the delimiter", `sep=;\n${plain.replaceAll(",", ";")}`],
  ])("%s", async (_, text) => {
    const found = await read(text);
    expect(table(found)).toEqual(HOT);
    expect(found.reading.doubts.filter(({ severity }) => severity === "ask")).toEqual([]);
  });
  test("decimal commas between commas, without quotation marks, are put together and said", async () => {
    const found = await read(
      lines(
        "Datum/Zeit,Temperatur °C,Feuchte %",
        "02.06.2026 08:00,25,40,59,5",
        "02.06.2026 09:00,25,60,58,0",
        "02.06.2026 10:00,26,10,57,3",
        "13.06.2026 10:00,-0,50,57,3",
      ),
    );
    expect(table(found).map(([, warm, damp]) => [warm, damp])).toEqual([
      [25.4, 59.5],
      [25.6, 58],
      [26.1, 57.3],
      [-0.5, 57.3],
    ]);
    expect(codes(found)).toContain("logger-decimal-split");
  });
  test("the user's decimal mark is believed", async () => {
    const found = await read(lines("time;temperature_c;rh_pct", "2026-06-02 08:00;1.025;59"), {
      decimalMark: ",",
    });
    expect(found.reading.decimalMark).toBe(",");
  });
});

describe("around the readings", () => {
  test("preamble, unit row, footer, headings again, blank lines", async () => {
    const found = await read(
      lines(
        "Device;Store room two",
        "Exported;02.06.2026 12:00",
        "",
        "Date;Time;Temperature;Humidity",
        ";;°C;%",
        "02.06.2026;08:00;25.4;59.5",
        "",
        "Date;Time;Temperature;Humidity",
        "02.06.2026;09:00;25.6;58",
        "02.06.2026;10:00;26.1;57.25",
        "End of data",
      ),
    );
    expect(table(found)).toEqual(HOT);
    expect(found.reading.headingLine).toBe(4);
    expect(found.reading.rowsLeftOut).toEqual([
      { reason: "headings-again", count: 1, lines: [8] },
      { reason: "row-short", count: 1, lines: [11], example: "End of data" },
    ]);
  });
  test("a number without a heading before each row", async () => {
    const found = await read(
      lines(
        '"date","temp","rh"',
        '"1","2026-06-02 08:00:00",25.4,59.5',
        '"2","2026-06-02 09:00:00",25.6,58',
        '"3","2026-06-02 10:00:00",26.1,57.25',
      ),
    );
    expect(table(found)).toEqual(HOT);
    expect(codes(found)).toEqual(["logger-rows-shifted"]);
  });
  test("status words behind the readings, rows of events without a value", async () => {
    const found = await read(
      lines(
        "#,Date Time,Temp °C,RH %,Host,Stopped",
        "1,2026-06-02 08:00,25.4,59.5,,",
        "2,2026-06-02 08:20,,,Logged,",
        "3,2026-06-02 09:00,25.6,58,,",
        "4,2026-06-02 10:00,26.1,57.25,,Logged",
      ),
    );
    expect(table(found)).toEqual(HOT);
    expect(found.reading.rowsLeftOut).toEqual([{ reason: "no-value", count: 1, lines: [3] }]);
  });
  test("marks of a missing value: words, strokes, -999", async () => {
    const found = await read(
      lines(
        "time,temperature_c,rh_pct",
        "2026-06-02 08:00,-999,59",
        "2026-06-02 09:00,25,---",
        "2026-06-02 10:00,NaN,58",
        "2026-06-02 11:00,-999.0,-999",
        "2026-06-02 12:00,25,9999",
      ),
    );
    expect(table(found)).toEqual([
      ["2026-06-02T08:00", Number.NaN, 59],
      ["2026-06-02T09:00", 25, Number.NaN],
      ["2026-06-02T10:00", Number.NaN, 58],
      ["2026-06-02T12:00", 25, Number.NaN],
    ]);
    expect(found.reading.valuesMissing).toEqual({ temperature: 2, relHum: 2 });
    expect(found.reading.rowsLeftOut).toEqual([{ reason: "no-value", count: 1, lines: [5] }]);
  });
  test("a claim of 2,000 samples every ten minutes that is not so", async () => {
    const found = await read(
      lines(
        "Samples: 2,000",
        "Interval: 00:10:00",
        "time,temperature_c,rh_pct",
        ...made("2026-06-02T00:00", 1900).map(
          ({ at, warm, damp }) => `${new Date(at).toISOString().slice(0, 16)},${warm},${damp}`,
        ),
      ),
    );
    expect(found.reading.claims).toEqual({ samples: 2000, stepMinutes: 10 });
    expect(codes(found)).toEqual(["logger-claim-samples", "logger-claim-step"]);
  });
  test("a quotation mark that never closes costs no other row", async () => {
    const rows = made("2026-06-02T00:00", 500).map(
      ({ at, warm, damp }, i) =>
        `${new Date(at).toISOString().slice(0, 16)},${warm},${damp},${i === 40 ? '"door open' : ""}`,
    );
    const found = await read(lines("time,temperature_c,rh_pct,note", ...rows));
    expect(found.reading.rowsRead).toBe(500);
    expect(codes(found)).toContain("logger-quote-open");
  });
  test("nor in a file in which every cell is quoted", async () => {
    const rows = made("2026-06-02T00:00", 50).map(
      ({ at, warm, damp }, i) =>
        `"${new Date(at).toISOString().slice(0, 16)}","${warm}","${damp}","${i === 40 ? "door" : 'ok"'}`,
    );
    const found = await read(lines('"time","temperature_c","rh_pct","note"', ...rows));
    expect(found.reading.rowsRead).toBe(50);
    expect(codes(found)).toEqual(["logger-quote-open"]);
  });
  test("a remark over two lines stays in its cell, and lines are still counted right", async () => {
    const found = await read(
      lines(
        "time,note,temperature_c,rh_pct",
        '2026-06-02T08:00,"door, open\nfor staff",25.4,59.5',
        "nonsense,,1,2",
        "2026-06-02T09:00,,25.6,58",
        "2026-06-02T10:00,,26.1,57.25",
      ),
    );
    expect(table(found)).toEqual(HOT);
    expect(found.reading.rowsLeftOut[0]?.lines).toEqual([4]);
  });
});

describe("headings in other languages, or none", () => {
  const readings = made("2026-06-01T00:00", 60);
  test.each([
    ["de", "Zeitpunkt;Lufttemperatur (°C);Rel. Luftfeuchte (%)"],
    ["fr", "Date et heure;Température (°C);Humidité relative (%)"],
    ["es", "Fecha y hora;Temperatura (°C);Humedad relativa (%)"],
    ["pt", "Data e hora;Temperatura (°C);Umidade relativa (%)"],
    ["it", "Data/ora;Temperatura (°C);Umidità relativa (%)"],
    ["nl", "Datum/tijd;Temperatuur (°C);Relatieve vochtigheid (%)"],
    ["id", "Waktu;Suhu (°C);Kelembaban (%)"],
    ["short", "Time;T;RH"],
    ["French short", "Date;T (°C);HR (%)"],
    ["German short", "Zeit;T [°C];r.F. [%]"],
    ["Italian short", "Data;T °C;UR %"],
    ["units only, in a language not known", "Aika;Lämpötila °C;Kosteus %"],
    ["computer", "timestamp;temp_c;rh_percent"],
    ["none", ""],
  ])("%s", async (_, heading) => {
    const rows = readings.map(({ at, warm, damp }) => {
      const { y, m, d, H, M } = parts(at);
      return `${y}-${m}-${d} ${H}:${M};${warm};${damp}`;
    });
    expectSame(await read(lines(...(heading === "" ? [] : [heading]), ...rows)), readings);
  });
  test("without headings the values tell which is humidity, even in °F", async () => {
    const reversed = await read(
      lines("2026-06-02 08:00,59.5,25.4", "2026-06-02 09:00,58,25.6", "2026-06-02 10:00,57.25,26.1"),
    );
    expect(table(reversed)).toEqual(HOT);
    const fahrenheit = await read(lines("2026-06-02 08:00,77,45", "2026-06-02 09:00,78.8,46"));
    expect(table(fahrenheit)[0]).toEqual(["2026-06-02T08:00", 25, 45]); // 77 °F is 25 °C by definition of the scale
    expect(codes(fahrenheit)).toEqual(
      expect.arrayContaining(["logger-no-headings", "logger-unit-temperature"]),
    );
  });
  test("humidity before temperature, dew point and absolute humidity beside", async () => {
    const found = await read(
      lines(
        "Time,Humidity %RH,Abs. humidity g/m³,Dew point °C,Temperature °C",
        "2026-06-02 08:00,59.5,14.1,16.9,25.4",
        "2026-06-02 09:00,58,14,16.7,25.6",
        "2026-06-02 10:00,57.25,14,16.9,26.1",
      ),
    );
    expect(table(found)).toEqual(HOT);
    expect(found.reading.columns).toEqual({ time: 0, relHum: 1, dewPoint: 3, temperature: 4 });
  });
});

describe("units", () => {
  test.each([
    ["°F in the heading", "Temp (°F)", "77", 25],
    ["°F behind the value", "Temperature", "77 °F", 25],
    ["K in the heading", "Temperature [K]", "298.15", 25],
    ["°F by the values alone", "Temperature", "77", 25],
    ["°C by the values alone", "Temperature", "25", 25],
  ])("%s", async (_, heading, value, celsius) => {
    const found = await read(
      lines(`time,${heading},RH`, `2026-06-02 08:00,${value},60`, `2026-06-02 09:00,${value},61`),
    );
    expect(found.series.dryBulb[0]).toBeCloseTo(celsius, 9);
  });
  test("figures that may be °C in a loft or °F in a cold store are asked about", async () => {
    const found = await read(
      lines("time,temperature,rh", "2026-06-02 08:00,41,60", "2026-06-02 09:00,42,61"),
    );
    expect(found.reading.unit.temperature).toBe("°C");
    expect(found.reading.doubts.map(({ code, severity }) => `${code} ${severity}`)).toEqual([
      "logger-unit-temperature ask",
    ]);
  });
  test("a fraction is known by its values, whatever the heading says", async () => {
    const found = await read(
      lines("time,temp (°C),RH (%)", "2026-06-02 08:00,25,0.595", "2026-06-02 09:00,25,0.58"),
    );
    expect(found.series.relHum[0]).toBe(0.595);
    expect(found.reading.unit.relHum).toBe("fraction");
    expect(codes(found)).toEqual(["logger-unit-humidity"]);
    const corrected = await read(lines("time,temp (°C),RH (%)", "2026-06-02 08:00,25,0.595"), {
      unit: { relHum: "%" },
    });
    expect(corrected.series.relHum[0]).toBeCloseTo(0.00595, 9);
  });
  test("humidity is worked out from the dew point where there is none", async () => {
    const found = await read(
      lines("time,temp (°C),dew point (°C)", "2026-06-02 08:00,25,13.86", "2026-06-02 09:00,25,25"),
    );
    expect(found.series.relHum[0]).toBeCloseTo(0.5, 2); // common tables: air of 25 °C with a dew point of 13.9 °C is at 50 %; from memory
    expect(found.series.relHum[1]).toBe(1);
    expect(found.reading.isHumidityFromDewPoint).toBe(true);
  });
});

describe("files that cannot be used are refused with a reason", () => {
  test.each<[string, string | Uint8Array, string[]]>([
    ["empty", "", ["logger-empty"]],
    ["prose", "This is a letter.\nIt has no readings.\n", ["logger-no-rows"]],
    ["a workbook", Buffer.from("PK\u0003\u0004\u0000\u0000xl/workbook.xml"), ["logger-not-text"]],
    [
      "no values",
      lines("time,pressure", "2026-06-02 08:00,1013", "2026-06-02 09:00,1012"),
      ["logger-no-values"],
    ],
    ["no date", lines("time,temperature,rh", "08:00,25,59", "09:00,25,58"), ["logger-no-date"]],
    ["bytes of something else", Buffer.from([1, 2, 3, 0, 0, 0, 9, 9, 200, 0, 0, 1]), ["logger-not-text"]],
  ])("%s", async (_, file, expected) => {
    expect(await refusal(file)).toEqual(expected);
  });
  test("a file that is not there", async () => {
    const { readLogger } = await import("../../../src/edge/intake/loggers/read-logger.ts");
    const outcome = await readLogger("no-such-file.csv");
    expect(outcome.ok ? [] : outcome.problems.map(({ code }) => code)).toEqual(["logger-unreadable"]);
  });
});
