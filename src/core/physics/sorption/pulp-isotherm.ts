import { fraction, held, temperature } from "./_internals/sorption-ranges.ts";
import type { GabRow } from "./gab-isotherm.ts";
import { MOST_RELHUM } from "./isotherm.ts";

/* Tryding et al., Drying Technology (2022), fitted to Leuk et al. (2016), first desorption of bleached pulp: an upper bound,
 * 1.4 to 1.5 times the book-paper row. Parameters as printed in the authors' code. Measured about 20 to 80 °C. */
const PULP_DRY_BULB = { low: 0, high: 100 } as const;
const GAS_CONSTANT_OF_WATER = 0.4615; // kJ/(kg K)
const KELVIN = 273.15;

/** The GAB row of bleached pulp at one temperature; use it for the temperature slope only. */
export function pulpGabFromDryBulb(dryBulb: number): GabRow {
  const TK = temperature(dryBulb, PULP_DRY_BULB) + KELVIN;
  return {
    m0: 0.0578,
    C: 0.4273 * Math.exp(468.9266 / (GAS_CONSTANT_OF_WATER * TK)),
    K: 0.1011 * Math.exp(297.7358 / (GAS_CONSTANT_OF_WATER * TK)),
  };
}

const HENDERSON_C = 0.5786;
const HENDERSON_N = 4.71;

/** Henderson I: a = 1 − exp(−ξ), ξ = [(w/κ)/(1 − (w/wf)³)]^(1/c). @param moistureContent 0 to below free water `wf` */
export function hendersonRelHumFromMoistureContent(moistureContent: number, dryBulb: number): number {
  const { kappa, wf } = hendersonTerms(dryBulb);
  const w = held(moistureContent, hendersonMoistureContentFromRelHum(MOST_RELHUM, dryBulb));
  const xi = (w / kappa / (1 - (w / wf) ** 3)) ** (1 / HENDERSON_C);
  return 1 - Math.exp(-xi);
}

/** Its inverse in closed form: v = wf/(3κ(−ln(1−a))^c), q = (1/2 + √(1/4 + v³))^(1/3), w = wf(q − v/q). */
export function hendersonMoistureContentFromRelHum(relHum: number, dryBulb: number): number {
  const { kappa, wf } = hendersonTerms(dryBulb);
  const a = fraction(relHum);
  if (a === 0) return 0;
  const v = wf / (3 * kappa * (-Math.log1p(-a)) ** HENDERSON_C);
  const root = Math.sqrt(0.25 + v ** 3);
  const q = (0.5 + root) ** (1 / 3);
  const p = v / q; // q³ − p³ = 1, so q − p is written without the loss of digits of the plain difference
  return wf / (q * q + q * p + p * p);
}

function hendersonTerms(dryBulb: number) {
  const TK = temperature(dryBulb, PULP_DRY_BULB) + KELVIN;
  const kappa = 0.0629 * Math.exp((377.8934 / TK) ** (HENDERSON_N + 1) / (HENDERSON_N + 1));
  const wf = 2.49 * (1 + (296.15 - TK) / 310);
  return { kappa, wf };
}
