import { basename } from "node:path";
import { done, type Outcome, type Problem, refused } from "../../../core/outcome/problem.ts";
import { type LoggerSource, type OpenedBytes, openBytes } from "./byte-source.ts";
import { decideDateOrder } from "./date-order.ts";
import { inOrder } from "./in-order.ts";
import type { Layout } from "./layout.ts";
import { LeftOut } from "./left-out.ts";
import type { LoggerCorrections, LoggerImport, LoggerReading, ReadingSeries } from "./logger-reading.ts";
import { ReadingStore } from "./reading-store.ts";
import { RowScanner } from "./row-scanner.ts";
import { loggerProblem } from "./say-loggers.ts";
import { gapsOf, isoMinute, usualStepOf } from "./series-steps.ts";
import {
  mendTwelveHours,
  minutesOf,
  settleSummerTime,
  toNominalYear,
  toStandardOffset,
  turnIfNewestFirst,
  withoutEmpty,
} from "./settle-times.ts";
import { settleValues } from "./settle-values.ts";
import { tableLayout } from "./table-layout.ts";
import { epwLayout } from "./weather-layout.ts";
import { wholeFileDoubts } from "./whole-file-doubts.ts";

/** Reads the export of a temperature and humidity logger, or a weather file, of any size and dialect.
 *  `given` corrects what would be understood otherwise; the file is read once from its first byte to its last.
 *  @param source path of the file, or its bytes   @param name what the file is called in messages */
export async function readLogger(
  source: LoggerSource,
  given: LoggerCorrections = {},
  name = typeof source === "string" ? basename(source) : "logger file",
): Promise<Outcome<LoggerImport>> {
  const opened = await opening(source, given, name);
  if (!opened.ok) return opened;
  const layout = layoutOf(opened.value, given, name);
  if (!layout.ok) return layout;
  const rows = await scanRows(opened.value, layout.value, name);
  return rows.ok ? settled(rows.value, layout.value, given, name) : rows;
}

async function opening(
  source: LoggerSource,
  given: LoggerCorrections,
  file: string,
): Promise<Outcome<OpenedBytes>> {
  try {
    const opened = await openBytes(source, given.encoding);
    const other = otherKind(opened.head);
    if (other !== null)
      return refused(
        loggerProblem("logger-not-text", "stop", {
          file,
          expected: other,
          remedy: "Export the readings as text (CSV); a zip file must be unpacked first.",
        }),
      );
    if (opened.head.trim() === "")
      return refused(loggerProblem("logger-empty", "stop", { file, remedy: "Export it once more." }));
    return done(opened);
  } catch (error) {
    return refused(unreadable(file, error));
  }
}

const unreadable = (file: string, error: unknown): Problem =>
  loggerProblem("logger-unreadable", "stop", {
    file,
    expected: reasonOf(error),
    remedy: "Close it elsewhere, or copy it again, then try once more.",
  });

const reasonOf = (error: unknown): string =>
  error instanceof Error ? error.message.replace(/, (?:open|stat|read) .*$/s, "") : "no reason given";

function otherKind(head: string): string | null {
  if (head.startsWith("PK\u0003\u0004")) return "it is a workbook or a zip file";
  if (head.startsWith("%PDF")) return "it is a PDF";
  return head.slice(0, 4096).includes("\0") ? "it has bytes that are not letters" : null;
}

function layoutOf({ head, isWhole }: OpenedBytes, given: LoggerCorrections, file: string): Outcome<Layout> {
  const weather = epwLayout(head, given, file);
  return weather === null ? tableLayout(head, isWhole, given, file) : done(weather);
}

interface ScannedRows {
  readonly opened: OpenedBytes;
  readonly store: ReadingStore;
  readonly scanner: RowScanner;
  readonly leftOut: LeftOut;
  readonly doubts: readonly Problem[];
}

async function scanRows(opened: OpenedBytes, { plan }: Layout, file: string): Promise<Outcome<ScannedRows>> {
  const store = new ReadingStore(likelyRows(opened));
  const leftOut = new LeftOut();
  const scanner = new RowScanner(plan, store, leftOut);
  const doubts: Problem[] = [];
  try {
    for await (const piece of opened.pieces()) scanner.see(piece);
  } catch (error) {
    if (!opened.isGzip || store.size === 0) return refused(unreadable(file, error));
    doubts.push(
      loggerProblem("logger-cut-short", "ask", {
        file,
        expected: reasonOf(error),
        remedy: "Copy the file again from where it came.",
      }),
    );
  }
  scanner.end();
  return done({ opened, store, scanner, leftOut, doubts });
}

/** Rows that the file may have, so that the columns seldom need to grow. */
function likelyRows({ head, isWhole, isGzip, size }: OpenedBytes): number {
  const lines = head.split("\n").length + 1;
  if (isWhole) return lines;
  return Math.ceil((lines / head.length) * size * (isGzip ? 6 : 1.02)) + 1024;
}

function settled(
  { opened, store, scanner, leftOut, doubts }: ScannedRows,
  layout: Layout,
  given: LoggerCorrections,
  file: string,
): Outcome<LoggerImport> {
  const { known, plan } = layout;
  const isHumidityFromDewPoint = plan.columns.relHum === undefined && plan.columns.dewPoint !== undefined;
  if (layout.kind === "epw" || layout.kind === "tmy3") dropMissing(store);
  const hints =
    layout.units.temperature === null && scanner.numbers.fahrenheit > 0
      ? { ...layout.units, temperature: "°F" as const }
      : layout.units;
  const values = settleValues(store, { ...hints, isDewPoint: isHumidityFromDewPoint });
  const order = decideDateOrder(store, {
    ...layout.dates,
    hasHalfDays: scanner.times.halfDays > 0,
    isFahrenheit: values.unit.temperature === "°F",
  });
  let minutes = withoutEmpty(store, minutesOf(store, order.order, leftOut), leftOut);
  if (minutes.length === 0) return refused(noReadings(leftOut, file));
  const cells = toStandardOffset(store, minutes);
  const isNewestFirst = turnIfNewestFirst(store, minutes);
  const isTwelve =
    scanner.times.halfDays === 0 && given.clock !== 24 && mendTwelveHours(store, minutes, given.clock === 12);
  const nominal = layout.place?.isTypicalYear === true ? toNominalYear(store, minutes, leftOut) : null;
  minutes = nominal?.minutes ?? minutes;
  const offset = given.offset !== undefined ? given.offset : (cells?.offset ?? known.offset);
  const summer =
    layout.place === null
      ? settleSummerTime(store, minutes, offset !== null && known.zone === undefined, given.summerTime)
      : null;
  const ordered = inOrder(store, minutes, leftOut);
  const { series } = ordered;
  const usualStepMinutes = usualStepOf(series.minutes);
  const reading: LoggerReading = {
    file,
    kind: layout.kind,
    encoding: opened.encoding,
    isGzip: opened.isGzip,
    ...known,
    decimalMark: given.decimalMark ?? (scanner.numbers.commas > scanner.numbers.points ? "," : "."),
    dateOrder: plan.counted ?? order.order,
    clock: scanner.times.halfDays > 0 || isTwelve ? 12 : 24,
    offset,
    summerTime: summer?.isTakenOut ? "taken out" : "none",
    unit: values.unit,
    isHumidityFromDewPoint,
    ...(layout.place === null
      ? {}
      : { place: { ...layout.place, ...(nominal === null ? {} : { nominalYear: nominal.year }) } }),
    rowsRead: series.minutes.length,
    rowsLeftOut: leftOut.all(),
    valuesMissing: { temperature: missingIn(series.dryBulb), relHum: missingIn(series.relHum) },
    gaps: gapsOf(series.minutes, usualStepMinutes),
    duplicates: ordered.duplicates,
    isNewestFirst,
    outOfOrder: ordered.outOfOrder,
    jumps: summer?.jumps ?? [],
    firstAt: isoMinute(series.minutes[0] ?? 0),
    lastAt: isoMinute(series.minutes.at(-1) ?? 0),
    usualStepMinutes,
    doubts: [],
  };
  const whole = wholeFileDoubts(reading, {
    numbers: scanner.numbers,
    openQuotes: scanner.openQuotes,
    isTwelve,
    areOffsetsChanging: cells?.isChanging ?? false,
  });
  return done({
    reading: {
      ...reading,
      doubts: [...doubts, ...layout.doubts, ...order.doubts, ...values.doubts, ...whole],
    },
    series,
  });
}

/** Weather files write 99.9 for a temperature and 999 for a humidity that is missing. Source: as for the columns of the file; from memory. */
function dropMissing({ temperature, second, size }: ReadingStore): void {
  for (let i = 0; i < size; i++) {
    if ((temperature[i] as number) >= 99.9) temperature[i] = Number.NaN; // i stays below size
    if ((second[i] as number) >= 999) second[i] = Number.NaN;
  }
}

const missingIn = (values: ReadingSeries["dryBulb"]): number => {
  let missing = 0;
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i])) missing++;
  return missing;
};

const noReadings = (leftOut: LeftOut, file: string): Problem => {
  const [first] = leftOut.all();
  const line = first?.lines[0];
  return loggerProblem("logger-no-readings", "stop", {
    file,
    ...(line === undefined ? {} : { line }),
    got:
      first === undefined
        ? "no rows"
        : `${first.count} rows: ${first.reason.replaceAll("-", " ")}${first.example === undefined ? "" : `, e.g. "${first.example}"`}`,
    expected: "rows with a time, a temperature and a humidity",
    remedy: "Choose the columns and the order of the date yourself.",
  });
};
