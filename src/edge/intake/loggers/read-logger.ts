import { basename } from "node:path";
import { done, type Outcome, type Problem, refused } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { type LoggerSource, type OpenedBytes, openBytes } from "./byte-source.ts";
import { decideDateOrder } from "./date-order.ts";
import { inOrder, type OrderedSeries } from "./in-order.ts";
import type { Layout } from "./layout.ts";
import { LeftOut } from "./left-out.ts";
import type { LoggerCorrections, LoggerImport, LoggerReading, ReadingSeries } from "./logger-reading.ts";
import { ReadingStore } from "./reading-store.ts";
import { RowScanner } from "./row-scanner.ts";
import { gapsOf, isoMinute, usualStepOf } from "./series-steps.ts";
import {
  isTypicalYear,
  mendTwelveHours,
  minutesOf,
  settleSummerTime,
  toNominalYear,
  toStandardOffset,
  turnIfNewestFirst,
  withoutEmpty,
} from "./settle-times.ts";
import { settleValues, type UnitHints } from "./settle-values.ts";
import { emptyRuns, silencesIn } from "./silences.ts";
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
        problem(
          "logger-not-text",
          "stop",
          { file },
          {
            expected: other,
            remedy: "Export the readings as text (CSV); a zip file must be unpacked first.",
          },
        ),
      );
    if (opened.head.trim() === "")
      return refused(problem("logger-empty", "stop", { file }, { remedy: "Export it once more." }));
    return done(opened);
  } catch (error) {
    return refused(unreadable(file, error));
  }
}

const unreadable = (file: string, error: unknown): Problem =>
  problem(
    "logger-unreadable",
    "stop",
    { file },
    { expected: reasonOf(error), remedy: "Close it elsewhere, or copy it again, then try once more." },
  );

const reasonOf = (error: unknown): string =>
  error instanceof Error ? error.message.replace(/, (?:open|stat|read) .*$/s, "") : "no reason given";

function otherKind(head: string): string | null {
  if (head.startsWith("PK\u0003\u0004")) return "it is a workbook or a zip file";
  if (head.startsWith("%PDF")) return "it is a PDF";
  const start = head.slice(0, 4096);
  const odd = [...start].filter((letter) => letter < " " && !/[\t\r\n]/.test(letter)).length;
  return odd * 20 > start.length ? "it has bytes that are not letters" : null; // a few are damage, and cost only their rows
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
      problem(
        "logger-cut-short",
        "ask",
        { file },
        { expected: reasonOf(error), remedy: "Copy the file again from where it came." },
      ),
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

/** From raw columns to a series: units, the order of dates, standard time, order of the rows; and what was understood on the way. */
function settled(
  rows: ScannedRows,
  layout: Layout,
  given: LoggerCorrections,
  file: string,
): Outcome<LoggerImport> {
  const { store, scanner, leftOut } = rows;
  if (layout.kind === "epw" || layout.kind === "tmy3") dropMissing(store);
  const values = settleValues(store, unitHints(layout, scanner));
  const dates = decideDateOrder(store, {
    ...layout.dates,
    hasHalfDays: scanner.times.halfDays > 0,
    isFahrenheit: values.unit.temperature === "°F",
  });
  const all = minutesOf(store, dates.order, leftOut);
  const empty = emptyRuns(store, all);
  const written = withoutEmpty(store, all, leftOut);
  if (written.length === 0) return refused(noReadings(leftOut, file));
  const clock = settleClock(rows, written, layout, given);
  const ordered = inOrder(store, clock.minutes, leftOut);
  const told = toldOf(ordered, leftOut);
  const { minutes } = ordered.series;
  const reading: LoggerReading = {
    ...understood(rows, layout, given, file),
    ...clock.told,
    unit: values.unit,
    ...told,
    silences: silencesIn(empty, store, clock.minutes, minutes, told.usualStepMinutes),
    kind: layout.kind === "logger" && clock.told.place !== undefined ? "hourly weather" : layout.kind,
    dateOrder: layout.plan.counted ?? dates.order,
  };
  const whole = wholeFileDoubts(reading, {
    numbers: scanner.numbers,
    openQuotes: scanner.openQuotes,
    ...clock.noticed,
  });
  const doubts = [...rows.doubts, ...layout.doubts, ...dates.doubts, ...values.doubts, ...whole];
  return done({ reading: { ...reading, doubts }, series: ordered.series });
}

const isFromDewPoint = ({ plan }: Layout): boolean =>
  plan.columns.relHum === undefined && plan.columns.dewPoint !== undefined;

/** A unit behind the numbers counts where the headings have none. */
function unitHints(layout: Layout, { numbers }: RowScanner): UnitHints {
  const isShown = layout.units.temperature === null && numbers.fahrenheit > 0;
  return { ...layout.units, ...(isShown ? { temperature: "°F" } : {}), isDewPoint: isFromDewPoint(layout) };
}

interface SettledClock {
  readonly minutes: Float64Array;
  readonly told: Pick<LoggerReading, "clock" | "offset" | "summerTime" | "isNewestFirst" | "jumps" | "place">;
  readonly noticed: { readonly isTwelve: boolean; readonly areOffsetsChanging: boolean };
}

/** Times as written put to one clock that shows standard time. */
function settleClock(
  { store, scanner, leftOut }: ScannedRows,
  written: Float64Array,
  { known, place }: Layout,
  given: LoggerCorrections,
): SettledClock {
  const cells = toStandardOffset(store, written);
  const isNewestFirst = turnIfNewestFirst(store, written);
  const hasHalfDays = scanner.times.halfDays > 0;
  const isTwelve = !hasHalfDays && given.clock !== 24 && mendTwelveHours(store, written, given.clock === 12);
  const isTypical = place?.isTypicalYear === true || isTypicalYear(written);
  const nominal = isTypical ? toNominalYear(store, written, leftOut) : null;
  const minutes = nominal?.minutes ?? written;
  const offset = given.offset !== undefined ? given.offset : (cells?.offset ?? known.offset);
  const isStated = offset !== null && known.zone === undefined; // a named zone may well have summer time
  const hasSummer = place === null && !isTypical;
  const summer = hasSummer ? settleSummerTime(store, minutes, isStated, given.summerTime) : null;
  return {
    minutes,
    told: {
      clock: hasHalfDays || isTwelve ? 12 : 24,
      offset,
      summerTime: summer?.isTakenOut ? "taken out" : "none",
      isNewestFirst,
      jumps: summer?.jumps ?? [],
      ...(nominal !== null
        ? { place: { ...place, isTypicalYear: true, nominalYear: nominal.year } }
        : place === null
          ? {}
          : { place }),
    },
    noticed: { isTwelve, areOffsetsChanging: cells?.isChanging ?? false },
  };
}

/** What is known without the times. */
function understood(
  { opened, scanner }: ScannedRows,
  layout: Layout,
  given: LoggerCorrections,
  file: string,
) {
  const { commas, points } = scanner.numbers;
  return {
    file,
    kind: layout.kind,
    encoding: opened.encoding,
    isGzip: opened.isGzip,
    ...layout.known,
    decimalMark: given.decimalMark ?? (commas > points ? "," : "."),
    isHumidityFromDewPoint: isFromDewPoint(layout),
    doubts: [],
  } as const;
}

/** What the ordered series shows of itself. */
function toldOf({ series, duplicates, outOfOrder }: OrderedSeries, leftOut: LeftOut) {
  const usualStepMinutes = usualStepOf(series.minutes);
  return {
    rowsRead: series.minutes.length,
    rowsLeftOut: leftOut.all(),
    valuesMissing: { temperature: missingIn(series.dryBulb), relHum: missingIn(series.relHum) },
    gaps: gapsOf(series.minutes, usualStepMinutes),
    duplicates,
    outOfOrder,
    firstAt: isoMinute(series.minutes[0] ?? 0),
    lastAt: isoMinute(series.minutes.at(-1) ?? 0),
    usualStepMinutes,
  };
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
  return problem(
    "logger-no-readings",
    "stop",
    { file, ...(line === undefined ? {} : { line }) },
    {
      got:
        first === undefined
          ? "no rows"
          : `${first.count} rows: ${first.reason.replaceAll("-", " ")}${first.example === undefined ? "" : `, e.g. "${first.example}"`}`,
      expected: "rows with a time, a temperature and a humidity",
      remedy: "Choose the columns and the order of the date yourself.",
    },
  );
};
