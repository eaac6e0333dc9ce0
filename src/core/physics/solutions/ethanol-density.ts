import { withinRange } from "../out-of-range.ts";

/* Ethanol and water: density, and what follows from it. Strengths are fractions 0 to 1: by mass (m/m), or by
 * volume (v/v, at a reference temperature, 20 °C unless said). Volumes mL, masses g, densities kg/m³, °C. */

/** Where the formula holds, °C, and above the freezing line. */
export const DENSITY_DRY_BULB = { low: -20, high: 40 } as const;

/* Coefficients of OIML R 22, International alcoholometric tables (1975), as printed in Council Directive 76/766/EEC, Annex section 4.
 * The head of the directive's table was read; the rest agrees in eight transcriptions but for one with C2,3 = -2.170575700536933. */
const A = [
  9.9820123e2, -1.929769495e2, 3.891238958e2, -1.668103923e3, 1.352215441e4, -8.829278388e4, 3.062874042e5,
  -6.138381234e5, 7.470172998e5, -5.478461354e5, 2.234460334e5, -3.903285426e4,
];
const B = [-2.0618513e-1, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.169354e-9, -9.9739231e-11];
const C = [
  [
    1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2,
    3.924090430035045e3, -1.210164659068747e4, 2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4,
    -7.420201433430137e3, 1.285617841998974e3,
  ],
  [
    -1.19301300505701e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1,
    1.09635566657757e2, -1.422753946421155e2, 1.08043594285623e2, -4.414153236817392e1, 7.442971530188783,
  ],
  [
    -6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.02299296671922, -2.895696483903638,
    4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1,
  ],
  [4.075376675622027e-6, -8.76305857347111e-6, 6.515031360099368e-6, -1.51578483698721e-6],
  [-2.788074354782409e-8, 1.345612883493354e-8],
];

/** Density of ethanol and water, kg/m³:
 *  ρ(p,t) = A1 + Σ A_k p^(k−1) + Σ B_k (t−20)^k + Σ C_m,k p^k (t−20)^m.
 *  @param massFraction 0 to 1   @param dryBulb °C of the liquid   @throws OutOfRange outside the range and where the liquid freezes */
export function densityFromMassFraction(massFraction: number, dryBulb: number): number {
  const p = withinRange("mass fraction of ethanol", massFraction, "1", 0, 1);
  const t =
    withinRange("temperature", dryBulb, "°C", freezingFromMassFraction(p), DENSITY_DRY_BULB.high) - 20;
  const cross = C.reduceRight((sum, row) => (sum + p * polynomial(row, p)) * t, 0);
  return polynomial(A, p) + t * polynomial(B, t) + cross;
}

/** Σ c_k x^k by Horner's rule, k from 0. */
const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

/** Freezing line of weak solutions, °C by mass fraction, straight between the points; from memory, CRC Handbook. */
const FREEZING = [
  [0, 0],
  [0.05, -2.1],
  [0.1, -4.5],
  [0.15, -7.4],
  [0.2, -10.9],
  [0.25, -15.4],
  [0.3, -20],
] as const;

/** Lowest temperature at which the density formula may be asked. */
function freezingFromMassFraction(p: number): number {
  const after = FREEZING.findIndex(([fraction]) => p < fraction);
  const [from, to] = [FREEZING[after - 1], FREEZING[after]];
  if (!from || !to) return DENSITY_DRY_BULB.low;
  return from[1] + (to[1] - from[1]) * ((p - from[0]) / (to[0] - from[0]));
}

/** Strength by volume: q = p·ρ(p,T)/ρ(1,T).   @param referenceTemperature 20 °C by OIML; 15 and 15.56 °C in older tables */
export function volumeFractionFromMassFraction(massFraction: number, referenceTemperature = 20): number {
  const t = withinRange("reference temperature", referenceTemperature, "°C", 0, 40);
  return (massFraction * densityFromMassFraction(massFraction, t)) / densityFromMassFraction(1, t);
}

/** The inverse, by halving. */
export function massFractionFromVolumeFraction(volumeFraction: number, referenceTemperature = 20): number {
  const q = withinRange("strength by volume", volumeFraction, "1", 0, 1);
  return massFractionWhere((p) => volumeFractionFromMassFraction(p, referenceTemperature), q);
}

/** Density of a strength by volume (20 °C) at a temperature, kg/m³. */
export const densityFromVolumeFraction = (volumeFraction: number, dryBulb = 20): number =>
  densityFromMassFraction(massFractionFromVolumeFraction(volumeFraction), dryBulb);

/** Strength by volume (20 °C) of a batch from its density, for the check weight.
 *  @param density kg/m³, from ethanol's to water's at that temperature   @param dryBulb 10 to 40 °C */
export function volumeFractionFromDensity(density: number, dryBulb: number): number {
  const t = withinRange("temperature", dryBulb, "°C", 10, 40);
  const [low, high] = [densityFromMassFraction(1, t), densityFromMassFraction(0, t)];
  withinRange("density", density, "kg/m³", low, high);
  return volumeFractionFromMassFraction(massFractionWhere((p) => -densityFromMassFraction(p, t), -density));
}

/** The mass fraction at which something that rises with it reaches a target.
 *  Bracket 0 to 1, tolerance 1e-13, at most 50 halvings, so it always ends. */
function massFractionWhere(rising: (massFraction: number) => number, target: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 50 && high - low > 1e-13; step += 1) {
    const middle = (low + high) / 2;
    if (rising(middle) < target) low = middle;
    else high = middle;
  }
  return target >= rising(1) ? 1 : (low + high) / 2;
}
