import { done, type Outcome, type Problem, refused } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { type ChosenColumns, chooseColumns } from "./choose-columns.ts";
import { dateOrderIn, humidityUnitIn, offsetIn, temperatureUnitIn } from "./heading-words.ts";
import type { Layout } from "./layout.ts";
import type { LoggerColumns, LoggerCorrections } from "./logger-reading.ts";
import { DATE_ORDERS, type DateOrder } from "./packed-date.ts";
import { type Preamble, readPreamble, standardOffsetIn, zoneIn } from "./preamble.ts";
import { rowEndOf, type ScanPlan } from "./row-scanner.ts";
import { type TableShape, tableShape } from "./table-shape.ts";
import { siteOfTypicalYear } from "./weather-layout.ts";

const DAY_FIRST_WORDS =
  /datum|uhrzeit|zeitpunkt|temp[ée]rature \(|fecha|\bhora\b|heure|luft|feuchte|humidit[ée]\b(?<!y)|humedad|umidit|umidade|vochtig|tijd|tanggal/i;

/** The layout of a table with or without headings, worked out from its head. */
export function tableLayout(
  head: string,
  isWhole: boolean,
  given: LoggerCorrections,
  file: string,
): Outcome<Layout> {
  const shape = tableShape(head, isWhole, given);
  if (shape === null) return refused(noRows(head, file));
  const chosen = chooseColumns(shape, given, file);
  if (!chosen.ok) return chosen;
  const preamble = readPreamble(shape.preamble);
  const site = siteOfTypicalYear(shape);
  const place = site?.place ?? preamble.place ?? null;
  const { value } = chosen;
  const zone = zoneIn(value.words.time) ?? preamble.zone;
  return done({
    kind: site !== null ? "tmy3" : place !== null ? "hourly weather" : "logger",
    plan: scanPlan(head, shape, value, given),
    known: {
      delimiter: shape.delimiter,
      headingLine: shape.headingLine,
      headings: shape.headings,
      columns: value.columns,
      sensors: value.sensors,
      sensor: value.sensor.name,
      claims: preamble.claims,
      offset:
        given.offset !== undefined
          ? given.offset
          : (offsetIn(value.words.time) ??
            standardOffsetIn(value.words.time) ??
            site?.offset ??
            preamble.offset),
      ...(zone === undefined ? {} : { zone }),
    },
    dates: dateHints(shape, value, preamble, given, file),
    units: {
      file,
      temperature: temperatureUnitIn(value.words.temperature) ?? preamble.temperatureUnit,
      relHum: humidityUnitIn(value.words.relHum) ?? preamble.humidityUnit,
      given: given.unit ?? {},
    },
    place,
    doubts: [...value.doubts, ...shapeDoubts(shape, file)],
  });
}

function scanPlan(
  head: string,
  shape: TableShape,
  chosen: ChosenColumns,
  given: LoggerCorrections,
): ScanPlan {
  const heading = plainAscii(shape.headingText);
  const wished = given.dateOrder;
  const isCounted = wished === "serial days" || wished === "unix seconds" || wished === "unix milliseconds";
  return {
    delimiter: shape.delimiter.charCodeAt(0),
    rowEnd: rowEndOf(head),
    firstRowLine: shape.firstRowLine,
    columns: inCells(chosen.columns, shape.splitFrom),
    counted: isCounted ? wished : wished === undefined ? chosen.counted : null,
    isPartOfDay: chosen.isPartOfDay,
    isHourEnding: false,
    settledMark: given.decimalMark ?? null,
    isDecimalSplit: shape.splitFrom !== null,
    sensor: chosen.rowsOf,
    quantities: chosen.quantities,
    isHeading: (row) => heading !== "" && plainAscii(row) === heading,
  };
}

const plainAscii = (text: string): string => text.replace(/[^!-~]/g, "");

/** Numbers of cells in a row, where each value behind the time takes two. */
function inCells(columns: LoggerColumns, splitFrom: number | null): LoggerColumns {
  if (splitFrom === null) return columns;
  return Object.fromEntries(
    Object.entries(columns).map(([role, at]: [string, number]) => [
      role,
      at < splitFrom ? at : splitFrom + 2 * (at - splitFrom),
    ]),
  );
}

function dateHints(
  shape: TableShape,
  { columns, words }: ChosenColumns,
  preamble: Preamble,
  given: LoggerCorrections,
  file: string,
): Layout["dates"] {
  const at = columns.time ?? columns.date;
  const asOrder = (shown: string | null | undefined): DateOrder | null =>
    DATE_ORDERS.find((order) => order === shown) ?? null;
  return {
    file,
    given: asOrder(given.dateOrder),
    written: asOrder(dateOrderIn(words.time) ?? preamble.dateOrder),
    firstText: (at === undefined ? "" : shape.sample[0]?.[at]) ?? "",
    isDayFirstLanguage: DAY_FIRST_WORDS.test(shape.headings.join(" | ")),
  };
}

function shapeDoubts({ shift, splitFrom, headings }: TableShape, file: string): Problem[] {
  const shifted = problem(
    "logger-rows-shifted",
    "note",
    { file },
    {
      got: shift === 1 ? "one cell more" : `${shift} cells more`,
      expected: `the headings were moved so that "${headings.find(Boolean) ?? ""}" stands over the time`,
      remedy: "Nothing needs to be done if the first reading is right.",
    },
  );
  const split = problem(
    "logger-decimal-split",
    "ask",
    { file },
    { remedy: "Look at the first readings; next time export with semicolons." },
  );
  return [...(shift > 0 ? [shifted] : []), ...(splitFrom === null ? [] : [split])];
}

const noRows = (head: string, file: string): Problem =>
  problem(
    "logger-no-rows",
    "stop",
    { file, line: 1 },
    {
      got: head.slice(0, 80).split(/[\r\n]/)[0] ?? "",
      expected: "rows with a time, a temperature and a humidity",
      remedy: "Export the readings as a table with one row for each time.",
    },
  );
