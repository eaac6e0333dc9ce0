import { describe, expect, test } from "vitest";
import { codes, lines, type MadeReading, made, read } from "./made-files.ts";

const HEADINGS = "time,temp °C,rh %";
const clock = (at: number): string => new Date(at).toISOString().slice(0, 16).replace("T", " ");
const row = ({ at, warm, damp }: MadeReading, isSilent: boolean, dress = clock): string =>
  isSilent ? `${dress(at)},,` : `${dress(at)},${warm},${damp}`;
const inside = (i: number): boolean => i >= 20 && i < 32;

describe("rows that have a time and no value", () => {
  test("a silent stretch has its ends and its rows, whichever way the file runs", async () => {
    const rows = made("2026-06-01T00:00", 60).map((each, i) => row(each, inside(i)));
    for (const text of [rows, rows.toReversed()]) {
      const found = await read(lines(HEADINGS, ...text));
      expect(found.reading.silences).toEqual({
        count: 1,
        rows: 12,
        longest: [{ from: "2026-06-01T20:00", to: "2026-06-02T07:00", rows: 12 }],
      });
      expect(codes(found)).toEqual(["logger-silent", "logger-gaps"]);
    }
  });
  test("at the beginning and at the end too", async () => {
    const rows = made("2026-06-01T00:00", 60).map((each, i) => row(each, i < 5 || i > 50));
    const { silences } = (await read(lines(HEADINGS, ...rows))).reading;
    expect(silences.longest.map(({ from, to }) => [from, to])).toEqual([
      ["2026-06-01T00:00", "2026-06-01T04:00"],
      ["2026-06-03T03:00", "2026-06-03T11:00"],
    ]);
  });
  test("empty rows beside readings at the same time are no silence", async () => {
    const rows = made("2026-06-01T00:00", 60).flatMap((each) => [row(each, false), row(each, true)]);
    const found = await read(lines(HEADINGS, ...rows));
    expect(found.reading.silences.count).toBe(0);
    expect(found.reading.doubts.map(({ code, got }) => `${code} ${got}`)).toEqual([
      "logger-rows-left-out 60 rows",
    ]);
  });
  test("its ends go with the readings beside it when summer time is put back", async () => {
    const march = Date.parse("2026-03-29T02:00Z"); // clocks go forward in Europe; Directive 2000/84/EC, from memory
    const wall = (at: number): string => clock(at >= march ? at + 3_600_000 : at);
    const rows = made("2026-03-27T00:00", 120).map((each, i) => row(each, i >= 90 && i < 100, wall));
    const { reading } = await read(lines(HEADINGS, ...rows));
    expect(reading.summerTime).toBe("taken out");
    expect(reading.silences.longest).toEqual([
      { from: "2026-03-30T18:00", to: "2026-03-31T03:00", rows: 10 },
    ]);
  });
  test("where each time says its offset, the ends are on the clock of the series", async () => {
    const rows = made("2026-06-01T00:00", 60).map((each, i) =>
      row(each, inside(i), (at) => `${new Date(at).toISOString().slice(0, 19)}+02:00`),
    );
    const { reading } = await read(lines(HEADINGS, ...rows));
    expect([reading.offset, reading.silences.longest[0]?.from]).toEqual([120, "2026-06-01T20:00"]);
  });
});
