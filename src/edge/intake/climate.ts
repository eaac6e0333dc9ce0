import { basename, extname } from "node:path";
import type { ClimateReading, ClimateSeries } from "../../core/items/campaign.ts";
import type { Outcome, Problem } from "../../core/outcome/problem.ts";
import { campaignProblem } from "./climate-problems.ts";
import type { DateOrder } from "./dates.ts";
import type { DateShape, LoggerImport, LoggerReading, ReadingSeries } from "./loggers/logger-reading.ts";
import { readLogger } from "./loggers/read-logger.ts";
import { count, problem } from "./problem.ts";
import { watchReader } from "./reader-watch.ts";

/** Most readings of one file: two years, one a minute. */
const MOST_READINGS = 1_000_000;

interface ClimateRead {
  readonly series: ClimateSeries;
  readonly problems: readonly Problem[];
  readonly rowCount: number;
}

/** Reads one file of a campaign's climate folder, as any logger or weather file is read.
 *  @param settled order of the dates in campaign.json; it decides where the file leaves its own open */
export async function readClimateFile(
  path: string,
  file: string,
  settled: DateOrder | null,
): Promise<ClimateRead> {
  const name = basename(file, extname(file));
  const read = await readSettled(path, file, settled);
  if (!read.ok)
    return { series: { name, readings: [] }, problems: read.problems.map(campaignProblem), rowCount: 0 };
  const { reading, series } = read.value;
  const readings = isDateAsked(read.value) ? [] : readingsOf(series);
  return {
    series: { name, readings },
    problems: [
      ...reading.doubts.filter(({ code }) => !WATCHED.has(code)).map(campaignProblem),
      ...(readings.length < series.minutes.length && readings.length > 0 ? [tooMany(file, series)] : []),
      ...watchReader(file, read.value),
    ],
    rowCount: rowsOf(reading),
  };
}

/** Told stretch by stretch when the reader is watched. */
const WATCHED: ReadonlySet<string> = new Set(["logger-gaps", "logger-silent"]);
const SHAPES: Readonly<Record<DateOrder, DateShape>> = { "day first": "d-m-y", "month first": "m-d-y" };

/** A logger writes dates in its own way, so the campaign's order is a correction only where its file tells none. */
async function readSettled(
  path: string,
  file: string,
  settled: DateOrder | null,
): Promise<Outcome<LoggerImport>> {
  const found = await readLogger(path, {}, file);
  if (settled === null || !found.ok || !isDateAsked(found.value)) return found;
  return readLogger(path, { dateOrder: SHAPES[settled] }, file);
}

const isDateAsked = ({ reading }: LoggerImport): boolean =>
  reading.doubts.some(({ code, severity }) => code === "logger-date-order" && severity === "ask");

function readingsOf({ minutes, dryBulb, relHum }: ReadingSeries): ClimateReading[] {
  return Array.from(minutes.subarray(0, MOST_READINGS), (minute, i): ClimateReading => {
    const [warm = Number.NaN, damp = Number.NaN] = [dryBulb[i], relHum[i]];
    return {
      at: new Date(Math.round(minute * 60) * 1000).toISOString().slice(0, 19),
      ...(Number.isNaN(warm) ? {} : { dryBulb: warm }),
      ...(Number.isNaN(damp) ? {} : { relHum: damp }),
    };
  });
}

const tooMany = (file: string, { minutes }: ReadingSeries): Problem =>
  problem(
    "too-many-readings",
    "note",
    { file },
    { got: count(minutes.length), expected: count(MOST_READINGS), remedy: "Split the file by year." },
  );

/** Rows that should have given a reading. */
const rowsOf = ({ rowsRead, rowsLeftOut }: LoggerReading): number =>
  rowsLeftOut.reduce((sum, left) => sum + (left.reason === "headings-again" ? 0 : left.count), rowsRead);
