import { absHumidityFromRelHum } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";
import { type Isotherm, MOST_RELHUM, relHumWhere, type SorptionCaution } from "../sorption/isotherm.ts";
import type { GelCaution } from "./gel-caution.ts";
import { gelContentFromRelHum } from "./gel-isotherms.ts";

/* Where a closed bag of items, air and silica gel comes to rest. Masses kg, volumes m³, temperature °C. */

export interface BagContent {
  readonly isotherm: Isotherm;
  /** kg dry matter. */
  readonly dryMass: number;
  /** Equilibrium relative humidity when the bag is closed. */
  readonly relHum: number;
}
export interface Bag {
  readonly dryBulb: number;
  /** m³ of air around the contents. */
  readonly airVolume: number;
  /** Of that air when the bag is closed. */
  readonly airRelHum: number;
  readonly contents: readonly BagContent[];
  /** kg of water that comes in through film and seams while the bag stands at a relative humidity; see `leakMass` of bags. */
  readonly leak?: (relHum: number) => number;
}
export interface GelCharge {
  /** kg of gel as it would weigh quite dry. */
  readonly dryMass: number;
  /** kg/kg when it goes in: about 0.02 fresh from a good oven. */
  readonly startContent: number;
}

/** Temperatures at which the measured gel may be taken by relative humidity alone. */
export const GEL_DRY_BULB = { low: 10, high: 35 } as const; // °C

/** How far the gel's hold may lie from the measured row: the fits of other gels scatter by 14 to 18 %. */
export const GEL_UNCERTAINTY = 0.15;

export interface BagAtRest {
  readonly relHum: number;
  /** With gel that holds `GEL_UNCERTAINTY` more, and less. */
  readonly low: number;
  readonly high: number;
  /** kg taken up by the gel. */
  readonly waterInGel: number;
  readonly cautions: readonly (GelCaution | SorptionCaution)[];
}

/** Where a closed bag of items, air and gel comes to rest:
 *  Σ m[u(φ0) − u(φ)] + V[ρ0 − ρ(φ)] + leak(φ) = m_gel[g(φ) − g_start].
 *  @param floorRelHum of the tenderest item, see `floorRelHumOf`; below it the answer says that this is too much gel
 *  @throws OutOfRange outside `GEL_DRY_BULB` */
export function relHumFromGel(bag: Bag, gel: GelCharge, floorRelHum: number): BagAtRest {
  const rest = atRest(bag, gel);
  const relHum = rest(1);
  return {
    relHum,
    low: rest(1 + GEL_UNCERTAINTY),
    high: rest(1 - GEL_UNCERTAINTY),
    waterInGel: gel.dryMass * (gelContentFromRelHum(relHum) - gel.startContent),
    cautions: [...restCautions(relHum, floorRelHum), ...curveCautionsOf(bag)],
  };
}

function restCautions(relHum: number, floorRelHum: number): GelCaution[] {
  if (relHum < floorRelHum) return ["no-more-gel-than-the-item-bears"];
  if (relHum >= MOST_RELHUM) return ["leak-outruns-gel"];
  return relHum > 0.8 ? ["gel-is-full"] : [];
}

/** The bag's resting place with the gel's hold scaled. Bracket 0 to `MOST_RELHUM`; at its upper end the water wins. */
export function atRest(bag: Bag, gel: GelCharge): (hold: number) => number {
  withinRange("mass of gel", gel.dryMass, "kg", 0, 1e4);
  withinRange("gel content at the start", gel.startContent, "kg/kg", 0, 0.4);
  return (hold) => {
    const surplus = (relHum: number): number =>
      gel.dryMass * (hold * gelContentFromRelHum(relHum) - gel.startContent) - waterFreed(bag, relHum);
    if (surplus(MOST_RELHUM) <= 0) return MOST_RELHUM;
    return surplus(0) >= 0 ? 0 : relHumWhere(surplus, 0);
  };
}

/** kg that items, air and leak give to a bag that has come down (or up) to a relative humidity; falls as that rises. */
export function waterFreed(bag: Bag, relHum: number): number {
  withinRange("dry bulb", bag.dryBulb, "°C", GEL_DRY_BULB.low, GEL_DRY_BULB.high);
  const fromItems = bag.contents.reduce((sum, { isotherm, dryMass, relHum: before }) => {
    const lost =
      isotherm.moistureContentFromRelHum(before, bag.dryBulb) -
      isotherm.moistureContentFromRelHum(relHum, bag.dryBulb);
    return sum + dryMass * lost;
  }, 0);
  const vapour = (at: number): number => bag.airVolume * absHumidityFromRelHum(bag.dryBulb, at);
  return fromItems + vapour(bag.airRelHum) - vapour(relHum) + (bag.leak?.(relHum) ?? 0);
}

/** What to mind with the curves of what lies in the bag. */
export const curveCautionsOf = (bag: Bag): SorptionCaution[] => [
  ...new Set(bag.contents.flatMap(({ isotherm }) => isotherm.cautions)),
];
