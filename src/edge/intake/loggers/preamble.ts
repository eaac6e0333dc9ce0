import type { HeadRow } from "./head-rows.ts";
import { dateOrderIn, humidityUnitIn, offsetIn, plainWords, temperatureUnitIn } from "./heading-words.ts";
import type {
  DateShape,
  HumidityUnit,
  LoggerClaims,
  TemperatureUnit,
  WeatherPlace,
} from "./logger-reading.ts";

/** What the lines above the headings say. */
export interface Preamble {
  readonly claims: LoggerClaims;
  readonly offset: number | null;
  readonly zone?: string;
  readonly dateOrder: DateShape | null;
  readonly temperatureUnit: TemperatureUnit | null;
  readonly humidityUnit: HumidityUnit | null;
  readonly place?: WeatherPlace;
}

const SAMPLES =
  /\b(?:samples?|sample count|readings?|records?|data ?points?|number of (?:samples|readings|records|points)|messwerte?|anzahl(?: der)?(?: messwerte| werte| daten\w*)?|mesures?|enregistrements?|muestras?|lecturas?|registros?|campioni|letture|misure|amostras?|leituras?|metingen|aantal(?: metingen)?)\b/;
const STEP =
  /\b(?:\w*interval\w*|sampl\w+ (?:rate|period)|messrate|messtakt|speichertakt|takt|log(?:ging)? rate|cadence|periode?|periodo|frequenza|tasa de muestreo)\b/;
const ZONE =
  /\b(?:Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia|Europe|Indian|Pacific)\/[A-Za-z_]+(?:\/[A-Za-z_]+)?/;

export function readPreamble(rows: readonly HeadRow[]): Preamble {
  const pairs = pairsOf(rows);
  const samples = firstOf(pairs, ([key, value]) =>
    SAMPLES.test(key) && !STEP.test(key) ? wholeIn(value) : null,
  );
  const stepMinutes = firstOf(pairs, ([key, value]) => (STEP.test(key) ? minutesIn(value, key) : null));
  const zone = zoneIn(rows.map(({ text }) => text).join("\n"));
  const units = pairs
    .filter(([key]) => /\b(?:unit\w*|einheit\w*|unite\w*|unidad\w*|eenheid)\b/.test(key))
    .map(([, value]) => value);
  const place = placeIn(pairs);
  return {
    claims: { ...(samples === null ? {} : { samples }), ...(stepMinutes === null ? {} : { stepMinutes }) },
    offset: offsetOf(rows, pairs, zone),
    ...(zone === undefined ? {} : { zone }),
    dateOrder: firstOf(pairs, ([key, value]) =>
      /date|datum|fecha|data/.test(key) ? dateOrderIn(value) : null,
    ),
    temperatureUnit: firstOf(units, temperatureUnitIn),
    humidityUnit: firstOf(units, humidityUnitIn),
    ...(place === undefined ? {} : { place }),
  };
}

/** Name of a time zone in a text, `Europe/Berlin`. */
export const zoneIn = (text: string): string | undefined => ZONE.exec(text)?.[0];

/** Minutes ahead of UTC in winter of a zone named in a text; null: none is named. */
export function standardOffsetIn(text: string): number | null {
  const zone = zoneIn(text);
  return zone === undefined ? null : standardOffsetOf(zone);
}

type Pair = readonly [key: string, value: string];

/** `key: value`, `key;value` and `key value` in one line, and a row of names over a row of values. */
function pairsOf(rows: readonly HeadRow[]): Pair[] {
  const found = rows.flatMap(({ text, cells }): Pair[] => {
    const filled = cells.filter((cell) => cell !== "");
    const [key = "", value = ""] = filled;
    if (filled.length >= 2 && filled.length <= 3 && !/[:=]\s*\S/.test(key)) return [[plainWords(key), value]];
    const match =
      /^[\s#"';]*([^\d:=]*[^\d:=\s])\s+(\d.*)$/.exec(text) ??
      /^[\s#"';]*([^:=\d][^:=]*?)\s*[:=]\s*(.+)$/.exec(text);
    return match === null ? [] : [[plainWords(match[1] ?? ""), (match[2] ?? "").replace(/[";,\s]+$/, "")]];
  });
  const tables = rows.flatMap((row, i): Pair[] => {
    const below = rows[i + 1];
    if (below === undefined || row.cells.length < 3 || row.cells.length !== below.cells.length) return [];
    if (row.cells.some((cell) => /^[-\d.,]+$/.test(cell))) return [];
    return row.cells.map((cell, at): Pair => [plainWords(cell), below.cells[at] ?? ""]);
  });
  return [...tables, ...found];
}

function firstOf<T, R>(all: readonly T[], look: (each: T) => R | null): R | null {
  for (const each of all) {
    const found = look(each);
    if (found !== null) return found;
  }
  return null;
}

function wholeIn(text: string): number | null {
  const match = /^\D{0,3}(\d{1,3}(?:[ .,'’]\d{3})+|\d+)(?!\S*[:/])/.exec(text);
  return match === null ? null : Number((match[1] ?? "").replace(/\D/g, ""));
}

/** `01:00:00`, `00:10`, `10 min`, `3600 s`, `1h`; a bare number takes its unit from the words before it. */
function minutesIn(text: string, key: string): number | null {
  const clock = /(\d{1,3}):(\d{2})(?::(\d{2}))?/.exec(text);
  if (clock !== null) return Number(clock[1]) * 60 + Number(clock[2]) + Number(clock[3] ?? 0) / 60;
  const match = /(\d+(?:[.,]\d+)?)\s*([a-z]*)/i.exec(text);
  if (match === null) return null;
  const unit = (match[2] || /\b(s|sec\w*|sek\w*|min\w*|h|hour\w*|stunden?)\b/.exec(key)?.[1]) ?? "";
  const value = Number((match[1] ?? "").replace(",", "."));
  if (/^s/i.test(unit) && !/^std/i.test(unit)) return value / 60;
  if (/^m/i.test(unit)) return value;
  return /^(?:h|std|u)/i.test(unit) ? value * 60 : null;
}

function offsetOf(rows: readonly HeadRow[], pairs: readonly Pair[], zone: string | undefined): number | null {
  const seconds = firstOf(pairs, ([key, value]) =>
    /^utc offset seconds$/.test(key) && /^[-+]?\d+$/.test(value) ? Number(value) / 60 : null,
  );
  if (seconds !== null) return seconds;
  const hours = firstOf(pairs, ([key, value]) =>
    /^(?:local )?(?:time ?zone|utc offset|zeitzone)$/.test(key) && /^[-+]?\d{1,2}(?:\.\d+)?$/.test(value)
      ? Number(value) * 60
      : null,
  );
  if (hours !== null) return hours;
  const about = rows.filter(
    ({ text }) => /zone|utc|gmt|time|zeit|heure|hora|ora\b|tijd/i.test(text) && !/offset/i.test(text),
  );
  const written = firstOf(about, ({ text }) => offsetIn(text));
  return written ?? (zone === undefined ? null : standardOffsetOf(zone));
}

/** Minutes of a named zone ahead of UTC in winter, by the platform's time zone data; null: the name is not known. */
function standardOffsetOf(zone: string): number | null {
  try {
    const format = new Intl.DateTimeFormat("en", { timeZone: zone, timeZoneName: "longOffset" });
    const offsets = [0, 6].map((month) => {
      const parts = format.formatToParts(new Date(Date.UTC(2024, month, 1)));
      return offsetIn(parts.find(({ type }) => type === "timeZoneName")?.value ?? "") ?? 0;
    });
    return Math.min(...offsets);
  } catch {
    return null;
  }
}

function placeIn(pairs: readonly Pair[]): WeatherPlace | undefined {
  const value = (pattern: RegExp): number | undefined => {
    const found = pairs.find(([key]) => pattern.test(key))?.[1] ?? "";
    const number = /^[-+]?\d+(?:\.\d+)?/.exec(found)?.[0];
    return number === undefined ? undefined : Number(number);
  };
  const [latitude, longitude, elevation] = [
    value(/^lat(?:itude)?\b/),
    value(/^lon(?:gitude)?\b/),
    value(/^(?:elevation|altitude)\b/),
  ];
  if (latitude === undefined || longitude === undefined) return undefined;
  return { latitude, longitude, ...(elevation === undefined ? {} : { elevation }), isTypicalYear: false };
}
