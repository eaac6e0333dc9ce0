import type { Problem } from "../../../core/outcome/problem.ts";
import type { Encoding } from "../encoding.ts";

export type CellDelimiter = "," | ";" | "\t" | "|" | " ";
export type DecimalMark = "." | ",";
/** How the written date is to be read; the last three are plain numbers. */
export type DateShape = "y-m-d" | "d-m-y" | "m-d-y" | "serial days" | "unix seconds" | "unix milliseconds";
export type TemperatureUnit = "°C" | "°F" | "K";
export type HumidityUnit = "%" | "fraction";

/** Cells of a row that were used, 0 being the first; what is not there is left out. */
export interface LoggerColumns {
  /** Date and time in one cell, or a number that counts days, seconds or milliseconds. */
  readonly time?: number;
  readonly date?: number;
  readonly clock?: number;
  readonly year?: number;
  readonly month?: number;
  readonly day?: number;
  /** 1 to 366, in place of month and day. */
  readonly dayOfYear?: number;
  readonly hour?: number;
  readonly minute?: number;
  readonly temperature?: number;
  readonly relHum?: number;
  readonly dewPoint?: number;
  /** Says which of several sensors the row comes from. */
  readonly sensor?: number;
  /** Says whether the value of the row is a temperature or a humidity; both then stand in one column. */
  readonly quantity?: number;
}

/** One pair of temperature and humidity; a file may have several, side by side or row by row. */
export interface LoggerSensor {
  readonly name: string;
  readonly temperature?: number;
  readonly relHum?: number;
  readonly dewPoint?: number;
}

export type LeftOutReason =
  | "time-unreadable"
  | "no-such-day"
  | "row-short"
  | "no-value"
  | "same-time"
  | "headings-again"
  | "other-sensor";

/** Rows that gave no reading, for one reason. */
export interface RowsLeftOut {
  readonly reason: LeftOutReason;
  readonly count: number;
  /** Lines of the first few, 1 being the first line of the file. */
  readonly lines: readonly number[];
  /** The first of them, as written. */
  readonly example?: string;
}

/** A stretch without readings between two that are there; local standard time, `2026-06-02T08:00`. */
export interface LoggerGap {
  readonly from: string;
  readonly to: string;
  /** Readings that the usual step would have put in between. */
  readonly missing: number;
}

export interface LoggerGaps {
  readonly count: number;
  readonly missing: number;
  /** Length of all of them beyond the usual step. */
  readonly hours: number;
  /** The longest, in order of time. */
  readonly longest: readonly LoggerGap[];
}

/** A stretch of rows that have a time and no value; local standard time, `2026-06-02T08:00`. */
export interface LoggerSilence {
  readonly from: string;
  readonly to: string;
  readonly rows: number;
}

export interface LoggerSilences {
  readonly count: number;
  readonly rows: number;
  /** The longest, in order of time. */
  readonly longest: readonly LoggerSilence[];
}

/** A place where the clock of the logger was put forward or back by an hour; `at` as written in the file. */
export interface ClockJump {
  readonly at: string;
  readonly kind: "skipped hour" | "repeated hour";
  readonly line: number;
}

/** What the lines above the headings claim. */
export interface LoggerClaims {
  readonly samples?: number;
  readonly stepMinutes?: number;
}

/** Where a weather file belongs. */
export interface WeatherPlace {
  readonly name?: string;
  /** Degrees, north positive. */
  readonly latitude?: number;
  /** Degrees, east positive. */
  readonly longitude?: number;
  /** Metres above the sea. */
  readonly elevation?: number;
  /** Months of different years put together to one usual year; its readings are dated in `nominalYear`. */
  readonly isTypicalYear: boolean;
  readonly nominalYear?: number;
}

/** What was understood of a file. Given back in part it corrects the next reading of the same file. */
export interface LoggerReading {
  readonly file: string;
  readonly kind: "logger" | "epw" | "tmy3" | "hourly weather";
  readonly encoding: Encoding;
  readonly isGzip: boolean;
  readonly delimiter: CellDelimiter;
  readonly decimalMark: DecimalMark;
  /** Line of the headings; 0: there are none. */
  readonly headingLine: number;
  readonly headings: readonly string[];
  readonly columns: LoggerColumns;
  readonly sensors: readonly LoggerSensor[];
  /** The sensor that was read. */
  readonly sensor: string;
  readonly dateOrder: DateShape;
  readonly clock: 12 | 24;
  /** Minutes by which the written times are ahead of UTC; null: not said in the file. */
  readonly offset: number | null;
  /** Name of a time zone, when the file gives one, e.g. `Africa/Dar_es_Salaam`. */
  readonly zone?: string;
  /** Taken out: hours of summer time were put back to standard time. */
  readonly summerTime: "none" | "taken out";
  readonly unit: { readonly temperature: TemperatureUnit; readonly relHum: HumidityUnit };
  readonly isHumidityFromDewPoint: boolean;
  readonly claims: LoggerClaims;
  readonly place?: WeatherPlace;
  /** Readings that are in the series. */
  readonly rowsRead: number;
  readonly rowsLeftOut: readonly RowsLeftOut[];
  /** Readings with one of the two values missing. */
  readonly valuesMissing: { readonly temperature: number; readonly relHum: number };
  /** Between readings that are there, those among the silences too. */
  readonly gaps: LoggerGaps;
  readonly silences: LoggerSilences;
  /** Rows with a time that was there already; `differing`: with other values. */
  readonly duplicates: { readonly count: number; readonly differing: number };
  /** The file runs from the newest row to the oldest. */
  readonly isNewestFirst: boolean;
  /** Rows earlier than the row before them. */
  readonly outOfOrder: number;
  readonly jumps: readonly ClockJump[];
  /** Local standard time, `2026-06-02T08:00`. */
  readonly firstAt: string;
  readonly lastAt: string;
  readonly usualStepMinutes: number;
  /** Why something was chosen where the file left it open. */
  readonly doubts: readonly Problem[];
}

/** Columns by cell number (0 is the first) or by heading. */
export type ColumnChoice = { readonly [Role in keyof LoggerColumns]?: number | string };

/** What the user knows better; whatever is given is believed. */
export interface LoggerCorrections
  extends Partial<
    Pick<
      LoggerReading,
      | "encoding"
      | "delimiter"
      | "decimalMark"
      | "headingLine"
      | "dateOrder"
      | "clock"
      | "offset"
      | "sensor"
      | "summerTime"
    >
  > {
  readonly unit?: Partial<LoggerReading["unit"]>;
  readonly columns?: ColumnChoice;
}

/** Readings in order of time, one place in each array for each. */
export interface ReadingSeries {
  /** Minutes from 1970-01-01 00:00 on a clock that shows local standard time all year. */
  readonly minutes: Float64Array;
  /** °C; NaN where absent. */
  readonly dryBulb: Float64Array;
  /** 0 to 1; NaN where absent. */
  readonly relHum: Float64Array;
}

export interface LoggerImport {
  readonly reading: LoggerReading;
  readonly series: ReadingSeries;
}
