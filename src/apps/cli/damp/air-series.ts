import { relHumAtSurface } from "../../../core/physics/air/moist-air.ts";
import { type ClimateSeries, LONGEST_STEP } from "../../../core/physics/mould/climate-series.ts";
import type { ReadingSeries } from "../../../edge/intake/loggers/logger-reading.ts";

/* The readings of one place as mould is judged by them, and plain counts over them. Moments are hours since 1970-01-01. */

export interface AirSeries {
  readonly hours: Float64Array;
  readonly dryBulb: Float64Array;
  readonly relHum: Float64Array;
  readonly surface?: Float64Array;
}

export const seriesFrom = ({ minutes, dryBulb, relHum }: ReadingSeries): AirSeries => ({
  hours: minutes.map((minute) => minute / 60),
  dryBulb,
  relHum,
});

/** Readings from one moment up to and with another. */
export function between({ hours, dryBulb, relHum }: AirSeries, from: number, to: number): AirSeries {
  const first = hours.findIndex((hour) => hour >= from);
  const after = hours.findIndex((hour) => hour > to);
  const cut = (values: Float64Array): Float64Array =>
    first === -1 ? new Float64Array() : values.slice(first, after === -1 ? values.length : after);
  return { hours: cut(hours), dryBulb: cut(dryBulb), relHum: cut(relHum) };
}

/** The same with the latest surface reading not older than 6 h beside each; NaN where there is none. */
export function withSurfaceOf(series: AirSeries, surface: AirSeries): AirSeries & { readonly found: number } {
  const wall = new Float64Array(series.hours.length).fill(Number.NaN);
  let at = -1;
  let found = 0;
  for (const [i, hour] of series.hours.entries()) {
    while ((surface.hours[at + 1] ?? Number.POSITIVE_INFINITY) <= hour) at++;
    const isFresh = hour - (surface.hours[at] ?? Number.NEGATIVE_INFINITY) <= LONGEST_STEP;
    const temperature = isFresh ? (surface.dryBulb[at] ?? Number.NaN) : Number.NaN;
    wall[i] = temperature;
    if (!Number.isNaN(temperature)) found++;
  }
  return { ...series, surface: wall, found };
}

export const withSurfaceOffset = (series: AirSeries, kelvin: number): AirSeries => ({
  ...series,
  surface: series.dryBulb.map((temperature) => temperature + kelvin),
});

export const climateOf = ({ hours, dryBulb, relHum, surface }: AirSeries): ClimateSeries => ({
  hours,
  dryBulb,
  relHum,
  ...(surface === undefined ? {} : { surface }),
});

/** Relative humidity where mould is judged: at the surface where it is colder than the air, 1 at the most. */
export function judgedRelHum({ dryBulb, relHum, surface }: AirSeries): Float64Array {
  if (surface === undefined) return relHum.map((value) => Math.min(1, value));
  return relHum.map((value, i) => {
    const [air, wall] = [dryBulb[i] ?? Number.NaN, surface[i] ?? Number.NaN];
    if (Number.isNaN(air + wall + value)) return Number.NaN;
    return Math.min(1, wall < air ? relHumAtSurface(air, Math.min(1, value), wall) : value);
  });
}

export interface AirCounts {
  readonly above60: number;
  readonly above65: number;
  /** Hours for which a humidity stands. */
  readonly knownHours: number;
  readonly gapCount: number;
  readonly gapHours: number;
}

/** Hours at 60 and at 65 % or more. A reading stands until the next one, 6 h at the most; longer is a gap. */
export function countsOf(hours: Float64Array, relHum: Float64Array): AirCounts {
  const counts = { above60: 0, above65: 0, knownHours: 0, gapCount: 0, gapHours: 0 };
  let before = -1;
  for (let i = 0; i < hours.length; i++) {
    if (Number.isNaN(relHum[i])) continue;
    if (before >= 0) {
      const stands = (hours[i] ?? 0) - (hours[before] ?? 0);
      const value = relHum[before] ?? 0;
      if (stands > LONGEST_STEP) {
        counts.gapCount++;
        counts.gapHours += stands;
      } else {
        counts.knownHours += stands;
        if (value >= 0.6) counts.above60 += stands;
        if (value >= 0.65) counts.above65 += stands;
      }
    }
    before = i;
  }
  return counts;
}

export function rangeOf(values: Float64Array): { low: number; mean: number; high: number } {
  let [low, high, sum, count] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0];
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
    sum += value;
    count++;
  }
  return count === 0
    ? { low: Number.NaN, mean: Number.NaN, high: Number.NaN }
    : { low, mean: sum / count, high };
}
