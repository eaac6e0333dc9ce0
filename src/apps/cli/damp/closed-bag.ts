import type { Enclosure } from "../../../core/physics/bags/bags.ts";

/* A closed bag as the commands suppose it where nothing more is told. */

/** Air that goes through seams, in volumes a day: a sealed bag, well pressed. Common practice, no source. */
const SEAM_AIR_CHANGES = 0.1;

/** The film around a volume of air: a cube of it, as a filled bag is nearly.   @param air m³   @param permeance g/(m² day Pa) */
export const filmOfBag = (air: number, permeance: number): Enclosure => ({
  area: 6 * air ** (2 / 3),
  permeance,
  volume: air,
  airChangesPerDay: SEAM_AIR_CHANGES,
});

/** What fresh gel from a good oven still holds, kg/kg. Common practice, no source. */
export const FRESH_GEL = 0.02;
