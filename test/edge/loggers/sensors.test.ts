import { describe, expect, test } from "vitest";
import { codes, lines, read, refusal, table } from "./made-files.ts";

const two = lines(
  "time;Ward temp (°C);Ward RH (%);Bench temp (°C);Bench RH (%)",
  "2026-06-02 08:00;20.5;51;24.5;41",
  "2026-06-02 09:00;20.6;52;24.6;42",
);

describe("several sensors in one file", () => {
  test("side by side: the first is read, and that is said", async () => {
    const found = await read(two);
    expect(table(found)[0]).toEqual(["2026-06-02T08:00", 20.5, 51]);
    expect(found.reading.sensors.map(({ name }) => name)).toEqual(["Ward", "Bench"]);
    expect(found.reading.doubts.find(({ code }) => code === "logger-several-sensors")?.severity).toBe("ask");
  });
  test("the user chooses by name or by columns", async () => {
    const named = await read(two, { sensor: "Bench" });
    const numbered = await read(two, { columns: { temperature: 3, relHum: "Bench RH (%)" } });
    for (const found of [named, numbered]) {
      expect(table(found)[0]).toEqual(["2026-06-02T08:00", 24.5, 41]);
      expect(codes(found)).toEqual([]);
    }
  });
  test("what was understood can be given back as the correction", async () => {
    const { reading, series } = await read(two, { sensor: "Bench" });
    const again = await read(two, reading);
    expect(again.reading).toEqual(reading);
    expect(again.series).toEqual(series);
  });
  test("a choice that is not there is refused with what there is", async () => {
    expect(await refusal(two, { sensor: "Shelf" })).toEqual(["logger-column-unknown"]);
    expect(await refusal(two, { columns: { temperature: "warmth" } })).toEqual(["logger-column-unknown"]);
  });
  test("two temperatures and one humidity: the pair beside each other, and that is said", async () => {
    const found = await read(
      lines("time,T1 °C,T2 °C,RH %", "2026-06-02 08:00,20,21,50", "2026-06-02 09:00,20,21,51"),
    );
    expect(found.reading.columns).toEqual({ time: 0, temperature: 2, relHum: 3 });
    expect(codes(found)).toEqual(["logger-several-sensors"]);
  });
  test("names in a row above the headings", async () => {
    const found = await read(
      lines(
        ";Ward;;Bench;",
        "time;T [°C];RH [%];T [°C];RH [%]",
        "2026-06-02 08:00;20.5;51;24.5;41",
        "2026-06-02 09:00;20.6;52;24.6;42",
      ),
      { sensor: "Bench" },
    );
    expect(table(found)[0]).toEqual(["2026-06-02T08:00", 24.5, 41]);
  });
  test("all temperatures before all humidities", async () => {
    const found = await read(
      lines("time,T1,T2,RH1,RH2", "2026-06-02 08:00,20.5,24.5,51,41", "2026-06-02 09:00,20.6,24.6,52,42"),
      { sensor: "T2" },
    );
    expect(table(found)[0]).toEqual(["2026-06-02T08:00", 24.5, 41]);
  });
  test("row by row: a column says which sensor", async () => {
    const text = lines(
      "Sensor,Time,Temperature (°C),Humidity (%)",
      "Ward,2026-06-02 08:00,20.5,51",
      "Bench,2026-06-02 08:00,24.5,41",
      "Ward,2026-06-02 09:00,20.6,52",
      "Bench,2026-06-02 09:00,24.6,42",
    );
    const first = await read(text);
    expect(table(first)).toEqual([
      ["2026-06-02T08:00", 20.5, 51],
      ["2026-06-02T09:00", 20.6, 52],
    ]);
    expect(first.reading.rowsLeftOut).toEqual([{ reason: "other-sensor", count: 2, lines: [3, 5] }]);
    expect(codes(first)).toContain("logger-several-sensors");
    expect(table(await read(text, { sensor: "Bench" }))[0]).toEqual(["2026-06-02T08:00", 24.5, 41]);
  });
  test("mean, least and most of one sensor: the mean is read", async () => {
    const found = await read(
      lines(
        "Date,Min temp °C,Max temp °C,Mean temp °C,Min RH %,Max RH %,Mean RH %",
        "2026-06-02,15,25,20,40,60,50",
        "2026-06-03,16,26,21,41,61,51",
      ),
    );
    expect(table(found)).toEqual([
      ["2026-06-02T00:00", 20, 50],
      ["2026-06-03T00:00", 21, 51],
    ]);
    expect(found.reading.usualStepMinutes).toBe(1440);
  });
  test("UTC and local time beside each other: the local one", async () => {
    const found = await read(
      lines(
        "UTC time,Local time,temp °C,rh %",
        "2026-06-02 06:00,2026-06-02 08:00,20,50",
        "2026-06-02 07:00,2026-06-02 09:00,20,50",
      ),
    );
    expect(found.reading.firstAt).toBe("2026-06-02T08:00");
    expect(codes(found)).toEqual(["logger-several-times"]);
  });
  test("a battery, a wet bulb and a carbon dioxide column are no sensors", async () => {
    const found = await read(
      lines(
        "time,CO2 (ppm),battery %,wet bulb temp °C,temp °C,rh %",
        "2026-06-02 08:00,600,99,15,20,50",
        "2026-06-02 09:00,610,99,15,21,51",
      ),
    );
    expect(found.reading.columns).toEqual({ time: 0, temperature: 4, relHum: 5 });
  });
});
