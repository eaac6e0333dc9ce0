import { withinRange } from "../out-of-range.ts";
import type { SorptionCaution } from "../sorption/isotherm.ts";
import type { SorbentMaterial } from "../sorption/sorption.ts";
import type { GelCaution } from "./gel-caution.ts";
import { atRest, type Bag, curveCautionsOf, GEL_UNCERTAINTY, waterFreed } from "./gel-in-bag.ts";
import { gelContentFromRelHum } from "./gel-isotherms.ts";

/* How much gel an item needs, in how many charges, and how much it can bear. Masses kg. */

/** Lowest relative humidity each material may be brought to in a bag: palm leaf, skin and photographs crack and curl below.
 *  Common practice, no source. */
export const FLOOR_RELHUM: Readonly<Record<SorbentMaterial, number>> = {
  palmLeaf: 0.4,
  parchment: 0.4,
  leather: 0.4,
  emulsion: 0.4,
  wood: 0.4,
  newsprint: 0.3,
  writingPaper: 0.3,
  ragPaper: 0.3,
  kraft: 0.3,
  cotton: 0.3,
  jute: 0.3,
};

/** The floor of a bag: that of its tenderest content. */
export const floorRelHumOf = (materials: readonly SorbentMaterial[]): number =>
  Math.max(...materials.map((material) => FLOOR_RELHUM[material]), 0.3);

/** Gel that brings the bag to rest at a relative humidity, kg dry; 0 when the bag is already there.
 *  @throws OutOfRange when the gel goes in holding as much as it would hold at the target: no mass of it will do */
export function gelMassFromRelHum(bag: Bag, targetRelHum: number, startContent: number): number {
  withinRange("target relative humidity", targetRelHum, "1", 0.05, 0.8);
  const room = gelContentFromRelHum(targetRelHum);
  withinRange("gel content at the start", startContent, "kg/kg", 0, room - 1e-6);
  return Math.max(0, waterFreed(bag, targetRelHum)) / (room - startContent);
}

/** What gel holds that was left in air of a relative humidity until it no longer gained. Such gel cannot bring a bag below it. */
export const conditionedGelContent = (relHum: number): number => gelContentFromRelHum(relHum, "adsorption");

export interface WantedGel {
  readonly targetRelHum: number;
  /** Never below this; see `FLOOR_RELHUM`. */
  readonly floorRelHum: number;
  readonly startContent: number;
  /** kg of dry gel that fit in, or that are at hand, at one time. */
  readonly mostAtOnce?: number;
}
export interface GelPlan {
  /** kg dry gel that comes to rest at the target if it all goes in at once. */
  readonly gelMass: number;
  /** kg at once; see `bearableGelMass`. Below `gelMass` when the target lies close to the floor: then the charges are smaller. */
  readonly mostGelMass: number;
  /** The charges in order, each left until it has come to rest, then changed. */
  readonly charges: readonly { readonly dryMass: number; readonly relHumAfter: number }[];
  readonly cautions: readonly (GelCaution | SorptionCaution)[];
}

/** Exchanges beyond which another way of drying is wanted: open and fan the item. Common practice, no source. */
const MOST_EXCHANGES = 50;
/** A bag this close to its target counts as there: far less than any hygrometer tells. */
const NEAR_ENOUGH = 0.002; // relative humidity

/** Gel for a bag: enough to come to rest at the target, in as many charges as it takes, each so small that even gel which holds
 *  `GEL_UNCERTAINTY` more than was measured leaves the item above its floor.
 *  @throws OutOfRange when the target lies below the floor */
export function gelPlan(bag: Bag, wanted: WantedGel): GelPlan {
  const { targetRelHum, floorRelHum, startContent, mostAtOnce = Number.POSITIVE_INFINITY } = wanted;
  withinRange("target relative humidity", targetRelHum, "1", floorRelHum, 0.8);
  withinRange("gel at once", mostAtOnce, "kg", 1e-4, Number.POSITIVE_INFINITY);
  const charges = chargesFor(bag, wanted, mostAtOnce);
  const mostGelMass = bearableGelMass(bag, floorRelHum, startContent);
  const isThere = (charges.at(-1)?.relHumAfter ?? 0) <= targetRelHum + NEAR_ENOUGH;
  return {
    gelMass: gelMassFromRelHum(bag, targetRelHum, startContent),
    mostGelMass,
    charges,
    cautions: [
      ...(Number.isFinite(mostGelMass)
        ? (["no-more-gel-than-the-item-bears", "gel-dries-the-outside-first"] as const)
        : []),
      ...(isThere ? [] : (["more-exchanges-than-sense"] as const)),
      ...curveCautionsOf(bag),
    ],
  };
}

/** The most gel an item bears at once, kg dry, were the gel to hold more than was measured. Infinity for gel that was conditioned to
 *  the floor or above: it gives water back before the item goes below.   @param floorRelHum see `FLOOR_RELHUM` */
export function bearableGelMass(bag: Bag, floorRelHum: number, startContent: number): number {
  const measured = gelContentFromRelHum(withinRange("floor", floorRelHum, "1", 0.05, 0.8));
  if (startContent >= measured) return Number.POSITIVE_INFINITY;
  const room =
    (1 + GEL_UNCERTAINTY) * measured - withinRange("gel content at the start", startContent, "kg/kg", 0, 0.4);
  return Math.max(0, waterFreed(bag, floorRelHum)) / room;
}

function chargesFor(bag: Bag, wanted: WantedGel, mostAtOnce: number): GelPlan["charges"] {
  const { targetRelHum, floorRelHum, startContent } = wanted;
  const charges: { dryMass: number; relHumAfter: number }[] = [];
  for (let now = bag; charges.length < MOST_EXCHANGES; ) {
    const needed = gelMassFromRelHum(now, targetRelHum, startContent);
    const dryMass = Math.min(needed, mostAtOnce, bearableGelMass(now, floorRelHum, startContent));
    if (dryMass <= 1e-9) break;
    const relHumAfter = dryMass === needed ? targetRelHum : atRest(now, { dryMass, startContent })(1);
    charges.push({ dryMass, relHumAfter });
    if (relHumAfter <= targetRelHum + NEAR_ENOUGH) break;
    now = restingAt(now, relHumAfter);
  }
  return charges;
}

/** The same bag when everything in it has come to one relative humidity. */
const restingAt = (bag: Bag, relHum: number): Bag => ({
  ...bag,
  airRelHum: relHum,
  contents: bag.contents.map((content) => ({ ...content, relHum })),
});

/** Whole packets for a plan: rounded up to reach the target, but never past what the item bears.   @param packetMass kg dry */
export function packetsFrom(plan: Pick<GelPlan, "gelMass" | "mostGelMass">, packetMass: number) {
  withinRange("mass of a packet", packetMass, "kg", 1e-4, 100);
  const wanted = Math.ceil(plan.gelMass / packetMass - 1e-9);
  const packets = Math.min(wanted, Math.floor(plan.mostGelMass / packetMass + 1e-9));
  const cautions: readonly GelCaution[] = packets < wanted ? ["packet-larger-than-the-item-bears"] : [];
  return { packets, cautions };
}
