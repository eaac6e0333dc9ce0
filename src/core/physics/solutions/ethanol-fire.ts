import { OutOfRange, withinRange } from "../out-of-range.ts";
import { massFractionFromVolumeFraction } from "./ethanol-density.ts";
import {
  activityFromMoleFraction,
  ethanolDryBulbFromSatPressure,
  ethanolSatPressure,
  moleFractionFromMassFraction,
} from "./ethanol-vapour.ts";
import type { SolutionCaution } from "./solution-caution.ts";

/* When ethanol and water burns: flash point, explosive limits, how much may stand where. */

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
  return {
    flashPoint: ethanolDryBulbFromSatPressure(wanted),
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

/** From here up a solution is treated as a highly flammable liquid: its flash point lies at or below room temperature. */
export const FLAMMABLE_FROM = 0.5; // strength by volume; default of ours, on the safe side of the flash points above
export const isHighlyFlammable = (volumeFraction: number): boolean =>
  withinRange("strength by volume", volumeFraction, "1", 0, 1) >= FLAMMABLE_FROM;

/** What to heed whenever the solution is out. */
export const handlingCautions = (volumeFraction: number): SolutionCaution[] => [
  ...(isHighlyFlammable(volumeFraction) ? (["highly-flammable"] as const) : []),
  "mask-does-not-stop-vapour",
];
