import { withinRange } from "../out-of-range.ts";
import {
  densityFromMassFraction,
  densityFromVolumeFraction,
  massFractionFromVolumeFraction,
} from "./ethanol-density.ts";

/* What a volume of ethanol and water weighs, fills when warmer, and holds of pure ethanol. Volumes mL, masses g; strengths by volume
 * at 20 °C, 0 to 1. */

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
