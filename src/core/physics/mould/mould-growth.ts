/**
 * The VTT mould index: how far mould has grown on a surface, 0 (none) to 6 (dense), from the surface's temperature and relative humidity.
 *
 * Sources: A. Hukka and H. A. Viitanen, A mathematical model of mould growth on wooden material, Wood Science and Technology 33 (1999)
 * 475-485; sensitivity classes of T. Ojanen, H. Viitanen et al., Buildings XI (2010). Form and class constants were read in two public
 * research codes that cite them. Two slips met in public codes are avoided here: the growth rate is a day's, not an hour's, and the
 * decline's 6 h and 24 h are counted from the first dry moment.
 *
 * The index is exactly nought below 80 %, while moulds of sized paper, leather and dirt grow from 65 %: alone it never gives an all-clear.
 */
import { withinRange } from "../out-of-range.ts";

export type GrowthClassName = "very-sensitive" | "sensitive" | "medium-resistant" | "resistant";

export interface GrowthClass {
  /** k1 while the index is below 1, and from 1 on. */
  readonly rateBelowOne: number;
  readonly rateFromOne: number;
  /** The ceiling Mmax = A + B x − C x². */
  readonly A: number;
  readonly B: number;
  readonly C: number;
  /** RHmin, per cent. */
  readonly leastPercent: number;
}

/** Ojanen, Viitanen et al. 2010, as two public research codes print them; the example materials are from memory. */
export const GROWTH_CLASSES: Readonly<Record<GrowthClassName, GrowthClass>> = {
  /** untreated pine sapwood */
  "very-sensitive": { rateBelowOne: 1, rateFromOne: 2, A: 1, B: 7, C: 2, leastPercent: 80 },
  /** planed spruce, paper-faced products, wood boards */
  sensitive: { rateBelowOne: 0.578, rateFromOne: 0.386, A: 0.3, B: 6, C: 1, leastPercent: 80 },
  /** concrete, glass wool */
  "medium-resistant": { rateBelowOne: 0.072, rateFromOne: 0.097, A: 0, B: 5, C: 1.5, leastPercent: 85 },
  /** glass, metal */
  resistant: { rateBelowOne: 0.033, rateFromOne: 0.014, A: 0, B: 3, C: 1, leastPercent: 85 },
};

/** Cmat: how fast mould recedes when dry, against wood. The four steps as in public code, their names from memory. */
export const DECLINE_FACTORS = { strong: 1, significant: 0.5, low: 0.25, "almost-none": 0.1 } as const;

/** Class and decline for what collections are made of: our judgement, common practice without a source; show the class beside the number.
 *  @param isDirtyOrOvergrown the object stays dirty, or mould has grown on it before */
export function growthClassFor(
  material:
    | "leather"
    | "parchment"
    | "gelatine-photograph"
    | "starch-paste"
    | "palm-leaf"
    | "paper"
    | "board",
  isDirtyOrOvergrown: boolean,
): { growthClass: GrowthClassName; declineFactor: number } {
  const isPlain = material === "paper" || material === "board";
  return {
    growthClass: isPlain && !isDirtyOrOvergrown ? "sensitive" : "very-sensitive",
    declineFactor: isDirtyOrOvergrown ? DECLINE_FACTORS.low : DECLINE_FACTORS.significant,
  };
}

/** The index in words, 0 to 6. From memory: Hukka and Viitanen 1999; Ojanen et al. 2010. */
export const INDEX_WORDS: readonly string[] = [
  "no growth",
  "first growth, seen with a microscope only",
  "several colonies, seen with a microscope",
  "visible by eye on less than a tenth, or under the microscope on less than half",
  "visible by eye on a tenth to a half, or under the microscope on more than half",
  "visible by eye on more than half",
  "dense growth on nearly all of it",
];

/** Relative humidity at the surface from which mould grows in that class.   @param dryBulb °C   @returns 0.80 to 1
 *  Public codes part by up to 0.2 % between 20 and 25.2 °C and by up to 5 % in the resistant classes between 12 and 20 °C;
 *  here the least value of the class holds everywhere, and alone above 20 °C. */
export const growthRelHum = (dryBulb: number, growthClass: GrowthClass): number =>
  growthPercent(dryBulb, growthClass.leastPercent) / 100;

function growthPercent(T: number, leastPercent: number): number {
  if (T > 20) return leastPercent;
  if (T <= 0) return 100;
  return Math.max(leastPercent, ((-0.00267 * T + 0.16) * T - 3.13) * T + 100);
}

/** Whether mould grows at all: above freezing, below 50 °C, and damp enough. */
export const isGrowing = (dryBulb: number, relHum: number, growthClass: GrowthClass): boolean =>
  ceilingIfGrowing(dryBulb, relHum, growthClass) !== NOT_GROWING;

/** Weeks until the first growth on pine (tm), the time unit of the index.   @param dryBulb above 0, to 50 °C   @param relHum above 0, to 1
 *  @param wood 0 pine, 1 spruce   @param surface 0 resawn, 1 kiln-dried; both 0 where sensitivity classes are used */
export function weeksToFirstGrowth(dryBulb: number, relHum: number, wood = 0, surface = 0): number {
  withinRange("temperature", dryBulb, "°C", Number.MIN_VALUE, 50);
  withinRange("relative humidity", relHum, "1", Number.MIN_VALUE, 1);
  return weeksOnPine(dryBulb, relHum) * Math.exp(0.14 * wood - 0.33 * surface);
}

const weeksOnPine = (dryBulb: number, relHum: number): number =>
  Math.exp(-0.68 * Math.log(dryBulb) - 13.9 * Math.log(100 * relHum) + 66.02);

/** The index that growth tends to, however long the damp lasts (Mmax); 0 where nothing grows. */
export const indexCeiling = (dryBulb: number, relHum: number, growthClass: GrowthClass): number =>
  Math.max(0, ceilingIfGrowing(dryBulb, relHum, growthClass));

/** What `ceilingIfGrowing` gives where nothing grows. */
export const NOT_GROWING = -1;

/** The ceiling, 0 or more, or `NOT_GROWING`: one question instead of two, for series of millions of readings. */
export function ceilingIfGrowing(dryBulb: number, relHum: number, growthClass: GrowthClass): number {
  const percent = 100 * relHum;
  // Most readings are drier than any climate of the class in which mould grows.
  if (!(percent >= growthClass.leastPercent && dryBulb > 0 && dryBulb < 50)) return NOT_GROWING;
  const critical = growthPercent(dryBulb, growthClass.leastPercent);
  if (percent < critical) return NOT_GROWING;
  const x = critical === 100 ? 0 : (critical - percent) / (critical - 100);
  return Math.max(0, growthClass.A + growthClass.B * x - growthClass.C * x * x);
}

/** How k2 = 1 − exp(2.3 (M − Mmax)) bends growth towards the ceiling. */
const BEND = 2.3;
const HOURS_A_DAY = 24;

/** The index after some hours of one climate in which mould grows: the equation dM/dt = k1 k2 / (7 tm) a day, solved in closed form and
 *  split where the index crosses 1, so that the answer does not depend on the step.
 *  @param index 0 to 6   @param relHum at the surface, 0 to 1   @param stepHours ≥ 0   @returns never less than `index`, and `index` where nothing grows */
export const indexAfterGrowth = (
  index: number,
  dryBulb: number,
  relHum: number,
  stepHours: number,
  growthClass: GrowthClass,
): number =>
  indexTowards(
    ceilingIfGrowing(dryBulb, relHum, growthClass),
    index,
    dryBulb,
    relHum,
    stepHours,
    growthClass,
  );

/** The same where the ceiling is known already. */
export function indexTowards(
  ceiling: number,
  index: number,
  dryBulb: number,
  relHum: number,
  stepHours: number,
  growthClass: GrowthClass,
): number {
  if (index >= ceiling) return index;
  const perRate = 1 / (7 * HOURS_A_DAY * weeksOnPine(dryBulb, relHum)); // 1/h for k1 = 1
  const rate = index >= 1 ? growthClass.rateFromOne : growthClass.rateBelowOne;
  const after = approached(index, ceiling, rate * perRate * stepHours);
  return index >= 1 || after <= 1 ? after : crossedOne(index, ceiling, perRate, stepHours, growthClass);
}

function crossedOne(
  index: number,
  ceiling: number,
  perRate: number,
  stepHours: number,
  growthClass: GrowthClass,
): number {
  const hoursToOne = growthNeeded(index, 1, ceiling) / (growthClass.rateBelowOne * perRate);
  return approached(1, ceiling, growthClass.rateFromOne * perRate * (stepHours - hoursToOne));
}

/** M(t) = M0 − ln(1 − k2 (1 − exp(−2.3 r t))) / 2.3, k2 as at M0, for M0 < Mmax.   @param rt growth there would be far below the ceiling */
function approached(from: number, ceiling: number, rt: number): number {
  const k2 = -Math.expm1(BEND * (from - ceiling));
  return from + lessLog(k2 * lessExp(BEND * rt)) / BEND;
}

/** A step of minutes moves growth by so little that five or six terms of a series give every digit, sooner than the library does. */
const SHORT = 0.01;

/** 1 − exp(−z), z ≥ 0. */
function lessExp(z: number): number {
  if (z > SHORT) return -Math.expm1(-z);
  return z * (1 - (z / 2) * (1 - (z / 3) * (1 - (z / 4) * (1 - (z / 5) * (1 - z / 6)))));
}

/** −ln(1 − y), y from 0 to below 1. */
function lessLog(y: number): number {
  if (y > SHORT) return -Math.log1p(-y);
  return y * (1 + y * (1 / 2 + y * (1 / 3 + y * (1 / 4 + y * (1 / 5 + y * (1 / 6 + y * (1 / 7)))))));
}

/** The same turned round: r t between two indices below the ceiling. */
const growthNeeded = (from: number, to: number, ceiling: number): number =>
  Math.log(Math.expm1(BEND * (ceiling - from)) / Math.expm1(BEND * (ceiling - to))) / BEND;

/** Hours of one unchanging climate until the index is reached, or null when it never is (its ceiling is no higher). */
export function hoursToIndex(
  index: number,
  dryBulb: number,
  relHum: number,
  growthClass: GrowthClass,
  from = 0,
): number | null {
  if (from >= index) return 0;
  const ceiling = indexCeiling(dryBulb, relHum, growthClass);
  if (index >= ceiling) return null;
  const hoursPerRate = 7 * HOURS_A_DAY * weeksToFirstGrowth(dryBulb, relHum);
  const below = from < 1 ? growthNeeded(from, Math.min(1, index), ceiling) / growthClass.rateBelowOne : 0;
  const above = index > 1 ? growthNeeded(Math.max(1, from), index, ceiling) / growthClass.rateFromOne : 0;
  return hoursPerRate * (below + above);
}

/** What the index has lost after that many dry hours on wood: 0.032 a day for 6 h, nothing until 24 h, then 0.016 a day. */
const declineAfter = (dryHours: number): number =>
  (0.032 * Math.min(dryHours, 6) + 0.016 * Math.max(0, dryHours - 24)) / HOURS_A_DAY;

/** The index after some hours in which nothing grows.   @param dryHours dry hours before these   @param declineFactor Cmat, 0 to 1   @returns never below 0 */
export const indexAfterDecline = (
  index: number,
  dryHours: number,
  stepHours: number,
  declineFactor: number,
): number =>
  Math.max(0, index - declineFactor * (declineAfter(dryHours + stepHours) - declineAfter(dryHours)));

/** Where growth stands: the index, and for how long it has been too dry or too cold for it. */
export interface Growth {
  readonly index: number;
  readonly dryHours: number;
}

/** Growth after some hours of one climate. */
export function growthAfter(
  before: Growth,
  dryBulb: number,
  relHum: number,
  stepHours: number,
  growthClass: GrowthClass,
  declineFactor: number,
): Growth {
  if (isGrowing(dryBulb, relHum, growthClass))
    return { index: indexAfterGrowth(before.index, dryBulb, relHum, stepHours, growthClass), dryHours: 0 };
  return {
    index: indexAfterDecline(before.index, before.dryHours, stepHours, declineFactor),
    dryHours: before.dryHours + stepHours,
  };
}
