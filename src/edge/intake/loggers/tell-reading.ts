import type { LoggerGap, LoggerReading } from "./logger-reading.ts";
import { hoursInWords, howMany, offsetInWords, stepInWords, thousands } from "./tell-quantities.ts";

/** What was understood of a file, in plain sentences for the person who chose it; doubts have sentences of their own. */
export function tellReading(reading: LoggerReading): string[] {
  return [
    readWhat(reading),
    readHow(reading),
    ...placeSentence(reading),
    ...offsetSentence(reading),
    ...sensorSentence(reading),
    ...missingSentence(reading),
    ...leftOutSentence(reading),
  ];
}

const day = (at: string): string => at.replace("T", " ");

function readWhat({ rowsRead, usualStepMinutes, firstAt, lastAt }: LoggerReading): string {
  const rows = `I read ${thousands(rowsRead)} ${rowsRead === 1 ? "row" : `rows, ${usualStepMinutes > 0 ? `one every ${stepInWords(usualStepMinutes)},` : ""}`}`;
  const plain =
    usualStepMinutes === 60 ? `I read ${thousands(rowsRead)} hourly rows` : rows.replace(/,$/, ",");
  return rowsRead === 1 ? `${rows}, of ${day(firstAt)}.` : `${plain} from ${day(firstAt)} to ${day(lastAt)}.`;
}

const DELIMITERS: Readonly<Record<LoggerReading["delimiter"], string>> = {
  ",": "commas",
  ";": "semicolons",
  "\t": "tabs",
  "|": "upright strokes",
  " ": "spaces",
};
const ORDERS: Readonly<Record<LoggerReading["dateOrder"], string>> = {
  "y-m-d": "year first",
  "d-m-y": "day first",
  "m-d-y": "month first",
  "serial days": "dates as the day numbers of a spreadsheet",
  "unix seconds": "times as seconds from 1970",
  "unix milliseconds": "times as milliseconds from 1970",
};

function readHow({
  delimiter,
  decimalMark,
  dateOrder,
  clock,
  unit,
  columns,
  isHumidityFromDewPoint,
}: LoggerReading): string {
  const hasDamp = columns.relHum !== undefined;
  const damp = isHumidityFromDewPoint
    ? "humidity worked out from the dew point"
    : hasDamp
      ? unit.relHum === "%"
        ? "humidity in %"
        : "humidity as a fraction"
      : "no humidity";
  const warm = columns.temperature === undefined ? "no temperature" : `temperature in ${unit.temperature}`;
  const parts = [
    warm,
    damp,
    ORDERS[dateOrder],
    `a clock of ${clock} hours`,
    `cells parted by ${DELIMITERS[delimiter]}`,
    decimalMark === "," ? "decimal comma" : "decimal point",
  ];
  return `I took it as: ${parts.join(", ")}.`;
}

function placeSentence({ place }: LoggerReading): string[] {
  if (place === undefined) return [];
  const { name, latitude, longitude, elevation, isTypicalYear, nominalYear } = place;
  const where = [
    name,
    latitude === undefined
      ? undefined
      : `${degrees(latitude, "N", "S")} ${degrees(longitude ?? 0, "E", "W")}`,
    elevation === undefined ? undefined : `${Math.round(elevation)} m above the sea`,
  ].filter((part) => part !== undefined);
  const typical = isTypicalYear
    ? ` It is a typical year put together from several, dated here in ${nominalYear ?? "one year"}.`
    : "";
  return [`It is the weather of ${where.join(", ")}.${typical}`];
}

const degrees = (angle: number, plus: string, minus: string): string =>
  `${Math.abs(angle).toFixed(2)}° ${angle < 0 ? minus : plus}`;

function offsetSentence({ offset, zone, summerTime }: LoggerReading): string[] {
  const zoned = zone === undefined ? "" : ` (${zone})`;
  const clock =
    offset === null
      ? "The file does not say how far its clock is ahead of UTC"
      : `Its clock is ${offsetInWords(offset)}${zoned}`;
  return [summerTime === "taken out" ? `${clock}; summer time was put back to standard time.` : `${clock}.`];
}

function sensorSentence({ sensors, sensor }: LoggerReading): string[] {
  if (sensors.length < 2) return [];
  const others = sensors.map(({ name }) => name).filter((name) => name !== sensor);
  return [
    `I read the sensor "${sensor}"; there ${others.length === 1 ? "is" : "are"} also ${others.map((name) => `"${name}"`).join(", ")}.`,
  ];
}

function missingSentence({ gaps, valuesMissing, columns, isHumidityFromDewPoint }: LoggerReading): string[] {
  const [longest] = [...gaps.longest].sort((a, b) => b.missing - a.missing);
  const gap = longest === undefined ? [] : [gapSentence(longest, gaps.count, gaps.hours)];
  const values = [
    columns.temperature === undefined
      ? ""
      : counted(valuesMissing.temperature, "temperature", "temperatures"),
    columns.relHum === undefined && !isHumidityFromDewPoint
      ? ""
      : counted(valuesMissing.relHum, "humidity", "humidities"),
  ].filter(Boolean);
  return [...gap, ...(values.length > 0 ? [`Without a value: ${values.join(" and ")}.`] : [])];
}

const counted = (n: number, one: string, many: string): string => (n === 0 ? "" : howMany(n, one, many));

function gapSentence({ from, to }: LoggerGap, count: number, hours: number): string {
  const span = `between ${day(from)} and ${day(to)}`;
  return count === 1
    ? `${hoursInWords(hours)} are missing ${span}.`
    : `${hoursInWords(hours)} are missing in ${thousands(count)} gaps, the longest ${span}.`;
}

const REASONS: Readonly<Record<LoggerReading["rowsLeftOut"][number]["reason"], string>> = {
  "time-unreadable": "without a time that can be read",
  "no-such-day": "with a day that does not exist",
  "row-short": "that end too early",
  "no-value": "without a value",
  "same-time": "with a time that was there already",
  "headings-again": "that repeat the headings",
  "other-sensor": "of other sensors",
};

function leftOutSentence({ rowsLeftOut }: LoggerReading): string[] {
  if (rowsLeftOut.length === 0) return [];
  return [
    `Left out: ${rowsLeftOut.map(({ reason, count }) => `${thousands(count)} ${REASONS[reason]}`).join(", ")}.`,
  ];
}
