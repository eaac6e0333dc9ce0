import { fraction, held, temperature } from "./_internals/sorption-ranges.ts";
import { MOST_RELHUM, relHumWhere } from "./isotherm.ts";

/** Where the wood equation is tabulated: −1 to 130 °C. */
export const WOOD_DRY_BULB = { low: -1.2, high: 130 } as const;

/** Equilibrium moisture content of wood, kg/kg; midway between adsorption and desorption.
 *  Source: USDA Forest Products Laboratory, Wood Handbook (2010), ch. 4 eq. 4-5 (Hailwood-Horrobin, two hydrates). */
export function woodMoistureContentFromRelHum(relHum: number, dryBulb: number): number {
  const { W, x, K1, K2 } = woodTerms(relHum, dryBulb);
  const hydrates = (K1 * x + 2 * K1 * K2 * x * x) / (1 + K1 * x + K1 * K2 * x * x);
  return (18 / W) * (x / (1 - x) + hydrates); // eq. 4-5, in kg/kg instead of per cent
}

/** du/dh of eq. 4-5, kg/kg per 1. */
export function woodSlope(relHum: number, dryBulb: number): number {
  const { W, x, K, K1, K2 } = woodTerms(relHum, dryBulb);
  const above = K1 * x + 2 * K1 * K2 * x * x;
  const below = 1 + K1 * x + K1 * K2 * x * x;
  const hydrates = ((K1 + 4 * K1 * K2 * x) * below - above * (K1 + 2 * K1 * K2 * x)) / (below * below);
  return ((18 * K) / W) * (1 / ((1 - x) * (1 - x)) + hydrates);
}

/** Inverse of eq. 4-5, by halving (see `relHumWhere`). */
export function woodRelHumFromMoistureContent(moistureContent: number, dryBulb: number): number {
  held(moistureContent, woodMoistureContentFromRelHum(MOST_RELHUM, dryBulb));
  return relHumWhere((relHum) => woodMoistureContentFromRelHum(relHum, dryBulb), moistureContent);
}

function woodTerms(relHum: number, dryBulb: number) {
  const h = fraction(relHum);
  const T = temperature(dryBulb, WOOD_DRY_BULB);
  const W = 349 + 1.29 * T + 0.0135 * T ** 2;
  const K = 0.805 + 0.000736 * T - 0.00000273 * T ** 2;
  const K1 = 6.27 - 0.00938 * T - 0.000303 * T ** 2;
  const K2 = 1.91 + 0.0407 * T - 0.000293 * T ** 2;
  return { W, x: K * h, K, K1, K2 };
}

/** What the relative humidity in a closed bag does per kelvin of warming, as a fraction per K.
 *  Usual 0.17 to 0.19 % per K between 20 and 30 °C by the wood equation, less when colder; at most about 0.33 in a closed box with wood (Studies in Conservation, 1964). */
export const RELHUM_PER_KELVIN = { low: 0.0015, usual: 0.002, high: 0.0035 } as const;

/** What a closed bag's relative humidity becomes when bag and item warm or cool while the item keeps its water, by the wood
 *  equation: use it to bring a reading to another temperature. The pulp fits (pulp-isotherm.ts) give two to four times as much and are
 *  not for this. @returns a fraction with the caution that it is wood's. */
export function relHumFromWarming(relHum: number, fromDryBulb: number, toDryBulb: number) {
  const content = woodMoistureContentFromRelHum(relHum, fromDryBulb);
  const after = woodRelHumFromMoistureContent(content, toDryBulb);
  return { relHum: after, cautions: ["relhum-shift-is-woods"] as const };
}
