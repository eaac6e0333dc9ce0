/** The climate of a store: against published bands, and what it does to chemical life. Relative humidity 0 to 1, temperature °C. */
import { dewPointFromRelHum } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";

/** A row of `data/physics/storage-bands.json`. An end that is null does not bind; `relHum` null: not told. */
export interface StorageBand {
  readonly id: string;
  readonly material: string;
  readonly guidance: string;
  readonly dryBulb: readonly [number | null, number | null];
  readonly relHum: readonly [number | null, number | null] | null;
  readonly source: string;
  readonly status: "seen" | "seen in part" | "from memory" | "common practice";
  readonly superseded: boolean;
  readonly note: string;
}

export type StorageCaution =
  | "band-from-memory"
  | "band-superseded"
  | "band-tells-no-humidity"
  | "band-reaches-mould"
  | "life-is-a-comparison"
  | "life-outside-fitted-climate"
  | "life-tells-nothing-of-mould";

export type Place = "below" | "within" | "above";

const placeIn = (value: number, [low, high]: readonly [number | null, number | null]): Place => {
  if (low !== null && value < low) return "below";
  return high !== null && value > high ? "above" : "within";
};

/** How far one climate keeps to a band.   @returns relHum null where the band tells none */
export const placeInBand = (
  band: StorageBand,
  dryBulb: number,
  relHum: number,
): { dryBulb: Place; relHum: Place | null } => ({
  dryBulb: placeIn(dryBulb, band.dryBulb),
  relHum: band.relHum === null ? null : placeIn(relHum, band.relHum),
});

/** What must be known beside a band. A band that reaches 65 % lets storage mould grow. */
export function bandCautions(band: StorageBand): StorageCaution[] {
  const holds: [StorageCaution, boolean][] = [
    ["band-from-memory", band.status === "from memory"],
    ["band-superseded", band.superseded],
    ["band-tells-no-humidity", band.relHum === null],
    ["band-reaches-mould", (band.relHum?.[1] ?? 0) >= 0.65],
  ];
  return holds.flatMap(([code, isSo]) => (isSo ? [code] : []));
}

/** Shares of the readings inside a band and to each side of it. Readings that are NaN are left out; evenly spaced readings are meant. */
export function sharesInBand(band: StorageBand, dryBulb: Float64Array, relHum: Float64Array) {
  const counts = { within: 0, tooCold: 0, tooWarm: 0, tooDry: 0, tooDamp: 0 };
  let readings = 0;
  for (let i = 0; i < relHum.length; i++) {
    const T = dryBulb[i] ?? Number.NaN;
    const phi = relHum[i] ?? Number.NaN;
    if (Number.isNaN(T + phi)) continue;
    readings++;
    const place = placeInBand(band, T, phi);
    if (place.dryBulb === "below") counts.tooCold++;
    if (place.dryBulb === "above") counts.tooWarm++;
    if (place.relHum === "below") counts.tooDry++;
    if (place.relHum === "above") counts.tooDamp++;
    if (place.dryBulb === "within" && (place.relHum ?? "within") === "within") counts.within++;
  }
  const share = (count: number): number => (readings === 0 ? Number.NaN : count / readings);
  return {
    readings,
    within: share(counts.within),
    tooCold: share(counts.tooCold),
    tooWarm: share(counts.tooWarm),
    tooDry: share(counts.tooDry),
    tooDamp: share(counts.tooDamp),
    cautions: bandCautions(band),
  };
}

const KELVIN = 273.15;
/** Gas constant, J/(mol K). */
const R = 8.314462;
/** Heat of activation of paper and acetate, and of some dyes, J/mol; power of the humidity. From memory: Michalski 2002. */
export const PAPER_ACTIVATION = 100_000;
export const DYE_ACTIVATION = 70_000;
const HUMIDITY_POWER = 1.3;
/** Where the comparison is at home: 0 to 35 °C, 20 to 80 %. */
const isAtHome = (dryBulb: number, relHum: number): boolean =>
  dryBulb >= 0 && dryBulb <= 35 && relHum >= 0.2 && relHum <= 0.8;

/** How many times as long as at 20 °C and 50 % chemical ageing takes.
 *  @param dryBulb °C, −30 to 60   @param relHum 0.05 to 1; beyond them OutOfRange. At home at 0 to 35 °C and 20 to 80 %
 *  @param activation J/mol   Source: S. Michalski, Double the life for each five-degree drop, ICOM-CC 2002; from memory */
export function lifeFromClimate(
  dryBulb: number,
  relHum: number,
  activation = PAPER_ACTIVATION,
  humidityPower = HUMIDITY_POWER,
): number {
  withinRange("temperature", dryBulb, "°C", -30, 60);
  withinRange("relative humidity", relHum, "1", 0.05, 1);
  const warmth = (activation / R) * (1 / (dryBulb + KELVIN) - 1 / 293.15);
  return (0.5 / relHum) ** humidityPower * Math.exp(warmth);
}

/** Chemical life in a varying climate, against 20 °C and 50 %. Each reading's rate of ageing is averaged, then turned round; to average
 *  temperature and humidity first would flatter every store with warm spells.
 *  @returns the figure for paper, and for what warmth hurts less (70 kJ/mol); null without readings. NaN readings are left out */
export function lifeFromSeries(
  dryBulb: Float64Array,
  relHum: Float64Array,
): { paper: number; dyes: number; readings: number; cautions: StorageCaution[] } | null {
  let paperRate = 0;
  let dyeRate = 0;
  let readings = 0;
  let isOutside = false;
  for (let i = 0; i < relHum.length; i++) {
    const T = dryBulb[i] ?? Number.NaN;
    const phi = relHum[i] ?? Number.NaN;
    if (Number.isNaN(T + phi)) continue;
    paperRate += 1 / lifeFromClimate(T, phi, PAPER_ACTIVATION);
    dyeRate += 1 / lifeFromClimate(T, phi, DYE_ACTIVATION);
    isOutside ||= !isAtHome(T, phi);
    readings++;
  }
  if (readings === 0) return null;
  return {
    paper: readings / paperRate,
    dyes: readings / dyeRate,
    readings,
    cautions: lifeCautions(isOutside),
  };
}

const lifeCautions = (isOutside: boolean): StorageCaution[] => [
  "life-is-a-comparison",
  "life-tells-nothing-of-mould",
  ...(isOutside ? (["life-outside-fitted-climate"] as const) : []),
];

/** How many times as permanent paper is in a second climate as in a first: the line of equal permanence.
 *  @param enthalpy heat of activation, J/mol; 105 000 to 146 000 (25 to 35 kcal)   @param humidityPower 1; 1.4 for some papers
 *  Source: D. K. Sebera, Isoperms, CLIR 1994; structure seen, the product form from memory */
export function permanenceRatio(
  first: { readonly dryBulb: number; readonly relHum: number },
  second: { readonly dryBulb: number; readonly relHum: number },
  enthalpy: number,
  humidityPower = 1,
): number {
  const T1 = withinRange("first temperature", first.dryBulb, "°C", -30, 60) + KELVIN;
  const T2 = withinRange("second temperature", second.dryBulb, "°C", -30, 60) + KELVIN;
  const humidity = humidityRatioOfRates(first.relHum, second.relHum, humidityPower);
  return humidity * (T1 / T2) * Math.exp((enthalpy / R) * (1 / T2 - 1 / T1));
}

/** The humidity's part alone: (RH1/RH2)ⁿ. */
export const humidityRatioOfRates = (first: number, second: number, humidityPower = 1): number =>
  (withinRange("first relative humidity", first, "1", 0.01, 1) /
    withinRange("second relative humidity", second, "1", 0.01, 1)) **
  humidityPower;

/** What a collection has lived with: the season's slow swing, and the short swings about it that did it no harm.
 *  @param relHum evenly spaced, a year or more   @returns null for less than a year
 *  Source: EN 15757:2010, from memory: 30-day centred running mean; the 7th to the 93rd of a hundred of what is left; a narrower band than
 *  ±10 % need not be kept */
export function seasonAndSwing(
  relHum: Float64Array,
  stepHours: number,
): { season: Float64Array; low: number; high: number } | null {
  if (relHum.length * stepHours < 365 * 24) return null;
  const season = centredMeans(relHum, Math.max(1, Math.round((15 * 24) / stepHours)));
  const swings = relHum.map((value, i) => value - (season[i] ?? Number.NaN)).sort();
  const at = (share: number): number => swings[Math.round(share * (swings.length - 1))] ?? Number.NaN;
  return { season, low: Math.min(-0.1, at(0.07)), high: Math.max(0.1, at(0.93)) };
}

/** Means over each reading and `half` to both sides, fewer at the ends. */
function centredMeans(values: Float64Array, half: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = (sums[i] ?? 0) + (values[i] ?? Number.NaN);
  return values.map((_, i) => {
    const from = Math.max(0, i - half);
    const until = Math.min(values.length, i + half + 1);
    return ((sums[until] ?? 0) - (sums[from] ?? 0)) / (until - from);
  });
}

/** Whether a cold item may leave its sealed wrap: once it is warmer than the room's dew point, with the margin to spare, no dew falls on it.
 *  The margin of 2 K is common practice, no source. */
export const mayUnwrapFromCold = (
  itemTemperature: number,
  roomDryBulb: number,
  roomRelHum: number,
  margin = 2,
): boolean => itemTemperature >= dewPointFromRelHum(roomDryBulb, roomRelHum) + margin;
