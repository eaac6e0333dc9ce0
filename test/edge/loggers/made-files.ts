import { expect } from "vitest";
import { sayProblem } from "../../../src/core/say/problems.ts";
import type { LoggerCorrections, LoggerImport } from "../../../src/edge/intake/loggers/logger-reading.ts";
import { readLogger } from "../../../src/edge/intake/loggers/read-logger.ts";

/** Reads invented text as a logger file; a refusal fails the test with its sentences. */
export async function read(file: string | Uint8Array, given: LoggerCorrections = {}): Promise<LoggerImport> {
  const outcome = await readLogger(typeof file === "string" ? Buffer.from(file) : file, given, "made.csv");
  if (!outcome.ok) throw new Error(outcome.problems.map(sayProblem).join("\n"));
  return outcome.value;
}

/** Codes of the problems of a refused file. */
export async function refusal(file: string | Uint8Array, given: LoggerCorrections = {}): Promise<string[]> {
  const outcome = await readLogger(typeof file === "string" ? Buffer.from(file) : file, given, "made.csv");
  expect(outcome.ok).toBe(false);
  return outcome.ok ? [] : outcome.problems.map(({ code }) => code);
}

export const codes = ({ reading }: LoggerImport): string[] => reading.doubts.map(({ code }) => code);
export const lines = (...rows: readonly string[]): string => `${rows.join("\n")}\n`;

/** Readings as they would be copied down by hand: time, °C, per cent. */
export const table = ({ series: { minutes, dryBulb, relHum } }: LoggerImport): [string, number, number][] =>
  Array.from(minutes, (minute, i) => [
    new Date(Math.round(minute * 60_000)).toISOString().replace(/:00\.000Z$|\.000Z$/, ""),
    Math.round((dryBulb[i] ?? 0) * 1000) / 1000,
    Math.round((relHum[i] ?? 0) * 100_000) / 1000,
  ]);

export interface MadeReading {
  /** Milliseconds from 1970 on the clock of the logger. */
  readonly at: number;
  readonly warm: number;
  readonly damp: number;
}

/** Invented readings of a room that breathes slowly, two decimals. */
export const made = (start: string, count: number, stepMinutes = 60): MadeReading[] =>
  Array.from({ length: count }, (_, i) => ({
    at: Date.parse(`${start}Z`) + i * stepMinutes * 60_000,
    warm: Math.round((21.5 + 3 * Math.sin(i / 5)) * 100) / 100,
    damp: Math.round((57 + 8 * Math.cos(i / 7)) * 100) / 100,
  }));

/** Parts of a time as two digits. */
export const parts = (at: number) => {
  const iso = new Date(at).toISOString();
  return {
    y: iso.slice(0, 4),
    m: iso.slice(5, 7),
    d: iso.slice(8, 10),
    H: iso.slice(11, 13),
    M: iso.slice(14, 16),
    S: iso.slice(17, 19),
  };
};

export const expectSame = (found: LoggerImport, readings: readonly MadeReading[]): void => {
  expect(found.reading.rowsRead).toBe(readings.length);
  expect(Array.from(found.series.minutes)).toEqual(readings.map(({ at }) => at / 60_000));
  readings.forEach(({ warm, damp }, i) => {
    expect(found.series.dryBulb[i]).toBeCloseTo(warm, 9);
    expect(found.series.relHum[i]).toBeCloseTo(damp / 100, 9);
  });
};
