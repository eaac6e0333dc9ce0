import { gzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, test } from "vitest";
import type { LoggerImport } from "../../../src/edge/intake/loggers/logger-reading.ts";
import { expectSame, type MadeReading, made, parts, read } from "./made-files.ts";

/** Everything that makes one export look other than the next. */
interface Dress {
  readonly delimiter: "," | ";" | "\t" | "|";
  readonly isDecimalComma: boolean;
  readonly isQuoted: boolean;
  readonly dates: "ymd" | "dmy" | "mdy" | "iso" | "serial" | "unix" | "named";
  readonly isTwelve: boolean;
  readonly isApart: boolean;
  readonly isDampFirst: boolean;
  readonly isFahrenheit: boolean;
  readonly isFraction: boolean;
  readonly isNumbered: boolean;
  readonly hasStatus: boolean;
  readonly preamble: number;
  readonly isCrlf: boolean;
  readonly packing: "utf8" | "mark" | "utf16" | "gzip";
  readonly isNewestFirst: boolean;
  readonly step: number;
  readonly start: string;
}

const dress: fc.Arbitrary<Dress> = fc.record({
  delimiter: fc.constantFrom(",", ";", "\t", "|"),
  isDecimalComma: fc.boolean(),
  isQuoted: fc.boolean(),
  dates: fc.constantFrom("ymd", "dmy", "mdy", "iso", "serial", "unix", "named"),
  isTwelve: fc.boolean(),
  isApart: fc.boolean(),
  isDampFirst: fc.boolean(),
  isFahrenheit: fc.boolean(),
  isFraction: fc.boolean(),
  isNumbered: fc.boolean(),
  hasStatus: fc.boolean(),
  preamble: fc.integer({ min: 0, max: 4 }),
  isCrlf: fc.boolean(),
  packing: fc.constantFrom("utf8", "mark", "utf16", "gzip"),
  isNewestFirst: fc.boolean(),
  step: fc.constantFrom(5, 15, 30, 60, 120),
  start: fc.constantFrom("2025-12-28T22:00", "2026-01-01T00:00", "2026-06-09T08:00", "2026-11-30T12:00"),
});

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const PREAMBLE = ["Device: invented 7", "Place;Ward two", "", "Read out on paper"];

function written(readings: readonly MadeReading[], d: Dress): string {
  const quote = (cell: string): string =>
    d.isQuoted || (d.isDecimalComma && d.delimiter === "," && cell.includes(",")) ? `"${cell}"` : cell;
  const number = (value: number, digits: number): string =>
    d.isDecimalComma ? value.toFixed(digits).replace(".", ",") : value.toFixed(digits);
  const values = (warm: string, damp: string): string[] => (d.isDampFirst ? [damp, warm] : [warm, damp]);
  const isApart = d.isApart && !["iso", "serial", "unix"].includes(d.dates);
  const rows = readings.map(({ at, warm, damp }, i) => {
    const value = values(
      number(d.isFahrenheit ? (warm * 9) / 5 + 32 : warm, 3),
      number(d.isFraction ? damp / 100 : damp, 4),
    );
    return [
      ...(d.isNumbered ? [String(i + 1)] : []),
      ...timeCells(at, d, isApart),
      ...value,
      ...(d.hasStatus ? [i % 9 === 0 ? "ok" : ""] : []),
    ];
  });
  const heading = [
    ...(d.isNumbered ? ["No."] : []),
    ...(isApart ? ["Date", "Time"] : ["Date Time"]),
    ...values(
      `Temperature (${d.isFahrenheit ? "°F" : "°C"})`,
      d.isFraction ? "Relative humidity (0-1)" : "Relative humidity (%)",
    ),
    ...(d.hasStatus ? ["Status"] : []),
  ];
  const body = [heading, ...(d.isNewestFirst ? rows.reverse() : rows)].map((cells) =>
    cells.map(quote).join(d.delimiter),
  );
  return [...PREAMBLE.slice(0, d.preamble), ...body, ""].join(d.isCrlf ? "\r\n" : "\n");
}

function timeCells(at: number, d: Dress, isApart: boolean): string[] {
  const { y, m, d: day, H, M } = parts(at);
  if (d.dates === "iso") return [`${y}-${m}-${day}T${H}:${M}`];
  if (d.dates === "unix") return [String(at / 1000)];
  if (d.dates === "serial")
    return [(at / 86_400_000 + 25_569).toFixed(5).replace(".", d.isDecimalComma ? "," : ".")];
  const dates = {
    ymd: `${y}-${m}-${day}`,
    dmy: `${day}.${m}.${y}`,
    mdy: `${m}/${day}/${y}`,
    named: `${day}-${MONTHS[Number(m) - 1]}-${y}`,
  };
  const clock = d.isTwelve
    ? `${String(Number(H) % 12 || 12)}:${M} ${Number(H) < 12 ? "AM" : "PM"}`
    : `${H}:${M}`;
  return isApart ? [dates[d.dates], clock] : [`${dates[d.dates]} ${clock}`];
}

function packed(text: string, packing: Dress["packing"]): Uint8Array {
  if (packing === "gzip") return gzipSync(text);
  if (packing === "utf16") return Buffer.from(`\uFEFF${text}`, "utf16le");
  return Buffer.from(packing === "mark" ? `\uFEFF${text}` : text);
}

/** Reads without a hint; only where the reader asks for the order of the date, as it must when one day stands alone, is it told. */
async function readDressed(readings: readonly MadeReading[], d: Dress): Promise<LoggerImport> {
  const bytes = packed(written(readings, d), d.packing);
  const found = await read(bytes);
  const isAsked = found.reading.doubts.some(({ code }) => code === "logger-date-order");
  return isAsked ? read(bytes, { dateOrder: d.dates === "mdy" ? "m-d-y" : "d-m-y" }) : found;
}

describe("what is written in any dress is read back", () => {
  test("a week of readings, 400 dresses", async () => {
    await fc.assert(
      fc.asyncProperty(dress, fc.integer({ min: 60, max: 400 }), async (d, count) => {
        const readings = made(d.start, count, d.step);
        expectSame(await readDressed(readings, d), readings);
      }),
      { numRuns: 400 },
    );
  });
  test("whatever rows are lost, rows read and rows missing add up", async () => {
    await fc.assert(
      fc.asyncProperty(
        dress,
        fc.uniqueArray(fc.integer({ min: 1, max: 198 }), { maxLength: 40 }),
        async (d, lost) => {
          const readings = made(d.start, 200, d.step).filter((_, i) => !lost.includes(i));
          const found = await readDressed(readings, d);
          expectSame(found, readings);
          if (found.reading.rowsRead + found.reading.gaps.missing !== 200)
            throw new Error(JSON.stringify(found.reading.gaps));
        },
      ),
      { numRuns: 100 },
    );
  });
  test("a few damaged bytes cost a few rows and no more", async () => {
    const damage = fc.array(
      fc.record({
        at: fc.double({ min: 0.3, max: 0.99, noNaN: true }),
        byte: fc.integer({ min: 0, max: 255 }),
      }),
      { maxLength: 6 },
    );
    await fc.assert(
      fc.asyncProperty(dress, damage, async (d, places) => {
        const plain: Dress = { ...d, packing: "utf8", dates: "ymd", preamble: 0 };
        const bytes = packed(written(made(d.start, 200, d.step), plain), "utf8");
        for (const { at, byte } of places) bytes[Math.floor(at * bytes.length)] = byte;
        const found = await read(bytes, { encoding: "utf-8" });
        const least = 200 - 3 * places.length;
        if (found.reading.rowsRead < least) throw new Error(JSON.stringify(found.reading.rowsLeftOut));
      }),
      { numRuns: 300 },
    );
  });
  test("any bytes are read or refused, never thrown", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.uint8Array({ maxLength: 400 }),
          fc.string({ maxLength: 400 }).map((text) => Buffer.from(`time,temp,rh\n${text}`)),
        ),
        async (bytes) => {
          const { readLogger } = await import("../../../src/edge/intake/loggers/read-logger.ts");
          await readLogger(bytes);
        },
      ),
      { numRuns: 500 },
    );
  });
});
