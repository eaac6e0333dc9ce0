import { withinRange } from "../out-of-range.ts";

/** Saturated salt solutions, for trying a hygrometer before its bag readings are trusted: RH% = A exp(B/TK), ±2 %.
 *  Constants: CRC Handbook (after Wexler). */
export const SALTS = {
  LiCl: { A: 14.53, B: -75 },
  MgCl2: { A: 29.26, B: 34 },
  "Mg(NO3)2": { A: 25.28, B: 220 },
  NaBr: { A: 20.49, B: 308 },
  NaCl: { A: 69.2, B: 25 },
  KCl: { A: 49.38, B: 159 },
  K2SO4: { A: 86.75, B: 34 },
} as const;
export type Salt = keyof typeof SALTS;

const SALT_DRY_BULB = { low: 5, high: 60 } as const;
const KELVIN = 273.15;

/** Relative humidity over a saturated salt solution with undissolved salt, a fraction, ±0.02. @param dryBulb 5 to 60 °C */
export function relHumFromSalt(salt: { readonly A: number; readonly B: number }, dryBulb: number): number {
  const TK = withinRange("dry bulb", dryBulb, "°C", SALT_DRY_BULB.low, SALT_DRY_BULB.high) + KELVIN;
  return (salt.A / 100) * Math.exp(salt.B / TK);
}
