import { GROWTH_CLASSES, type GrowthClassName, indexAfterGrowth } from "../../physics/mould/mould-growth.ts";
import {
  CRITICAL_DOSE_DAYS,
  DOSE_HOURS,
  DOSE_WARMEST,
  dosePerDay,
} from "../../physics/mould/mould-limits.ts";
import type { StoreAir } from "./store-air.ts";

/** Hours from the plan's morning until each model sees the first growth (index 1, microscopic); Infinity: not while the air is told. */
export interface FirstGrowth {
  readonly byIndex: number;
  readonly byDose: number;
}

/**
 * The mould index and the dose model run over a store's air, each reading moved by the reader's error.
 *
 * The index does not recede between damp hours here: that is the safer side, and a drier store then never comes sooner (in the full model a
 * short damp spell stops the slow decline and starts the quick one anew). The dose recedes as published. Its 17 days are of planed pine; a
 * class that the index holds to be slower takes longer by the same factor, our judgement, common practice without a source.
 *
 * @param from hours from the plan's morning from which the item lies there   @param more added to each humidity, a fraction
 */
export function firstGrowth(
  { start, dryBulb, relHum }: StoreAir,
  className: GrowthClassName,
  from: number,
  more: number,
): FirstGrowth {
  const growthClass = GROWTH_CLASSES[className];
  const enough = CRITICAL_DOSE_DAYS / growthClass.rateBelowOne;
  const first: { byIndex: number; byDose: number } = { byIndex: Infinity, byDose: Infinity };
  let index = 0;
  let dose = 0;
  let [warmth, damp, hours] = [0, 0, 0];
  for (let i = Math.max(0, from - start); i < dryBulb.length; i++) {
    const [warm, air] = [dryBulb[i] as number, relHum[i] as number]; // i stays below the length
    if (Number.isNaN(warm + air)) continue;
    const phi = Math.min(1, Math.max(0, air + more));
    index = indexAfterGrowth(index, warm, phi, 1, growthClass);
    if (index >= 1) first.byIndex = Math.min(first.byIndex, i + 1 + start);
    warmth += warm;
    damp += phi;
    if (++hours === DOSE_HOURS) {
      const gained = dosePerDay(Math.min(DOSE_WARMEST, warmth / hours), Math.min(1, damp / hours)) / 2; // 12 h are half a day
      dose = Math.max(0, dose + gained);
      if (dose >= enough) first.byDose = Math.min(first.byDose, i + 1 + start);
      [warmth, damp, hours] = [0, 0, 0];
    }
    if (Number.isFinite(first.byIndex + first.byDose)) break;
  }
  return first;
}
