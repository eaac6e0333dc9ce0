/**
 * Whether open windows dry a room. The humidity ratio decides, inside against outside: the two relative humidities cannot be compared,
 * since each belongs to its own temperature. Warm air at 60 % may carry far more water than cold air at 90 %.
 * Below 0 °C we read humidity over ice, weather services over water: at −10 °C such air then seems a tenth drier than it is. That rarely
 * turns the answer, since saturated frosty air carries a fifth (−10 °C) to a half (0 °C) of what a room at 20 °C and 50 % does.
 */

import { withinRange } from "../out-of-range.ts";
import {
  dewPointFromRelHum,
  humidityRatioFromRelHum,
  relHumFromHumidityRatio,
  STANDARD_PRESSURE,
} from "./moist-air.ts";

export interface Air {
  /** °C */
  readonly dryBulb: number;
  /** 0 to 1 */
  readonly relHum: number;
}

export type AiringCaution =
  | "airing-not-in-rain-or-dust"
  | "airing-cools-the-room"
  | "airing-would-wet-cold-surfaces"
  | "airing-dries-below-30"
  | "airing-difference-within-error";

export interface AiringAdvice {
  /** `unsure`: the difference is smaller than what the loggers may err. */
  readonly windows: "open" | "keep-shut" | "unsure";
  /** Inside less outside, kg/kg: what a kilogram of air carries away. */
  readonly difference: number;
  /** How much of it the loggers' error may make up, kg/kg. */
  readonly error: number;
  /** Relative humidity the room would reach, if all its air were changed and kept its warmth. */
  readonly relHumThen: number;
  readonly cautions: readonly AiringCaution[];
}

/** Usual error of a checked logger, a fraction of relative humidity. Common practice, no source. */
export const LOGGER_ERROR = 0.03;

/** Whether to open the windows now.   @param coldestSurface °C of the coldest wall or object inside, if measured
 *  @throws OutOfRange for a relative humidity outside 0 to 1 */
export function airingAdvice(
  inside: Air,
  outside: Air,
  coldestSurface: number | null = null,
  loggerError = LOGGER_ERROR,
  pressure = STANDARD_PRESSURE,
): AiringAdvice {
  const inRatio = humidityRatioFromRelHum(inside.dryBulb, inside.relHum, pressure);
  const outRatio = humidityRatioFromRelHum(outside.dryBulb, outside.relHum, pressure);
  const error = Math.hypot(errorOf(inside, loggerError, pressure), errorOf(outside, loggerError, pressure));
  const difference = inRatio - outRatio;
  const relHumThen = relHumFromHumidityRatio(inside.dryBulb, outRatio, pressure);
  const wets = coldestSurface !== null && outside.relHum > 0.01 && dewPointOf(outside) >= coldestSurface;
  const holds: [AiringCaution, boolean][] = [
    ["airing-not-in-rain-or-dust", true],
    ["airing-would-wet-cold-surfaces", wets],
    ["airing-cools-the-room", outside.dryBulb < inside.dryBulb - 5],
    ["airing-dries-below-30", relHumThen < 0.3],
    ["airing-difference-within-error", Math.abs(difference) <= error],
  ];
  return {
    windows: wets ? "keep-shut" : windowsFor(difference, error),
    difference,
    error,
    relHumThen,
    cautions: holds.flatMap(([code, isSo]) => (isSo ? [code] : [])),
  };
}

const dewPointOf = ({ dryBulb, relHum }: Air): number => dewPointFromRelHum(dryBulb, relHum);

function windowsFor(difference: number, error: number): AiringAdvice["windows"] {
  if (Math.abs(difference) <= error) return "unsure";
  return difference > 0 ? "open" : "keep-shut";
}

/** What the humidity ratio moves by when the relative humidity is out by the logger's error. */
function errorOf({ dryBulb, relHum }: Air, loggerError: number, pressure: number): number {
  const near = relHum > 0.5 ? relHum - loggerError : relHum + loggerError;
  const there = humidityRatioFromRelHum(dryBulb, near, pressure);
  return Math.abs(there - humidityRatioFromRelHum(dryBulb, relHum, pressure));
}

/** Readings of one logger at written moments, hours since 1970-01-01, rising. NaN: no reading. */
export interface AirReadings {
  readonly hours: Float64Array;
  readonly dryBulb: Float64Array;
  readonly relHum: Float64Array;
}

export interface AiringHours {
  /** Hours a week in which outside air is surely drier. */
  readonly hoursAWeek: number;
  readonly dryingHours: number;
  /** Hours for which both loggers tell. */
  readonly comparedHours: number;
  /** Share of each hour of the local day, 0 to 23, in which airing dries; NaN where nothing was compared. */
  readonly byHourOfDay: Float64Array;
}

/** Longest time a reading stands, h. Common practice, no source. */
const LONGEST_STEP = 6;

/** How many hours a week airing would dry, from a logger inside and one (or a weather file) outside.
 *  Every inside reading stands until the next one and is set against the latest outside reading; neither stands for more than 6 h.
 *  @param hoursFromUtc of the place's clock, for the hours of the day   @returns hoursAWeek NaN when nothing could be compared */
export function airingHours(
  inside: AirReadings,
  outside: AirReadings,
  hoursFromUtc = 0,
  loggerError = LOGGER_ERROR,
  pressure = STANDARD_PRESSURE,
): AiringHours {
  withinRange("hours from UTC", hoursFromUtc, "h", -12, 14);
  const compared = new Float64Array(24);
  const drying = new Float64Array(24);
  let out = -1;
  for (let i = 0; i + 1 < inside.hours.length; i++) {
    const at = inside.hours[i] ?? Number.NaN;
    const stepHours = (inside.hours[i + 1] ?? Number.NaN) - at;
    out = latestUntil(outside.hours, at, out);
    const here = airAt(inside, i);
    const there = airAt(outside, out);
    if (
      !here ||
      !there ||
      !(stepHours <= LONGEST_STEP) ||
      at - (outside.hours[out] ?? Number.NaN) > LONGEST_STEP
    )
      continue;
    const hour = Math.floor((((at + hoursFromUtc) % 24) + 24) % 24);
    compared[hour] = (compared[hour] ?? 0) + stepHours;
    if (isDrier(here, there, loggerError, pressure)) drying[hour] = (drying[hour] ?? 0) + stepHours;
  }
  const comparedHours = sum(compared);
  const dryingHours = sum(drying);
  return {
    hoursAWeek: (168 * dryingHours) / comparedHours,
    dryingHours,
    comparedHours,
    byHourOfDay: drying.map((hours, hour) => hours / (compared[hour] ?? 0)),
  };
}

/** Place of the latest moment not after `at`, searched onward from `from`; −1 when there is none. */
function latestUntil(hours: Float64Array, at: number, from: number): number {
  let place = from;
  while (place + 1 < hours.length && (hours[place + 1] ?? Number.NaN) <= at) place++;
  return place;
}

function airAt({ dryBulb, relHum }: AirReadings, place: number): Air | null {
  const air = { dryBulb: dryBulb[place] ?? Number.NaN, relHum: Math.min(1, relHum[place] ?? Number.NaN) };
  return Number.isNaN(air.dryBulb + air.relHum) ? null : air;
}

function isDrier(inside: Air, outside: Air, loggerError: number, pressure: number): boolean {
  const difference =
    humidityRatioFromRelHum(inside.dryBulb, inside.relHum, pressure) -
    humidityRatioFromRelHum(outside.dryBulb, outside.relHum, pressure);
  return (
    difference > Math.hypot(errorOf(inside, loggerError, pressure), errorOf(outside, loggerError, pressure))
  );
}

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
