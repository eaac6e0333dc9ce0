import { withinRange } from "../out-of-range.ts";
import type { GelCaution } from "./gel-caution.ts";

/* Desiccant counted in units for dry goods, and rules of thumb for gel in display cases. */

/** Water a unit takes at the final relative humidity, g, and the film's share of the driving difference.
 *  Source: DIN 55474, as two suppliers give it. */
export const DIN_FINAL_RELHUM = [
  { relHum: 0.2, gramsPerUnit: 3, filmFactor: 0.9 },
  { relHum: 0.4, gramsPerUnit: 6, filmFactor: 0.7 },
  { relHum: 0.5, gramsPerUnit: 7, filmFactor: 0.65 },
  { relHum: 0.6, gramsPerUnit: 8, filmFactor: 0.6 },
] as const;
/** Water of wooden packing, g/kg: one supplier gives 80 for air-dry wood and board, another 140 when unknown, 0 when pre-dried. */
export const DIN_PACKING_WATER = { airDry: 80, unknown: 140, preDried: 0 } as const;
/** Least film transmission to reckon with, g/(m² day). */
export const DIN_LEAST_WVTR = 0.1;

export interface DinCase {
  /** V, m³. */
  readonly volume: number;
  /** b, g/m³ of vapour shut in, e.g. 13.83 at 20 °C and 80 %. */
  readonly vapourGramsPerCubicMetre: number;
  /** m, kg of wooden or board packing, with c, g/kg. */
  readonly packingMass: number;
  readonly packingGramsPerKilogram: number;
  /** A, m² of film; WVTR, g/(m² day); t, days. */
  readonly filmArea: number;
  readonly transmission: number;
  readonly days: number;
  /** e and a for the final relative humidity; see `DIN_FINAL_RELHUM`. */
  readonly filmFactor: number;
  readonly gramsPerUnit: number;
  /** g that the damp items will give off: the rule itself leaves them out, and so counts only dry goods. */
  readonly dampGrams?: number;
}

/** Desiccant units: n = (V·b + m·c + A·e·WVTR·t)/a, with the water of damp items added to the bracket.   Source: DIN 55474. */
export function dinUnitsFrom(din: DinCase) {
  const transmission = Math.max(
    DIN_LEAST_WVTR,
    withinRange("film transmission", din.transmission, "g/(m² day)", 0, 100),
  );
  const terms = [
    din.volume * din.vapourGramsPerCubicMetre,
    din.packingMass * din.packingGramsPerKilogram,
    din.filmArea * din.filmFactor * transmission * din.days,
  ] as const;
  const dampGrams = din.dampGrams ?? 0;
  const units =
    (terms[0] + terms[1] + terms[2] + dampGrams) /
    withinRange("water of a unit", din.gramsPerUnit, "g", 1, 20);
  const cautions: readonly GelCaution[] = dampGrams > 0 ? [] : ["units-ignore-damp-items"];
  return { terms, dampGrams, units, wholeUnits: Math.ceil(units - 1e-9), cautions };
}

/** Water one unit takes at 23 to 25 °C, g: at least 3 at 20 %, at least 6 at 40 %.   @returns the row at or below the humidity */
export function gramsPerUnitFrom(relHum: number): number {
  withinRange("relative humidity", relHum, "1", 0.2, 1);
  return DIN_FINAL_RELHUM.filter((row) => row.relHum <= relHum + 1e-9).at(-1)?.gramsPerUnit ?? 3;
}

/** Rule of military packaging, units: by bag area, or by the volume of a rigid case. Source: as given with an activated-clay unit;
 *  DIN 55473 uses the same unit. For dry goods in dry packing. */
export const UNITS_BY_SIZE = {
  perSquareInch: 0.011,
  perSquareMetre: 17,
  perGallon: 0.161,
  perCubicFoot: 1.2,
} as const;

/** Gel that keeps a display case within a drift: Q = Ceq·D·V·N·t/(MH·F), kg.   Source: Weintraub (2002), Tétreault and Bégin (2018);
 *  from memory.
 *  @param of outside and set relative humidity; volume m³; air changes a day; days; `buffer` g/(kg %RH); `drift` allowed, a fraction
 *  @returns kg   Ceq 17.3 g/m³ is saturation at 20 °C */
export function caseGelMassFrom(of: {
  outsideRelHum: number;
  setRelHum: number;
  volume: number;
  airChangesPerDay: number;
  days: number;
  buffer: number;
  drift: number;
}) {
  const D = Math.abs(of.outsideRelHum - of.setRelHum);
  const gelMass = (17.3 * D * of.volume * of.airChangesPerDay * of.days) / (of.buffer * of.drift * 100);
  return { gelMass, cautions: ["case-rule-from-memory"] as const };
}

/** Thomson's maintenance-free case: 20 kg of gel a cubic metre at one air change a day, in proportion at others, so that the
 *  half-time stays 4·M·B/N = 160 days.   Source: Thomson as quoted by Calver (2010); the half-time from memory. */
export const caseGelDensityFrom = (airChangesPerDay: number): number =>
  20 * withinRange("air changes a day", airChangesPerDay, "1/day", 0, 24);
