import { contentAt, type SorptionTable, slopeAt } from "../../sorption/sorption-table.ts";

/** The air and gel of a bag: one well-mixed cell before the item. */
export interface AirCell {
  readonly gel: SorptionTable | null;
  /** kg of dry gel. */
  readonly gelDryMass: number;
  /** kg of water the air holds per 1 of relative humidity. */
  readonly airWater: number;
}

/** kg of water in air and gel. */
export const airWaterAt = (air: AirCell, relHum: number): number =>
  air.airWater * relHum + (air.gel === null ? 0 : air.gelDryMass * contentAt(air.gel, relHum));
/** kg per 1 of relative humidity. */
export const airSlopeAt = (air: AirCell, relHum: number): number =>
  air.airWater + (air.gel === null ? 0 : air.gelDryMass * slopeAt(air.gel, relHum));

/** The relative humidity at which air and gel together hold the water; halving between the two they had, 50 times. */
export function settled(air: AirCell, water: number, a: number, b: number): number {
  let [low, high] = [Math.min(a, b), Math.max(a, b)];
  for (let i = 0; i < 50 && high > low; i++) {
    const middle = (low + high) / 2;
    if (airWaterAt(air, middle) < water) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
