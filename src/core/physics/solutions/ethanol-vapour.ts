import { withinRange } from "../out-of-range.ts";
import { massFractionFromVolumeFraction } from "./ethanol-density.ts";

/* Vapour above ethanol and water, and how much of it is in air. Pressures Pa, temperatures °C, strengths 0 to 1. */

const KELVIN = 273.15;
const GAS_CONSTANT = 8.314462; // J/(mol K)
const STANDARD_PRESSURE = 101_325; // Pa
const ETHANOL_MOLAR_MASS = 46.069; // g/mol
const WATER_MOLAR_MASS = 18.015; // g/mol
const MERCURY = 133.322; // Pa/mmHg

/** Antoine: log10 P = A − B/(t + C), mmHg and °C; constants in wide public use. */
interface Antoine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly low: number;
  readonly high: number;
}
const ETHANOL_ANTOINE: Antoine = { a: 8.20417, b: 1642.89, c: 230.3, low: -57, high: 80 };
const WATER_ANTOINE: Antoine = { a: 8.07131, b: 1730.63, c: 233.426, low: 1, high: 100 };

function antoine({ a, b, c, low, high }: Antoine, dryBulb: number): number {
  const t = withinRange("temperature", dryBulb, "°C", low, high);
  return MERCURY * 10 ** (a - b / (t + c));
}

/** Vapour pressure of pure ethanol, Pa. @param dryBulb −57 to 80 °C */
export const ethanolSatPressure = (dryBulb: number): number => antoine(ETHANOL_ANTOINE, dryBulb);
/** Temperature at which pure ethanol has a vapour pressure, °C; the inverse, beyond the range of its constants too. */
export function ethanolDryBulbFromSatPressure(pressure: number): number {
  const { a, b, c } = ETHANOL_ANTOINE;
  return b / (a - Math.log10(pressure / MERCURY)) - c;
}
/** Vapour pressure of water by the same form, Pa, for balances with ethanol only; moist air has its own. @param dryBulb 1 to 100 °C */
export const waterSatPressureByAntoine = (dryBulb: number): number => antoine(WATER_ANTOINE, dryBulb);

/** Mole fraction of ethanol. */
export function moleFractionFromMassFraction(massFraction: number): number {
  const p = withinRange("mass fraction of ethanol", massFraction, "1", 0, 1);
  const ethanol = p / ETHANOL_MOLAR_MASS;
  return ethanol / (ethanol + (1 - p) / WATER_MOLAR_MASS);
}

/** van Laar, ethanol then water. Source: Perry's Handbook, as quoted; fitted to boiling points at 101.3 kPa. */
const A12 = 1.6798;
const A21 = 0.9227;

/** Activity coefficients: ln γ1 = A12/(1 + A12·x1/(A21·x2))², ln γ2 = A21/(1 + A21·x2/(A12·x1))². */
export function activityFromMoleFraction(x1: number): { ethanol: number; water: number } {
  const x2 = 1 - withinRange("mole fraction of ethanol", x1, "1", 0, 1);
  const mixed = A12 * x1 + A21 * x2; // the form that stands at both ends
  return {
    ethanol: Math.exp(A12 * ((A21 * x2) / mixed) ** 2),
    water: Math.exp(A21 * ((A12 * x1) / mixed) ** 2),
  };
}

/** Vapour above a solution: p_i = x_i·γ_i·Psat_i. About ±10 % at room temperature. An ideal solution would give far too little
 *  below 80 % v/v, so the activity coefficients are never left out.
 *  @param volumeFraction 20 °C strength   @param dryBulb of the liquid, 1 to 60 °C   @returns Pa, and the saturated vapour in ppm */
export function vapourFromVolumeFraction(volumeFraction: number, dryBulb: number) {
  withinRange("temperature", dryBulb, "°C", 1, 60);
  const moleFraction = moleFractionFromMassFraction(massFractionFromVolumeFraction(volumeFraction));
  const activity = activityFromMoleFraction(moleFraction);
  const ethanol = moleFraction * activity.ethanol * ethanolSatPressure(dryBulb);
  const water = (1 - moleFraction) * activity.water * waterSatPressureByAntoine(dryBulb);
  return {
    moleFraction,
    activity,
    ethanol,
    water,
    saturationPpm: (1e6 * ethanol) / STANDARD_PRESSURE,
    cautions: ["vapour-estimate-ten-per-cent", "vapour-near-the-liquid-can-burn"] as const,
  };
}

/** mg/m³ = ppm·M·P/(R·T), ethanol.   @param dryBulb of the air, −20 to 60 °C   @param pressure Pa */
export const milligramsFromPpm = (ppm: number, dryBulb: number, pressure = STANDARD_PRESSURE): number =>
  (withinRange("ppm", ppm, "ppm", 0, 1e6) * 1e-3 * ETHANOL_MOLAR_MASS * pressure) / gasEnergy(dryBulb);
/** The inverse. */
export const ppmFromMilligrams = (
  milligrams: number,
  dryBulb: number,
  pressure = STANDARD_PRESSURE,
): number =>
  (withinRange("concentration", milligrams, "mg/m³", 0, 1e9) * gasEnergy(dryBulb)) /
  (1e-3 * ETHANOL_MOLAR_MASS * pressure);
const gasEnergy = (dryBulb: number): number =>
  GAS_CONSTANT * (withinRange("temperature", dryBulb, "°C", -20, 60) + KELVIN); // J/mol
