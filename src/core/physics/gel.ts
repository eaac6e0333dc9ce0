import { absHumidityFromRelHum, satVapourPressure } from "./moist-air.ts";
import { withinRange } from "./out-of-range.ts";
import {
  type Isotherm,
  MOST_RELHUM,
  relHumWhere,
  type SorbentMaterial,
  type SorptionCaution,
} from "./sorption.ts";

/* Silica gel in a closed bag: what it holds, where a bag of item and gel comes to rest, how much gel an item needs, and how much
 * it can bear. Relative humidity a fraction, contents kg water per kg dry gel, masses kg, volumes m³, temperature °C. */

export type GelCaution =
  | "no-more-gel-than-the-item-bears"
  | "gel-dries-the-outside-first"
  | "packet-larger-than-the-item-bears"
  | "gel-is-full"
  | "leak-outruns-gel"
  | "more-exchanges-than-sense"
  | "units-ignore-damp-items"
  | "gel-dry-only-by-weight"
  | "colour-gel-not-above-120"
  | "blue-gel-is-poisonous"
  | "case-rule-from-memory";

// ---------------------------------------------------------------------------------------------------- what gel holds

/** Which way the gel got its water: taking it up, or giving it off. */
export type Branch = "adsorption" | "desorption";
export interface GelPoints {
  readonly relHums: readonly number[];
  readonly contents: readonly number[];
}

/** Regular-density gel RD-2560 at 25 °C, measured. Source: Thu et al., Applied Thermal Engineering 50 (2013) 1596, figure points on
 *  knots of 5 %, (0, 0) added to the adsorption row. Straight lines between the knots, as the source was read. */
export const MEASURED_GEL: Readonly<Record<Branch, GelPoints>> = {
  adsorption: {
    relHums: [0, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9],
    contents: [
      0, 0.0784, 0.1015, 0.1278, 0.1559, 0.1859, 0.2152, 0.2441, 0.2703, 0.293, 0.3101, 0.3213, 0.3301,
      0.3357, 0.3421, 0.3468, 0.3536, 0.3599,
    ],
  },
  desorption: {
    relHums: [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9],
    contents: [
      0.0942, 0.1186, 0.1466, 0.1763, 0.2075, 0.2731, 0.3052, 0.3133, 0.3207, 0.327, 0.3331, 0.3388, 0.3441,
      0.3492, 0.3538, 0.358, 0.3609,
    ],
  },
};

/** A second gel at 25 °C, by vapour pressure (Pa). Source: Wang and LeVan, J. Chem. Eng. Data 54 (2009) 2839, table. */
export const SECOND_GEL = {
  vapourPressures: [27.1, 88.9, 408, 941, 1600, 2430],
  contents: [0.01765, 0.03729, 0.09566, 0.1874, 0.2792, 0.3405],
} as const;

/** What regular-density gel holds at rest, kg/kg. Between 10 and 35 °C it goes by relative humidity alone (3 % in 10 K).
 *  Above 90 % it is held at its last point: the gel is full.   @param relHum 0 to 1 */
export function gelContentFromRelHum(relHum: number, branch: Branch = "adsorption"): number {
  const { relHums, contents } = pointsFromZero(branch);
  return straight(relHums, contents, withinRange("relative humidity", relHum, "1", 0, 1));
}

/** The relative humidity at which gel of that content rests, e.g. from its weight.
 *  @param content 0 to what the gel holds at 90 %   @throws OutOfRange beyond */
export function relHumFromGelContent(content: number, branch: Branch = "adsorption"): number {
  const { relHums, contents } = pointsFromZero(branch);
  return straight(contents, relHums, withinRange("gel content", content, "kg/kg", 0, contents.at(-1) ?? 0));
}

/** A measured row from quite dry gel on. */
function pointsFromZero(branch: Branch): GelPoints {
  const row = MEASURED_GEL[branch];
  return row.relHums[0] === 0 ? row : { relHums: [0, ...row.relHums], contents: [0, ...row.contents] };
}

/** What the second gel holds. @param vapourPressure 27.1 to 2430 Pa, at 25 °C */
export function secondGelContentFromVapourPressure(vapourPressure: number): number {
  const { vapourPressures, contents } = SECOND_GEL;
  withinRange("vapour pressure", vapourPressure, "Pa", vapourPressures[0], 2430);
  return straight(vapourPressures, contents, vapourPressure);
}

/** Straight lines between rising points, the last held beyond its end. */
function straight(xs: readonly number[], ys: readonly number[], x: number): number {
  const after = xs.findIndex((each, i) => i > 0 && x <= each);
  const [x0, x1, y0, y1] = [xs[after - 1], xs[after], ys[after - 1], ys[after]];
  if (x0 === undefined || x1 === undefined || y0 === undefined || y1 === undefined)
    return ys.at(-1) ?? Number.NaN;
  return y0 + (y1 - y0) * ((x - x0) / (x1 - x0));
}

const KELVIN = 273.15;
const GAS_CONSTANT = 8.314462; // J/(mol K)

/** Tóth fit of Fuji RD gel, made for low vapour pressure: above 40 % it over-reads (0.363 where 0.293 was measured at 50 %).
 *  w = 0.45·b·p/(1 + (b·p)¹²)^(1/12).   Source: Chua et al., Int. J. Heat Mass Transfer 47 (2004) 659.   @param vapourPressure Pa */
export function tothContentFromVapourPressure(vapourPressure: number, dryBulb: number): number {
  const b = 1.62222e-12 * Math.exp(5835.03 / (withinRange("dry bulb", dryBulb, "°C", 0, 90) + KELVIN)); // 1/Pa
  const bp = b * withinRange("vapour pressure", vapourPressure, "Pa", 0, satVapourPressure(dryBulb));
  return (0.45 * bp) / (1 + bp ** 12) ** (1 / 12);
}

/** `W0` kg/kg, `E` J/mol, `n` without unit. */
export interface DubininRow {
  readonly W0: number;
  readonly E: number;
  readonly n: number;
}
/** Sources: Thu et al. 2013 (3.27e-4 m³/kg of water of 997.05 kg/m³); Sapienza et al., Renewable Energy 110 (2017) 40. */
export const DUBININ_ROWS = {
  rd2560: { W0: 3.27e-4 * 997.05, E: 4384, n: 1.35 },
  siogel: { W0: 0.38, E: 3962.2, n: 1.1 },
} as const satisfies Readonly<Record<string, DubininRow>>;

/** Dubinin-Astakhov: w = W0·exp[−(A/E)ⁿ], A = R·T·ln(1/φ); within about 14 % of what was measured.   @param relHum above 0, to 1 */
export function dubininContentFromRelHum(row: DubininRow, relHum: number, dryBulb: number): number {
  withinRange("relative humidity", relHum, "1", 1e-6, 1);
  const A = GAS_CONSTANT * (withinRange("dry bulb", dryBulb, "°C", 0, 90) + KELVIN) * Math.log(1 / relHum);
  return row.W0 * Math.exp(-((A / row.E) ** row.n));
}

/** Freundlich fit of Fuji A gel: w = 0.346·φ^0.625, within about 18 %.   Source: Sakoda and Suzuki (1984).   @param relHum 0 to 1 */
export const freundlichContentFromRelHum = (relHum: number): number =>
  0.346 * withinRange("relative humidity", relHum, "1", 0, 1) ** 0.625;

// ---------------------------------------------------------------------------------------------------- the bag's balance

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
    cautions: [...restCautions(relHum, floorRelHum), ...cautionsOf(bag)],
  };
}

function restCautions(relHum: number, floorRelHum: number): GelCaution[] {
  if (relHum < floorRelHum) return ["no-more-gel-than-the-item-bears"];
  if (relHum >= MOST_RELHUM) return ["leak-outruns-gel"];
  return relHum > 0.8 ? ["gel-is-full"] : [];
}

/** The bag's resting place with the gel's hold scaled. Bracket 0 to `MOST_RELHUM`; at its upper end the water wins. */
function atRest(bag: Bag, gel: GelCharge): (hold: number) => number {
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

const cautionsOf = (bag: Bag): SorptionCaution[] => [
  ...new Set(bag.contents.flatMap(({ isotherm }) => isotherm.cautions)),
];

// ---------------------------------------------------------------------------------------------------- how much gel

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
      ...cautionsOf(bag),
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

// ---------------------------------------------------------------------------------------------------- DIN 55474 and rules of thumb

/** Water a unit takes at the final relative humidity, g, and the film's share of the driving difference.
 *  Source: DIN 55474, as two suppliers give it. */
export const DIN_FINAL_RELHUM = [
  { relHum: 0.2, gramsPerUnit: 3, filmFactor: 0.9 },
  { relHum: 0.4, gramsPerUnit: 6, filmFactor: 0.7 },
  { relHum: 0.5, gramsPerUnit: 7, filmFactor: 0.65 },
  { relHum: 0.6, gramsPerUnit: 8, filmFactor: 0.6 },
] as const;
/** Water of wooden packing, g/kg: one supplier gives 80 for air-dry wood and board, another 140 when unknown, 0 when pre-dried. */
export const DIN_PACKING_WATER = { airDry: 80, unknown: 140, preDried: 0 } as const;
/** Least film transmission to reckon with, g/(m² day). */
export const DIN_LEAST_WVTR = 0.1;

export interface DinCase {
  /** V, m³. */
  readonly volume: number;
  /** b, g/m³ of vapour shut in, e.g. 13.83 at 20 °C and 80 %. */
  readonly vapourGramsPerCubicMetre: number;
  /** m, kg of wooden or board packing, with c, g/kg. */
  readonly packingMass: number;
  readonly packingGramsPerKilogram: number;
  /** A, m² of film; WVTR, g/(m² day); t, days. */
  readonly filmArea: number;
  readonly transmission: number;
  readonly days: number;
  /** e and a for the final relative humidity; see `DIN_FINAL_RELHUM`. */
  readonly filmFactor: number;
  readonly gramsPerUnit: number;
  /** g that the damp items will give off: the rule itself leaves them out, and so counts only dry goods. */
  readonly dampGrams?: number;
}

/** Desiccant units: n = (V·b + m·c + A·e·WVTR·t)/a, with the water of damp items added to the bracket.   Source: DIN 55474. */
export function dinUnitsFrom(din: DinCase) {
  const transmission = Math.max(
    DIN_LEAST_WVTR,
    withinRange("film transmission", din.transmission, "g/(m² day)", 0, 100),
  );
  const terms = [
    din.volume * din.vapourGramsPerCubicMetre,
    din.packingMass * din.packingGramsPerKilogram,
    din.filmArea * din.filmFactor * transmission * din.days,
  ] as const;
  const dampGrams = din.dampGrams ?? 0;
  const units =
    (terms[0] + terms[1] + terms[2] + dampGrams) /
    withinRange("water of a unit", din.gramsPerUnit, "g", 1, 20);
  const cautions: readonly GelCaution[] = dampGrams > 0 ? [] : ["units-ignore-damp-items"];
  return { terms, dampGrams, units, wholeUnits: Math.ceil(units - 1e-9), cautions };
}

/** Water one unit takes at 23 to 25 °C, g: at least 3 at 20 %, at least 6 at 40 %.   @returns the row at or below the humidity */
export function gramsPerUnitFrom(relHum: number): number {
  withinRange("relative humidity", relHum, "1", 0.2, 1);
  return DIN_FINAL_RELHUM.filter((row) => row.relHum <= relHum + 1e-9).at(-1)?.gramsPerUnit ?? 3;
}

/** Rule of military packaging, units: by bag area, or by the volume of a rigid case. Source: as given with an activated-clay unit;
 *  DIN 55473 uses the same unit. For dry goods in dry packing. */
export const UNITS_BY_SIZE = {
  perSquareInch: 0.011,
  perSquareMetre: 17,
  perGallon: 0.161,
  perCubicFoot: 1.2,
} as const;

/** Gel that keeps a display case within a drift: Q = Ceq·D·V·N·t/(MH·F), kg.   Source: Weintraub (2002), Tétreault and Bégin (2018);
 *  from memory.
 *  @param of outside and set relative humidity; volume m³; air changes a day; days; `buffer` g/(kg %RH); `drift` allowed, a fraction
 *  @returns kg   Ceq 17.3 g/m³ is saturation at 20 °C */
export function caseGelMassFrom(of: {
  outsideRelHum: number;
  setRelHum: number;
  volume: number;
  airChangesPerDay: number;
  days: number;
  buffer: number;
  drift: number;
}) {
  const D = Math.abs(of.outsideRelHum - of.setRelHum);
  const gelMass = (17.3 * D * of.volume * of.airChangesPerDay * of.days) / (of.buffer * of.drift * 100);
  return { gelMass, cautions: ["case-rule-from-memory"] as const };
}

/** Thomson's maintenance-free case: 20 kg of gel a cubic metre at one air change a day, in proportion at others, so that the
 *  half-time stays 4·M·B/N = 160 days.   Source: Thomson as quoted by Calver (2010); the half-time from memory. */
export const caseGelDensityFrom = (airChangesPerDay: number): number =>
  20 * withinRange("air changes a day", airChangesPerDay, "1/day", 0, 24);

// ---------------------------------------------------------------------------------------------------- drying the gel again

/** Oven temperatures and times met: 130 to 145 °C for 2 to 3 h (web sources), 150 °C for desiccants generally (Padfield);
 *  gel that changes colour stays below about 120 °C (from memory). A bag of 500 g lost 130 of 160 g at 60 °C in 10 h, the rest
 *  at 99 °C in 3 to 4 h (one bench weighing). */
export const REGENERATION = { low: 130, high: 150, hours: { low: 2, high: 3 }, colourGelHigh: 120 } as const;

/** Dry when two weighings an hour apart differ by less than 0.5 %. Common practice, no source.   @param first, second masses, any one unit */
export const isRegenerated = (first: number, second: number): boolean =>
  Math.abs(first - second) / withinRange("second weighing", second, "1", 1e-9, 1e9) < 0.005;

/** Oven for gel.   @param changesColour gel with an indicator */
export function regenerationFor(changesColour: boolean) {
  const { low, high, hours, colourGelHigh } = REGENERATION;
  const cautions: readonly GelCaution[] = changesColour
    ? ["colour-gel-not-above-120", "blue-gel-is-poisonous", "gel-dry-only-by-weight"]
    : ["gel-dry-only-by-weight"];
  return changesColour
    ? { low: 99, high: colourGelHigh, hours: { low: 4, high: 10 }, cautions }
    : { low, high, hours, cautions };
}
