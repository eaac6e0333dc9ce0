import { cellsOf } from "./head-rows.ts";
import type { Layout } from "./layout.ts";
import type { LoggerColumns, LoggerCorrections, WeatherPlace } from "./logger-reading.ts";
import { rowEndOf } from "./row-scanner.ts";
import type { TableShape } from "./table-shape.ts";

/** Typical years carry the name of their method in the line of the place; from memory. */
const TYPICAL = /\b(?:TMY\d?x?|IWEC\d?|CWEC|TRY|WYEC\d?|CTZ2?|SWERA|RMY|ISHRAE|typical)\b/i;
/** Cells of a row of an EPW file: year, month, day, hour, minute, flags, dry bulb, dew point, relative humidity.
 *  Source: the EPW chapter of the EnergyPlus documentation "Auxiliary Programs"; from memory. */
const EPW_COLUMNS: LoggerColumns = {
  year: 0,
  month: 1,
  day: 2,
  hour: 3,
  minute: 4,
  temperature: 6,
  dewPoint: 7,
  relHum: 8,
};
const EPW_HEADINGS = [
  "year",
  "month",
  "day",
  "hour",
  "minute",
  "flags",
  "dry bulb °C",
  "dew point °C",
  "relative humidity %",
];

/** The layout of an EPW file, or null when the head is of something else. */
export function epwLayout(head: string, given: LoggerCorrections, file: string): Layout | null {
  const lines = head.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  if (!/^LOCATION,/i.test(lines[0] ?? "")) return null;
  const first = lines.findIndex((line) =>
    /^\s*\d{4}\s*,\s*\d{1,2}\s*,\s*\d{1,2}\s*,\s*\d{1,2}\s*,\s*\d{1,2}\s*,/.test(line),
  );
  if (first < 0) return null;
  const [, name = "", state = "", country = "", source = "", , latitude, longitude, zone, elevation] =
    cellsOf(lines[0] ?? "", ",");
  const settled = { name: [name, state, country].filter((part) => part !== "" && part !== "-").join(", ") };
  const { dewPoint: _, ...read } = EPW_COLUMNS;
  return {
    kind: "epw",
    plan: {
      delimiter: 44,
      rowEnd: rowEndOf(head),
      firstRowLine: first + 1,
      columns: read,
      counted: null,
      isPartOfDay: false,
      isHourEnding: true,
      settledMark: ".",
      isDecimalSplit: false,
      sensor: null,
      quantities: null,
      isHeading: () => false,
    },
    known: {
      delimiter: ",",
      headingLine: 0,
      headings: EPW_HEADINGS,
      columns: EPW_COLUMNS,
      sensors: [{ name: "outdoor air", temperature: 6, relHum: 8, dewPoint: 7 }],
      sensor: "outdoor air",
      claims: {},
      offset: given.offset !== undefined ? given.offset : offsetFrom(zone),
    },
    dates: { file, given: null, written: null, firstText: lines[first] ?? "", isDayFirstLanguage: false },
    units: { file, temperature: "°C", relHum: "%", given: given.unit ?? {} },
    place: placeOf(
      settled.name,
      latitude,
      longitude,
      elevation,
      TYPICAL.test([source, ...lines.filter((line) => /^COMMENTS/i.test(line))].join(" ")),
    ),
    doubts: [],
  };
}

/** Minutes from hours ahead of UTC; null: they are not written. */
const offsetFrom = (hours: string | undefined): number | null =>
  hours === undefined || hours === "" || Number.isNaN(Number(hours)) ? null : Number(hours) * 60;

function placeOf(
  name: string,
  latitude?: string,
  longitude?: string,
  elevation?: string,
  isTypicalYear = false,
): WeatherPlace {
  const figure = (key: string, text: string | undefined): Record<string, number> =>
    text === undefined || text === "" || Number.isNaN(Number(text)) ? {} : { [key]: Number(text) };
  return {
    ...(name === "" ? {} : { name }),
    ...figure("latitude", latitude),
    ...figure("longitude", longitude),
    ...figure("elevation", elevation),
    isTypicalYear,
  };
}

/** The first line of a TMY3 file: station number, name, state, hours ahead of UTC, latitude, longitude, metres.
 *  Source: NREL/TP-581-43156, Users Manual for TMY3 Data Sets, 2008, table 1-1; from memory. Null: it is another table. */
export function siteOfTypicalYear({
  preamble,
  headings,
}: TableShape): { readonly place: WeatherPlace; readonly offset: number } | null {
  const cells = preamble[0]?.cells ?? [];
  const [station = "", name = "", state = "", zone = "", latitude, longitude, elevation] = cells;
  if (cells.length < 7 || !/^\d{5,6}$/.test(station) || Number.isNaN(Number(zone)) || zone === "")
    return null;
  if (!headings.some((heading) => /^dry-?bulb/i.test(heading))) return null;
  return {
    place: placeOf([name, state].filter(Boolean).join(", "), latitude, longitude, elevation, true),
    offset: Number(zone) * 60,
  };
}
