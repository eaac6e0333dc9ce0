import { withinRange } from "../out-of-range.ts";
import {
  DENSITY_DRY_BULB,
  densityFromMassFraction,
  massFractionFromVolumeFraction,
  volumeFractionFromMassFraction,
} from "./ethanol-density.ts";
import { handlingCautions } from "./ethanol-fire.ts";
import type { SolutionCaution } from "./solution-caution.ts";

/* Making up ethanol and water. Strengths are fractions 0 to 1: by mass (m/m), or by
 * volume (v/v, at a reference temperature, 20 °C unless said). Volumes mL, masses g. */

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
