import { OutOfRange, withinRange } from "./out-of-range.ts";

/* Ethanol and water: density, strength, making up, vapour, flash point, limits. Strengths are fractions 0 to 1: by mass (m/m), or
 * by volume (v/v, at a reference temperature, 20 °C unless said). Volumes mL, masses g, densities kg/m³, pressures Pa, °C. */

export type SolutionCaution =
  | "volumes-do-not-add"
  | "measure-both-at-one-temperature"
  | "stock-strength-by-certificate"
  | "no-ethanol-on-items"
  | "clean-before-disinfecting"
  | "outside-the-effective-band"
  | "highly-flammable"
  | "mask-does-not-stop-vapour"
  | "vapour-estimate-ten-per-cent"
  | "vapour-near-the-liquid-can-burn"
  | "flash-point-estimate"
  | "flash-table-basis-unclear"
  | "limit-recalled";

const KELVIN = 273.15;
const GAS_CONSTANT = 8.314462; // J/(mol K)
const STANDARD_PRESSURE = 101_325; // Pa
const ETHANOL_MOLAR_MASS = 46.069; // g/mol
const WATER_MOLAR_MASS = 18.015; // g/mol

// ---------------------------------------------------------------------------------------------------- density

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

// ---------------------------------------------------------------------------------------------------- making up

/** Strengths by volume at which ethanol in water works best on microbes; sharply weaker below one half, weaker when absolute.
 *  It does not kill bacterial spores, and mould conidia are harder than vegetative cells.
 *  Source: CDC, Guideline for disinfection and sterilization (2008). */
export const EFFECTIVE_BAND = { low: 0.6, high: 0.9, usual: 0.7 } as const;
/** Time a surface stays wet, minutes. Source: University of Iowa biosafety manual. */
export const CONTACT_MINUTES = 3;
/** Millilitres of a wet wipe for a square metre and pass. Common practice, no source. */
export const WIPE_MILLILITRES_PER_SQUARE_METRE = { low: 20, high: 40 } as const;

export interface Recipe {
  readonly stockMass: number;
  readonly waterMass: number;
  readonly totalMass: number;
  /** mL at the temperature of making up. */
  readonly stockVolume: number;
  readonly waterVolume: number;
  readonly finalVolume: number;
  /** How much less the mixture fills than its parts did, mL. */
  readonly contraction: number;
  /** What 100 mL of the finished solution must weigh at the temperature of making up, g. */
  readonly checkWeight: number;
  readonly cautions: readonly SolutionCaution[];
}

/** What to weigh, or to measure, for a solution. Ethanol is conserved, and so is mass; volumes are not: the water is the mass that
 *  is missing, m_water = V·ρ2 − V_stock·ρ1. By volume: measure the stock and make up to the mark.
 *  @param of finalVolume mL at `dryBulb`; strengths by volume at 20 °C, stock not below target; dryBulb 5 to 40 °C, 20 unless given
 *  @throws OutOfRange when the stock is weaker than what is wanted. Masses in vacuo: a balance reads all of them about 0.1 % low. */
export function recipeFrom(of: {
  finalVolume: number;
  stock: number;
  target: number;
  dryBulb?: number;
}): Recipe {
  const t = withinRange("temperature", of.dryBulb ?? 20, "°C", 5, DENSITY_DRY_BULB.high);
  const finalVolume = withinRange("final volume", of.finalVolume, "mL", 1, 1e6);
  withinRange("wanted strength by volume", of.target, "1", 0.01, 1);
  withinRange("strength of the stock by volume", of.stock, "1", of.target, 1);
  const [p1, p2] = [massFractionFromVolumeFraction(of.stock), massFractionFromVolumeFraction(of.target)];
  const density = densityFromMassFraction(p2, t);
  const totalMass = (finalVolume * density) / 1000;
  const stockMass = (totalMass * p2) / p1;
  return {
    ...parts(stockMass, totalMass - stockMass, { p1, t, finalVolume }),
    totalMass,
    checkWeight: density / 10,
    cautions: recipeCautions(of.target),
  };
}

function parts(
  stockMass: number,
  waterMass: number,
  { p1, t, finalVolume }: { p1: number; t: number; finalVolume: number },
) {
  const stockVolume = (1000 * stockMass) / densityFromMassFraction(p1, t);
  const waterVolume = (1000 * waterMass) / densityFromMassFraction(0, t);
  return {
    stockMass,
    waterMass,
    stockVolume,
    waterVolume,
    finalVolume,
    contraction: stockVolume + waterVolume - finalVolume,
  };
}

function recipeCautions(target: number): SolutionCaution[] {
  const isEffective = target >= EFFECTIVE_BAND.low && target <= EFFECTIVE_BAND.high;
  return [
    "volumes-do-not-add",
    "measure-both-at-one-temperature",
    "stock-strength-by-certificate",
    "no-ethanol-on-items",
    "clean-before-disinfecting",
    ...(isEffective ? [] : (["outside-the-effective-band"] as const)),
    ...handlingCautions(target),
  ];
}

/** From here up a solution is treated as a highly flammable liquid: its flash point lies at or below room temperature. */
export const FLAMMABLE_FROM = 0.5; // strength by volume; default of ours, on the safe side of the flash points below
export const isHighlyFlammable = (volumeFraction: number): boolean =>
  withinRange("strength by volume", volumeFraction, "1", 0, 1) >= FLAMMABLE_FROM;

/** What to heed whenever the solution is out. */
export const handlingCautions = (volumeFraction: number): SolutionCaution[] => [
  ...(isHighlyFlammable(volumeFraction) ? (["highly-flammable"] as const) : []),
  "mask-does-not-stop-vapour",
];

/** What comes of pouring measured volumes together, at the reference temperature.
 *  @returns strength by volume and mL, less than the two volumes together */
export function mixtureFromVolumes(of: {
  stockVolume: number;
  stock: number;
  waterVolume: number;
  referenceTemperature?: number;
}) {
  const t = of.referenceTemperature ?? 20;
  const p1 = massFractionFromVolumeFraction(
    withinRange("strength of the stock by volume", of.stock, "1", 0.01, 1),
    t,
  );
  const stockMass =
    withinRange("volume of stock", of.stockVolume, "mL", 1e-6, 1e6) * densityFromMassFraction(p1, t);
  const waterMass =
    withinRange("volume of water", of.waterVolume, "mL", 0, 1e6) * densityFromMassFraction(0, t);
  const p = (stockMass * p1) / (stockMass + waterMass);
  const volume = (stockMass + waterMass) / densityFromMassFraction(p, t);
  return {
    volumeFraction: volumeFractionFromMassFraction(p, t),
    volume,
    contraction: of.stockVolume + of.waterVolume - volume,
    cautions: ["volumes-do-not-add"] as const,
  };
}

/** Water to add to a volume of stock, mL, as the dilution tables of Gay-Lussac give it.
 *  @param of strengths by volume at the reference temperature, 20 °C unless given (the tables: 15) */
export function waterFromStockVolume(of: {
  stockVolume: number;
  stock: number;
  target: number;
  referenceTemperature?: number;
}): number {
  const t = of.referenceTemperature ?? 20;
  withinRange("wanted strength by volume", of.target, "1", 0.01, 1);
  withinRange("strength of the stock by volume", of.stock, "1", of.target, 1);
  const p1 = massFractionFromVolumeFraction(of.stock, t);
  const p2 = massFractionFromVolumeFraction(of.target, t);
  const stockMass = of.stockVolume * densityFromMassFraction(p1, t);
  return (stockMass * (p1 / p2 - 1)) / densityFromMassFraction(0, t);
}

/** Weight of a volume of the solution, g: the quickest check of a batch (about −0.25 g per 100 mL for +1 % v/v near 70 %).
 *  @param volume mL measured at `dryBulb` */
export const weightFromVolume = (volume: number, volumeFraction: number, dryBulb: number): number =>
  (withinRange("volume", volume, "mL", 0, 1e6) * densityFromVolumeFraction(volumeFraction, dryBulb)) / 1000;

/** Volume that a solution measured at one temperature fills at another, mL. */
export function volumeFromWarming(
  volume: number,
  volumeFraction: number,
  fromDryBulb: number,
  toDryBulb: number,
): number {
  const p = massFractionFromVolumeFraction(volumeFraction);
  return (volume * densityFromMassFraction(p, fromDryBulb)) / densityFromMassFraction(p, toDryBulb);
}

/** Pure ethanol in a volume of solution, g: m = V·q·ρ(1, 20 °C).   @param volume mL at 20 °C */
export const ethanolMassFromVolume = (volume: number, volumeFraction: number): number =>
  withinRange("volume", volume, "mL", 0, 1e6) *
  withinRange("strength by volume", volumeFraction, "1", 0, 1) *
  ethanolDensity();
/** The inverse, mL at 20 °C. */
export const volumeFromEthanolMass = (mass: number, volumeFraction: number): number =>
  withinRange("mass of ethanol", mass, "g", 0, 1e6) /
  (withinRange("strength by volume", volumeFraction, "1", 0.01, 1) * ethanolDensity());
const ethanolDensity = (): number => densityFromMassFraction(1, 20) / 1000; // g/mL

// ---------------------------------------------------------------------------------------------------- vapour

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

// ---------------------------------------------------------------------------------------------------- fire

/** Explosive limits of ethanol vapour in air by volume, flash point of pure ethanol, vapour pressure at 20 °C.
 *  Source: NIOSH Pocket Guide, ethyl alcohol (flash point 55 °F). */
export const FLAMMABILITY = {
  lowerLimit: 0.033,
  upperLimit: 0.19,
  pureFlashPoint: 12.8, // °C
  vapourPressure20: 44, // mmHg
} as const;

/** Flash point of a solution, °C: where its ethanol vapour is as dense as over pure ethanol at its own flash point,
 *  x1·γ1·Psat(T) = Psat(T_pure). By mass from 30 to 90 % within 1.5 K of the table, by volume from 5 to 20 % within 2 K.
 *  Form: Liaw et al.; Vidal et al., Process Safety and Environmental Protection 84 (2006) 1.
 *  @param massFraction 0.03 to 1   @throws OutOfRange below: weaker solutions hardly flash */
export function flashPointFromMassFraction(massFraction: number, pureFlashPoint = 13) {
  const x1 = moleFractionFromMassFraction(
    withinRange("mass fraction of ethanol", massFraction, "1", 0.03, 1),
  );
  const wanted = ethanolSatPressure(pureFlashPoint) / (x1 * activityFromMoleFraction(x1).ethanol);
  const { a, b, c } = ETHANOL_ANTOINE;
  return {
    flashPoint: b / (a - Math.log10(wanted / MERCURY)) - c,
    cautions: ["flash-point-estimate"] as const,
  };
}
export const flashPointFromVolumeFraction = (volumeFraction: number, pureFlashPoint = 13) =>
  flashPointFromMassFraction(massFractionFromVolumeFraction(volumeFraction), pureFlashPoint);

/** The published flash points of `data/physics/ethanol.json`; whether per cent by mass or by volume, its copies disagree. */
export interface FlashPoints {
  readonly percents: readonly number[];
  readonly dryBulbs: readonly number[];
}

/** Straight between the points.   @param percent 5 to 96, as the table has it */
export function flashPointFromTable(table: FlashPoints, percent: number) {
  const { percents, dryBulbs } = table;
  const after = percents.findIndex((each, i) => i > 0 && percent <= each);
  const [p0, p1, t0, t1] = [percents[after - 1], percents[after], dryBulbs[after - 1], dryBulbs[after]];
  if (p0 === undefined || p1 === undefined || t0 === undefined || t1 === undefined || percent < p0)
    throw new OutOfRange("strength", percent, "%", percents[0] ?? Number.NaN, percents.at(-1) ?? Number.NaN);
  const flashPoint = t0 + (t1 - t0) * ((percent - p0) / (p1 - p0));
  return { flashPoint, cautions: ["flash-table-basis-unclear"] as const };
}

/** What the transport rules call a solution of ethanol: UN 1170 above 24 % v/v. Packing group II from 70 %, III below: from memory. */
export function transportClassFrom(volumeFraction: number): { un: 1170; packingGroup: "II" | "III" } | null {
  withinRange("strength by volume", volumeFraction, "1", 0, 1);
  return volumeFraction <= 0.24 ? null : { un: 1170, packingGroup: volumeFraction >= 0.7 ? "II" : "III" };
}

/** Litres. Bench bottle and room outside the cabinet: common practice, no source. Workroom limit for liquids that flash below the
 *  room's warmest: HSE, DSEAR approved code of practice L138, as quoted (in part). */
export const MOST_LITRES = { benchBottle: 0.5, roomOutsideCabinet: 1, workroomInCabinet: 50 } as const;

// ---------------------------------------------------------------------------------------------------- limits

/** One row of `data/physics/ethanol.json`. */
export interface ExposureLimit {
  readonly id: string;
  readonly where: string;
  readonly kind: "8 hours" | "15 minutes" | "danger to life";
  readonly ppm: number | null;
  readonly mgPerCubicMetre: number | null;
  readonly source: string;
  readonly status: string;
}

/** Mean over a shift to design for where no local limit is chosen, mg/m³: the German 380 (200 ppm), the lowest but one that we know. */
export const DESIGN_LIMIT = 380;

/** The limit of that place and kind. @throws RangeError naming those that are there */
export function exposureLimitFrom(
  limits: readonly ExposureLimit[],
  where: string,
  kind: ExposureLimit["kind"],
) {
  const limit = limits.find((each) => each.where === where && each.kind === kind);
  if (!limit)
    throw new RangeError(
      `no limit of ${where} for ${kind}; there are: ${limits.map((each) => `${each.where} (${each.kind})`).join(", ")}`,
    );
  const cautions: readonly SolutionCaution[] = limit.status === "seen" ? [] : ["limit-recalled"];
  return { ...limit, cautions };
}
