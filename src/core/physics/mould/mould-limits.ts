/** Limits of mould growth beside the index: the critical-humidity parabola, the dose model, the 65 % rule, building acceptance, water activity. */
import { withinRange } from "../out-of-range.ts";

/** Damp enough for the moulds of sized paper, leather and dirt, when it lasts.
 *  Source: "virtually no mould below 65 %", indoor-mould answers seen; the 48 h are common practice, no source. */
export const DAMP_RELHUM = 0.65;
export const DAMP_HOURS = 48;

/** Curvature of the critical humidity, % per K², by how readily the surface is grown over (a the readiest).
 *  Source: read in a public research code of damage models (groups a to e); that they stem from Johansson's test-method groups is from memory. */
export const CURVATURE = { a: 0.043, b: 0.036, c: 0.028, d: 0.021, e: 0.014 } as const;
export type SurfaceGroup = keyof typeof CURVATURE;
const UPPER_LESS = 0.007;
/** Where the parabola is used, °C. Source: as above. */
export const PARABOLA_RANGE = { low: 1, high: 30 } as const;

/** Relative humidity above which mould is to be expected (the lower curve) on a surface of that temperature.
 *  @param dryBulb °C, 1 to 30; outside it throws OutOfRange   @returns a fraction; above 1 means: not even in saturated air */
export function criticalRelHum(dryBulb: number, group: SurfaceGroup): number {
  withinRange("temperature", dryBulb, "°C", PARABOLA_RANGE.low, PARABOLA_RANGE.high);
  return parabola(dryBulb, CURVATURE[group]);
}

/** The upper curve: above it growth is sure. */
export function upperCriticalRelHum(dryBulb: number, group: SurfaceGroup): number {
  withinRange("temperature", dryBulb, "°C", PARABOLA_RANGE.low, PARABOLA_RANGE.high);
  return parabola(dryBulb, CURVATURE[group] - UPPER_LESS);
}

/** The lower curve at any temperature, by its curvature: held at its warm end, where it has turned up again, and at saturation in the cold.
 *  For series of millions of readings. */
export function heldCriticalRelHum(dryBulb: number, curvature: number): number {
  const held = Math.min(PARABOLA_RANGE.high, Math.max(PARABOLA_RANGE.low, dryBulb));
  return Math.min(1, parabola(held, curvature));
}

const parabola = (T: number, beta: number): number => (105 + beta * (T * T - 54 * T)) / 100;

/** Dose a day towards growth on planed pine, negative where it is drying out. 1 at 20 °C and 90 %.
 *  @param dryBulb mean of 12 h, °C, −60 to 30; outside it throws OutOfRange   @param relHum mean of 12 h, 0 to 1
 *  Source: T. Isaksson, S. Thelandersson, A. Ekstrand-Tobin, P. Johansson, Critical conditions for onset of mould growth under varying
 *  climate conditions, Building and Environment 45 (2010); coefficients seen in public code. It steps by 0.008 at 75 %, as printed. */
export function dosePerDay(dryBulb: number, relHum: number): number {
  withinRange("temperature", dryBulb, "°C", -60, DOSE_WARMEST);
  withinRange("relative humidity", relHum, "1", 0, 1);
  if (dryBulb <= 0.1) return -0.5;
  return humidityDose(100 * relHum) * Math.exp(0.74 * Math.log(dryBulb / 20));
}

function humidityDose(percent: number): number {
  if (percent > 75) return Math.exp(15.53 * Math.log(percent / 90));
  return percent > 60 ? -2.7 + (1.1 * percent) / 30 : -0.5;
}

/** The dose model is fitted up to here, °C. */
export const DOSE_WARMEST = 30;
/** Days of full dose to first growth on planed pine. From memory: Isaksson et al. 2010. */
export const CRITICAL_DOSE_DAYS = 17;
/** The dose is taken of 12 h means. Isaksson et al. 2010. */
export const DOSE_HOURS = 12;

/** Acceptance of ANSI/ASHRAE 160 as it stood in 2009: 30-day mean below 80 % while the 30-day mean temperature is 5 to 40 °C.
 *  Source: quoted in Glass et al. 2017, ASTM STP 1599, abstract. */
export const passesAshrae160Of2009 = (meanDryBulb: number, meanRelHum: number): boolean =>
  meanDryBulb < 5 || meanDryBulb > 40 || meanRelHum < 0.8;

/** Acceptance of ANSI/ASHRAE 160 since its 2016 addendum: the mould index stays below 3. The 3 is from memory. */
export const passesAshrae160Of2016 = (highestIndex: number): boolean => highestIndex < 3;

/** Whether every running mean of 30 days passes the 2009 form, and the dampest of those that count.
 *  @param stepHours between readings, evenly   @returns null for a series shorter than 30 days */
export function ashrae160Of2009(
  dryBulb: Float64Array,
  relHum: Float64Array,
  stepHours: number,
): { passes: boolean; worstRelHum: number | null } | null {
  const window = Math.round((30 * 24) / stepHours);
  if (window < 1 || relHum.length < window) return null;
  let warmth = 0;
  let damp = 0;
  let passes = true;
  let worstRelHum: number | null = null;
  for (let i = 0; i < relHum.length; i++) {
    warmth += (dryBulb[i] ?? Number.NaN) - (i < window ? 0 : (dryBulb[i - window] ?? Number.NaN));
    damp += (relHum[i] ?? Number.NaN) - (i < window ? 0 : (relHum[i - window] ?? Number.NaN));
    if (i < window - 1) continue;
    const mean = { dryBulb: warmth / window, relHum: damp / window };
    if (mean.dryBulb >= 5 && mean.dryBulb <= 40) worstRelHum = Math.max(worstRelHum ?? 0, mean.relHum);
    passes = passes && passesAshrae160Of2009(mean.dryBulb, mean.relHum);
  }
  return { passes, worstRelHum };
}

/** Least water activity (equilibrium relative humidity, 0 to 1) at which a mould grows or its spores germinate. */
export interface WaterActivityMinimum {
  readonly organism: string;
  /** °C of the trial, where it is told. */
  readonly at: number | null;
  readonly least: number;
  readonly source: string;
  readonly status: "seen" | "from memory";
}

const PITT = "Pitt and Christian 1968, Applied Microbiology 16:1853, abstract";
const GOCK = "Gock et al. 2003, International Journal of Food Microbiology 81:11-19, abstract";
const REVIEW = "review chapter 2019, table 9.3, doi 10.1016/B978-0-12-816333-7.00009-6";
const BEUCHAT = "Beuchat 1981, Cereal Foods World 26:345, as tabulated by an instrument maker";
const HANDBOOKS = "food-mycology handbooks";

const seen = (organism: string, at: number | null, least: number, source: string): WaterActivityMinimum => ({
  organism,
  at,
  least,
  source,
  status: "seen",
});
const recalled = (organism: string, least: number): WaterActivityMinimum => ({
  organism,
  at: null,
  least,
  source: HANDBOOKS,
  status: "from memory",
});

export const WATER_ACTIVITY_MINIMA: readonly WaterActivityMinimum[] = [
  seen("Xeromyces bisporus, growth on prunes", 25, 0.605, PITT),
  seen("Chrysosporium fastidium, growth", 25, 0.686, PITT),
  seen("Eurotium repens, germination", 25, 0.74, GOCK),
  seen("Eurotium repens, germination", 30, 0.7, GOCK),
  seen("Eurotium repens, germination", 37, 0.74, GOCK),
  seen("Chrysosporium xerophilum, germination; 0.70 the lowest tried", null, 0.7, GOCK),
  seen("Xeromyces bisporus, germination; 0.70 the lowest tried", null, 0.7, GOCK),
  seen("Penicillium roqueforti, germination", 25, 0.82, GOCK),
  seen("Penicillium roqueforti, germination", 30, 0.86, GOCK),
  seen("Wallemia sebi", null, 0.75, REVIEW),
  seen("mycotoxigenic Aspergillus, Fusarium and Penicillium", null, 0.78, REVIEW),
  seen("Aspergillus flavus", null, 0.8, REVIEW),
  seen("xerophilic moulds, the driest", null, 0.65, BEUCHAT),
  seen("no microbial growth below", null, 0.6, BEUCHAT),
  recalled("Aspergillus penicillioides", 0.73),
  recalled("Aspergillus restrictus", 0.71),
  recalled("Aspergillus niger", 0.77),
  recalled("Penicillium chrysogenum", 0.78),
  recalled("Cladosporium herbarum", 0.85),
  recalled("Stachybotrys chartarum", 0.94),
];

/** Nothing grows below this water activity. Source: Beuchat 1981. */
export const NO_GROWTH_RELHUM = 0.6;

/** Lowest points of Sedlbauer's isopleths near 30 °C, by substrate. Read-off from memory, for comparison only: their fitted curves were not
 *  found in a readable source and are not imitated. Parabolas a and b bracket substrates I and II. */
export const ISOPLETH_MINIMA = [
  { substrate: "0", what: "culture medium", least: 0.7 },
  { substrate: "I", what: "easily degraded: wallpaper, dirty surfaces", least: 0.76 },
  { substrate: "II", what: "porous: plaster, mineral, wood", least: 0.79 },
] as const;
