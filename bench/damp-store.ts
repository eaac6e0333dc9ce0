import type { ClimateSeries } from "../src/core/physics/mould/climate-series.ts";
import { seeded } from "../src/core/plan/chance.ts";

/** Readings of one logger: five years, one every five minutes. */
export const READINGS = 5 * 365 * 24 * 12;
const STEP = 1 / 12; // h
const START = 447_072; // h since 1970: 2021-01-01
const YEAR = 365 * 24; // h

export type StoreSeries = Required<ClimateSeries> & { readonly hours: Float64Array };

/** An invented damp store: one logger in air and on the wall behind, the same for the same seed. Seasons, days, drifting weather, two
 *  decimals as loggers write them, lost readings, and outages of hours to days.   @param dampness mean relative humidity, 0 to 1 */
export function dampStore(seed: number, dampness: number, readings = READINGS): StoreSeries {
  const draw = seeded(seed);
  const hours = Float64Array.from({ length: readings }, (_, i) => START + i * STEP);
  const [dryBulb, relHum, surface] = [column(readings), column(readings), column(readings)];
  let weather = 0;
  let rain = 0;
  for (let i = 0; i < readings; i++) {
    const season = Math.sin((2 * Math.PI * i * STEP) / YEAR);
    const day = Math.sin((2 * Math.PI * i * STEP) / 24);
    weather += (draw() - 0.5) * 0.12 - weather * 4e-4;
    rain += (draw() - 0.5) * 0.006 - rain * 4e-4;
    const air = 15 + 8 * season + 0.8 * day + weather;
    dryBulb[i] = twoDecimals(air);
    relHum[i] = twoDecimals(100 * Math.min(1, Math.max(0.2, dampness + 0.08 * season + rain))) / 100;
    surface[i] = twoDecimals(air - 0.8 - 0.7 * season + 0.5 * day);
  }
  for (let lost = 0; lost < readings / 5000; lost++) dryBulb[placeOf(draw, readings)] = Number.NaN;
  for (let outage = 0; outage < 8; outage++) blank(dryBulb, placeOf(draw, readings), 60 + draw() * 900);
  return { hours, dryBulb, relHum, surface };
}

const column = (readings: number): Float64Array => new Float64Array(readings);
const twoDecimals = (value: number): number => Math.round(100 * value) / 100;
const placeOf = (draw: () => number, readings: number): number => Math.floor(draw() * readings);

function blank(values: Float64Array, from: number, readings: number): void {
  values.fill(Number.NaN, from, Math.round(from + readings));
}
