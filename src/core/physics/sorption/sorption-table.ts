import { OutOfRange } from "../out-of-range.ts";
import { type Isotherm, MOST_RELHUM } from "./isotherm.ts";

/** Lowest relative humidity of the tables. Common practice, no source: drying never comes near it. */
export const LEAST_RELHUM = 0.01;
const INTERVALS = 512;

/** An isotherm at one temperature, at evenly spaced relative humidities, joined by cubic Hermite pieces: what the drying
 *  solver reads some thousand times a run. Against the GAB rows it is right to 1e-9 kg/kg. */
export interface SorptionTable {
  /** kg/kg at `LEAST_RELHUM + i · step`. */
  readonly content: Float64Array;
  /** Slope times `step`, kg/kg. */
  readonly rise: Float64Array;
  readonly step: number;
  /** Highest relative humidity the isotherm answers for, at most `MOST_RELHUM`. */
  readonly most: number;
}

const known = new WeakMap<Isotherm, Map<number, SorptionTable>>();

/** The temperature tables are made for: the nearest tenth of a degree, which shifts wood by 0.02 % of its water at most. */
export const tableDryBulb = (dryBulb: number): number => Math.round(dryBulb * 10) / 10;

/** The table of an isotherm at a temperature of `tableDryBulb`; made once and kept as long as the isotherm.
 *  @throws OutOfRange as the isotherm does for the temperature */
export function sorptionTable(isotherm: Isotherm, dryBulb: number): SorptionTable {
  const tenth = tableDryBulb(dryBulb);
  const ofIsotherm = known.get(isotherm) ?? new Map<number, SorptionTable>();
  known.set(isotherm, ofIsotherm);
  const table = ofIsotherm.get(tenth) ?? tabulate(isotherm, tenth);
  ofIsotherm.set(tenth, table);
  return table;
}

function tabulate(isotherm: Isotherm, dryBulb: number): SorptionTable {
  const most = mostRelHumOf(isotherm, dryBulb);
  const step = (most - LEAST_RELHUM) / INTERVALS;
  const at = (i: number): number => Math.min(LEAST_RELHUM + i * step, most);
  return {
    content: Float64Array.from({ length: INTERVALS + 1 }, (_, i) =>
      isotherm.moistureContentFromRelHum(at(i), dryBulb),
    ),
    rise: Float64Array.from({ length: INTERVALS + 1 }, (_, i) => isotherm.slope(at(i), dryBulb) * step),
    step,
    most,
  };
}

/** Isotherms through measured points end at their last point and say so by throwing. */
function mostRelHumOf(isotherm: Isotherm, dryBulb: number): number {
  try {
    isotherm.moistureContentFromRelHum(MOST_RELHUM, dryBulb);
    return MOST_RELHUM;
  } catch (error) {
    if (error instanceof OutOfRange && error.high < MOST_RELHUM && error.high > LEAST_RELHUM)
      return error.high;
    throw error;
  }
}

/** kg/kg; beyond the ends of the table on along the end slope, which only a search in progress may ask for. */
export function contentAt({ content, rise, step }: SorptionTable, relHum: number): number {
  const place = (relHum - LEAST_RELHUM) / step;
  const i = Math.max(0, Math.min(content.length - 2, Math.floor(place)));
  const t = place - i;
  const c0 = content[i] as number;
  const c1 = content[i + 1] as number;
  const r0 = rise[i] as number;
  const r1 = rise[i + 1] as number;
  if (t < 0) return c0 + t * r0;
  if (t > 1) return c1 + (t - 1) * r1;
  return c0 + t * (r0 + t * (3 * (c1 - c0) - 2 * r0 - r1 + t * (r0 + r1 - 2 * (c1 - c0))));
}

/** kg/kg per 1 of relative humidity. */
export function slopeAt({ content, rise, step }: SorptionTable, relHum: number): number {
  const place = (relHum - LEAST_RELHUM) / step;
  const i = Math.max(0, Math.min(content.length - 2, Math.floor(place)));
  const t = place - i;
  const c0 = content[i] as number;
  const c1 = content[i + 1] as number;
  const r0 = rise[i] as number;
  const r1 = rise[i + 1] as number;
  if (t < 0) return r0 / step;
  if (t > 1) return r1 / step;
  return (r0 + t * (2 * (3 * (c1 - c0) - 2 * r0 - r1) + 3 * t * (r0 + r1 - 2 * (c1 - c0)))) / step;
}
