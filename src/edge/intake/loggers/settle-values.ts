import type { Problem } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { relHumFromDewPoint } from "./dew-point.ts";
import type { HumidityUnit, LoggerReading, TemperatureUnit } from "./logger-reading.ts";
import type { ReadingStore } from "./reading-store.ts";
import { howMany } from "./tell-quantities.ts";

/** What is written about the units; null: nothing. */
export interface UnitHints {
  readonly file: string;
  readonly temperature: TemperatureUnit | null;
  readonly relHum: HumidityUnit | null;
  readonly given: Partial<LoggerReading["unit"]>;
  /** The second value is the dew point. */
  readonly isDewPoint: boolean;
}

export interface SettledValues {
  readonly unit: LoggerReading["unit"];
  readonly doubts: readonly Problem[];
}

/** Widest air temperature anyone logs near the ground, °C; common practice, no source. */
const [COLDEST, WARMEST] = [-90, 100];
/** Sensors read a little above saturation; more than this is no humidity. Common practice, no source. */
const HIGHEST = 1.05;
/** Rooms and open air seldom are as warm as this on the average, so that the figures are °F; common practice, no source. */
const FAHRENHEIT_FROM = 48;
/** Above this a cold store in °F and a hot loft in °C look the same, so it is asked. */
const WARM_FOR_CELSIUS = 34;
const KELVIN_FROM = 200;

/** Turns the raw values in place into °C and a fraction, NaN where they cannot be. */
export function settleValues(store: ReadingStore, hints: UnitHints): SettledValues {
  const { temperature, second, size } = store;
  const doubts: Problem[] = [];
  const warmth = hints.given.temperature ?? hints.temperature ?? guessedWarmth(store, hints, doubts);
  const damp = hints.given.relHum ?? (hints.isDewPoint ? "%" : dampUnit(second, size, hints, doubts));
  const wrong = { warm: 0, damp: 0 };
  let above = 0;
  for (let i = 0; i < size; i++) {
    const dryBulb = celsiusFrom(temperature[i] as number, warmth); // i stays below size
    const raw = second[i] as number;
    const relHum = hints.isDewPoint
      ? relHumFromDewPoint(dryBulb, celsiusFrom(raw, warmth))
      : damp === "%"
        ? raw / 100
        : raw;
    if (dryBulb < COLDEST || dryBulb > WARMEST) {
      wrong.warm++;
      temperature[i] = Number.NaN;
    } else temperature[i] = dryBulb;
    if (relHum < 0 || relHum > HIGHEST) {
      wrong.damp++;
      second[i] = Number.NaN;
    } else if (relHum > 1) {
      above++;
      second[i] = 1;
    } else second[i] = relHum;
  }
  const { file } = hints;
  if (wrong.warm > 0) doubts.push(leftEmpty(file, wrong.warm, "temperature"));
  if (wrong.damp > 0) doubts.push(leftEmpty(file, wrong.damp, "relative humidity"));
  if (above > 0)
    doubts.push(
      problem(
        "logger-damp-above-hundred",
        "note",
        { file },
        { got: howMany(above, "reading"), remedy: "Nothing needs to be done." },
      ),
    );
  if (hints.isDewPoint)
    doubts.push(
      problem(
        "logger-dew-point",
        "note",
        { file },
        { remedy: "Choose a column of humidity if there is one." },
      ),
    );
  return { unit: { temperature: warmth, relHum: damp }, doubts };
}

const leftEmpty = (file: string, count: number, what: string): Problem =>
  problem(
    "logger-values-left-out",
    "note",
    { file },
    {
      got: howMany(count, "value"),
      expected: what,
      remedy: "Figures such as -999 stand for a missing value; look at the sensor if there are many.",
    },
  );

const celsiusFrom = (value: number, unit: TemperatureUnit): number =>
  unit === "°C" ? value : unit === "°F" ? ((value - 32) * 5) / 9 : value - 273.15;

function guessedWarmth(
  { temperature, size }: ReadingStore,
  { file }: UnitHints,
  doubts: Problem[],
): TemperatureUnit {
  const median = medianOf(temperature, size, -200, 400);
  if (Number.isNaN(median)) return "°C";
  const unit = median > KELVIN_FROM ? "K" : median > FAHRENHEIT_FROM ? "°F" : "°C";
  if (unit !== "°C" || median > WARM_FOR_CELSIUS)
    doubts.push(
      problem(
        "logger-unit-temperature",
        "ask",
        { file },
        {
          got: `half of the values are above ${Math.round(median)}`,
          expected: unit,
          remedy: "Say which unit it is if that is wrong.",
        },
      ),
    );
  return unit;
}

/** Humidity that never goes above 1 is a fraction, whatever the heading says: no room is at 1 % all the time. */
function dampUnit(
  second: Float64Array,
  size: number,
  { file, relHum }: UnitHints,
  doubts: Problem[],
): HumidityUnit {
  let [least, most, seen] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let i = 0; i < size; i++) {
    const value = second[i] as number; // i stays below size
    if (!(value >= 0 && value <= 110)) continue;
    seen++;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  if (seen === 0) return relHum ?? "%";
  const shown: HumidityUnit = most <= HIGHEST ? "fraction" : "%";
  if (shown !== (relHum ?? "%") && (seen > 1 || relHum === null))
    doubts.push(
      problem(
        "logger-unit-humidity",
        relHum === null ? "note" : "ask",
        { file },
        {
          got: `${least} to ${most}`,
          expected: shown === "%" ? "per cent" : "a fraction of 1",
          remedy: "Say which unit it is if that is wrong.",
        },
      ),
    );
  return shown;
}

function medianOf(values: Float64Array, size: number, least: number, most: number): number {
  const every = Math.max(1, Math.floor(size / 5001));
  const some: number[] = [];
  for (let i = 0; i < size; i += every) {
    const value = values[i] as number; // i stays below size
    if (value > least && value < most) some.push(value);
  }
  return Float64Array.from(some).sort()[Math.floor(some.length / 2)] ?? Number.NaN;
}
