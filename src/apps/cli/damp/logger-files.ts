import { existsSync } from "node:fs";
import { basename, extname } from "node:path";
import type { Problem } from "../../../core/outcome/problem.ts";
import { sayFault } from "../../../core/say/damp/faults.ts";
import { DOUBT_OPTIONS, sayDoubtOption } from "../../../core/say/damp/logger-doubts.ts";
import { sayProblem } from "../../../core/say/problems.ts";
import type { LoggerCorrections, LoggerImport } from "../../../edge/intake/loggers/logger-reading.ts";
import { readLogger } from "../../../edge/intake/loggers/read-logger.ts";
import { tellReading } from "../../../edge/intake/loggers/tell-reading.ts";
import type { Given } from "./given.ts";

/* Logger files as a command reads them: with the corrections that were typed, and what was understood. */

export const LOGGER_OPTIONS = {
  "date-order": "text",
  unit: "texts",
  decimal: "text",
  offset: "text",
  "summer-time": "text",
  column: "texts",
  sensor: "text",
} as const;

type Corrections = { -readonly [Key in keyof LoggerCorrections]: LoggerCorrections[Key] };

const DATE_ORDERS = { dmy: "d-m-y", mdy: "m-d-y", ymd: "y-m-d" } as const;
const TEMPERATURE_UNITS = { c: "°C", f: "°F", k: "K" } as const;
const HUMIDITY_UNITS = { "%": "%", percent: "%", fraction: "fraction" } as const;
const ROLES = {
  time: "time",
  date: "date",
  clock: "clock",
  temperature: "temperature",
  humidity: "relHum",
  "dew-point": "dewPoint",
  sensor: "sensor",
} as const;

export function correctionsFrom(given: Given): LoggerCorrections {
  const found: Corrections = {};
  if (given.has("date-order"))
    found.dateOrder =
      DATE_ORDERS[given.oneOf("date-order", ["dmy", "mdy", "ymd"], "d is the day, m the month, y the year.")];
  if (given.has("decimal"))
    found.decimalMark = given.oneOf("decimal", [",", "."], "Look at a number in the file.");
  if (given.has("summer-time"))
    found.summerTime =
      given.oneOf("summer-time", ["out", "none"], "out puts summer time back to standard time.") === "out"
        ? "taken out"
        : "none";
  const sensor = given.text("sensor");
  if (sensor !== undefined) found.sensor = sensor;
  const offset = given.text("offset");
  if (offset !== undefined) found.offset = offsetFrom(given, offset);
  if (given.has("unit")) found.unit = unitsFrom(given);
  if (given.has("column")) found.columns = columnsFrom(given);
  return found;
}

/** Minutes ahead of UTC from `+02:00`, `-5`, `Z`. */
function offsetFrom(given: Given, text: string): number {
  const [, sign, hours, minutes] = /^(?:UTC|GMT)?([+-]?)(\d{1,2})(?::?(\d{2}))?$/i.exec(text.trim()) ?? [];
  const size = 60 * Number(hours ?? Number.NaN) + Number(minutes ?? 0);
  if (/^(?:z|utc|gmt)$/i.test(text.trim())) return 0;
  if (size <= 14 * 60) return sign === "-" ? -size : size;
  given.refuse({
    option: "--offset",
    got: text,
    expected: "hours and minutes ahead of UTC, -12:00 to +14:00",
    remedy: "Write it like +02:00 or -05:30.",
  });
  return 0;
}

function unitsFrom(given: Given): NonNullable<LoggerCorrections["unit"]> {
  const unit: { temperature?: "°C" | "°F" | "K"; relHum?: "%" | "fraction" } = {};
  for (const text of given.texts("unit")) {
    const word = text.replace("°", "").toLowerCase();
    if (word in TEMPERATURE_UNITS)
      unit.temperature = TEMPERATURE_UNITS[word as keyof typeof TEMPERATURE_UNITS];
    else if (word in HUMIDITY_UNITS) unit.relHum = HUMIDITY_UNITS[word as keyof typeof HUMIDITY_UNITS];
    else
      given.refuse({
        option: "--unit",
        got: text,
        expected: "C, F, K for temperature; % or fraction for humidity",
        remedy: "Give --unit twice to set both.",
      });
  }
  return unit;
}

function columnsFrom(given: Given): NonNullable<LoggerCorrections["columns"]> {
  const columns: Record<string, number | string> = {};
  for (const text of given.texts("column")) {
    const [role = "", ...rest] = text.split("=");
    const wanted = rest.join("=").trim();
    const key = ROLES[role.trim().toLowerCase() as keyof typeof ROLES];
    if (key !== undefined && wanted !== "") columns[key] = /^\d+$/.test(wanted) ? Number(wanted) : wanted;
    else
      given.refuse({
        option: "--column",
        got: text,
        expected: `role=heading, the role being one of ${Object.keys(ROLES).join(", ")}`,
        remedy: 'Write it like --column "humidity=RH 2" or --column humidity=3, 0 being the first column.',
      });
  }
  return columns;
}

/** Where a file came from, as people call it: its name without folder and ending. */
export const placeName = (path: string): string => {
  const name = basename(path).replace(/\.gz$/i, "");
  return name.slice(0, name.length - extname(name).length) || name;
};

export type FileRead =
  | {
      readonly ok: true;
      readonly path: string;
      readonly name: string;
      readonly read: LoggerImport;
      readonly understood: readonly string[];
    }
  | { readonly ok: false; readonly path: string; readonly faults: readonly string[] };

export async function readFile(path: string, corrections: LoggerCorrections): Promise<FileRead> {
  if (!existsSync(path)) return { ok: false, path, faults: [sayFault("no-such-file", path)] };
  const outcome = await readLogger(path, corrections);
  if (!outcome.ok) return { ok: false, path, faults: outcome.problems.map(sayWithOption) };
  return {
    ok: true,
    path,
    name: placeName(path),
    read: outcome.value,
    understood: understood(outcome.value),
  };
}

/** One paragraph for the file, then a sentence for each thing that a person should decide. */
function understood({ reading }: LoggerImport): string[] {
  const doubts = reading.doubts.filter(({ severity }) => severity !== "note");
  return [`${reading.file}: ${tellReading(reading).join(" ")}`, ...doubts.map(sayWithOption)];
}

function sayWithOption(problem: Problem): string {
  const option = DOUBT_OPTIONS[problem.code];
  return option === undefined ? sayProblem(problem) : `${sayProblem(problem)} ${sayDoubtOption(option)}`;
}
