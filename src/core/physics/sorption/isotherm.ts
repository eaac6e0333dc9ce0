import { OutOfRange } from "../out-of-range.ts";

/* What every curve of how much water a material holds answers for.
 * Moisture content is kg water per kg dry matter, relative humidity a fraction, temperature °C. */

/** The curve of one material between relative humidity and moisture content, at one temperature. */
export interface Isotherm {
  readonly material: string;
  /** @param relHum 0 to `MOST_RELHUM`   @returns kg/kg   @throws OutOfRange */
  readonly moistureContentFromRelHum: (relHum: number, dryBulb: number) => number;
  /** The inverse. @returns 0 to `MOST_RELHUM`   @throws OutOfRange when the material holds no such amount below it */
  readonly relHumFromMoistureContent: (moistureContent: number, dryBulb: number) => number;
  /** d(moistureContent)/d(relHum), kg/kg per 1 of relative humidity, always positive. */
  readonly slope: (relHum: number, dryBulb: number) => number;
  /** Caution codes that travel with every figure made from this curve. */
  readonly cautions: readonly SorptionCaution[];
}

export type SorptionCaution =
  | "never-dry-by-weight-alone"
  | "isotherm-from-memory"
  | "leather-by-modern-sole-leather"
  | "parchment-by-catgut"
  | "emulsion-by-hide-collagen"
  | "palm-leaf-by-wood"
  | "pulp-is-an-upper-bound"
  | "relhum-shift-is-woods";

/** Above this the curves climb without bound and mean nothing: free water. Clamping is the caller's, and to be said. */
export const MOST_RELHUM = 0.99;
/** Rooms and bags the room-temperature curves are used in; they carry no temperature of their own. Common practice, no source. */
export const ROOM_DRY_BULB = { low: 0, high: 50 } as const; // °C

/** Adsorption holds about 0.80 to 0.85 of desorption at equal relative humidity (cellulose; from memory). A drying item
 *  sits on the desorption side, so a table read in adsorption under-states its water: never dry by weight alone. */
export const ADSORPTION_SHARE_OF_DESORPTION = { low: 0.8, high: 0.85 } as const;

/** The relative humidity at which something that rises with it reaches `target`, by halving.
 *  Bracket `low` to `high`, tolerance 1e-12 of relative humidity, at most 60 halvings.
 *  @throws OutOfRange with the two ends when the target lies outside them */
export function relHumWhere(
  rising: (relHum: number) => number,
  target: number,
  low = 0,
  high: number = MOST_RELHUM,
): number {
  const [atLow, atHigh] = [rising(low), rising(high)];
  if (!(target >= atLow && target <= atHigh))
    throw new OutOfRange("what the relative humidity is sought for", target, "1", atLow, atHigh);
  let [a, b] = [low, high];
  for (let step = 0; step < 60 && b - a > 1e-12; step += 1) {
    const middle = (a + b) / 2;
    if (rising(middle) < target) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
