import { OutOfRange } from "./out-of-range.ts";

/* How much water a material holds at which relative humidity.
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

/** What the relative humidity in a closed bag does per kelvin of warming, as a fraction per K.
 *  Usual 0.17 to 0.19 % per K between 20 and 30 °C by the wood equation, less when colder; at most about 0.33 in a closed box with wood (Studies in Conservation, 1964). */
export const RELHUM_PER_KELVIN = { low: 0.0015, usual: 0.002, high: 0.0035 } as const;

// ---------------------------------------------------------------------------------------------------- GAB

/** Guggenheim-Anderson-de Boer curve: `m0` monolayer content (kg/kg), `C` and `K` without unit. */
export interface GabRow {
  readonly m0: number;
  readonly C: number;
  readonly K: number;
}

/** kg/kg. @param relHum 0 to `MOST_RELHUM` */
export function moistureContentFromGab(row: GabRow, relHum: number): number {
  const { m0, C, K } = row;
  const a = fraction(relHum);
  return (m0 * C * K * a) / ((1 - K * a) * (1 - K * a + C * K * a));
}

/** The root in (0, 1) of K²(1−C)a² + [K(C−2) − m0·C·K/u]a + 1 = 0. @throws OutOfRange above what the row holds at `MOST_RELHUM` */
export function relHumFromGab(row: GabRow, moistureContent: number): number {
  const { m0, C, K } = row;
  const u = held(moistureContent, moistureContentFromGab(row, MOST_RELHUM));
  if (u === 0) return 0;
  const a2 = K * K * (1 - C);
  const a1 = K * (C - 2) - (m0 * C * K) / u;
  return 2 / (-a1 + Math.sqrt(a1 * a1 - 4 * a2)); // the form that stands for C = 1 too
}

/** du/da of the GAB curve, kg/kg per 1. */
export function slopeFromGab(row: GabRow, relHum: number): number {
  const { m0, C, K } = row;
  const a = fraction(relHum);
  const denominator = (1 - K * a) * (1 - K * a + C * K * a);
  return (m0 * C * K * (1 - (1 - C) * K * K * a * a)) / (denominator * denominator);
}

/** GAB rows fitted by least squares to the handbook table "Regain of hygroscopic materials" (International Critical Tables,
 *  repeated in ASHRAE Fundamentals), 24 °C, 10 to 90 %; the table itself is from memory, and the fit is ours.
 *  Root mean square of the fit, % of dry mass: see `rms`. */
export const GAB_ROWS = {
  newsprint: { m0: 0.038111, C: 14.5621, K: 0.7254, rms: 0.07 },
  writingPaper: { m0: 0.052203, C: 13.6542, K: 0.7211, rms: 0.09 },
  ragPaper: { m0: 0.046714, C: 11.9614, K: 0.7345, rms: 0.06 }, // white bond, the default of book paper
  kraft: { m0: 0.056047, C: 14.2961, K: 0.7122, rms: 0.1 },
  leather: { m0: 0.132159, C: 8.7884, K: 0.641, rms: 0.31 }, // sole leather, oak tanned
  catgut: { m0: 0.108157, C: 8.9517, K: 0.6161, rms: 0.49 }, // untanned collagen
  gelatin: { m0: 0.090903, C: 1.6134, K: 0.5598, rms: 0.08 },
  cotton: { m0: 0.034758, C: 31.4364, K: 0.8398, rms: 0.22 },
  jute: { m0: 0.091481, C: 6.2818, K: 0.6596, rms: 0.09 },
  wood: { m0: 0.073847, C: 5.8229, K: 0.767, rms: 0.19 },
} as const satisfies Readonly<Record<string, GabRow & { rms: number }>>;

/** A curve of one GAB row; temperature is checked and otherwise left out, as the row knows one temperature only. */
export function gabIsotherm(material: string, row: GabRow, cautions: readonly SorptionCaution[]): Isotherm {
  return {
    material,
    moistureContentFromRelHum: (relHum, dryBulb) => (room(dryBulb), moistureContentFromGab(row, relHum)),
    relHumFromMoistureContent: (content, dryBulb) => (room(dryBulb), relHumFromGab(row, content)),
    slope: (relHum, dryBulb) => (room(dryBulb), slopeFromGab(row, relHum)),
    cautions,
  };
}

// ---------------------------------------------------------------------------------------------------- wood

/** Where the wood equation is tabulated: −1 to 130 °C. */
export const WOOD_DRY_BULB = { low: -1.2, high: 130 } as const;

/** Equilibrium moisture content of wood, kg/kg; midway between adsorption and desorption.
 *  Source: USDA Forest Products Laboratory, Wood Handbook (2010), ch. 4 eq. 4-5 (Hailwood-Horrobin, two hydrates). */
export function woodMoistureContentFromRelHum(relHum: number, dryBulb: number): number {
  const { W, x, K1, K2 } = woodTerms(relHum, dryBulb);
  const hydrates = (K1 * x + 2 * K1 * K2 * x * x) / (1 + K1 * x + K1 * K2 * x * x);
  return (18 / W) * (x / (1 - x) + hydrates); // eq. 4-5, in kg/kg instead of per cent
}

/** du/dh of eq. 4-5, kg/kg per 1. */
export function woodSlope(relHum: number, dryBulb: number): number {
  const { W, x, K, K1, K2 } = woodTerms(relHum, dryBulb);
  const above = K1 * x + 2 * K1 * K2 * x * x;
  const below = 1 + K1 * x + K1 * K2 * x * x;
  const hydrates = ((K1 + 4 * K1 * K2 * x) * below - above * (K1 + 2 * K1 * K2 * x)) / (below * below);
  return ((18 * K) / W) * (1 / ((1 - x) * (1 - x)) + hydrates);
}

/** Inverse of eq. 4-5, by halving (see `relHumWhere`). */
export function woodRelHumFromMoistureContent(moistureContent: number, dryBulb: number): number {
  held(moistureContent, woodMoistureContentFromRelHum(MOST_RELHUM, dryBulb));
  return relHumWhere((relHum) => woodMoistureContentFromRelHum(relHum, dryBulb), moistureContent);
}

function woodTerms(relHum: number, dryBulb: number) {
  const h = fraction(relHum);
  const T = temperature(dryBulb, WOOD_DRY_BULB);
  const W = 349 + 1.29 * T + 0.0135 * T ** 2;
  const K = 0.805 + 0.000736 * T - 0.00000273 * T ** 2;
  const K1 = 6.27 - 0.00938 * T - 0.000303 * T ** 2;
  const K2 = 1.91 + 0.0407 * T - 0.000293 * T ** 2;
  return { W, x: K * h, K, K1, K2 };
}

/** What a closed bag's relative humidity becomes when bag and item warm or cool while the item keeps its water, by the wood
 *  equation: use it to bring a reading to another temperature. The pulp fits below give two to four times as much and are
 *  not for this. @returns a fraction with the caution that it is wood's. */
export function relHumFromWarming(relHum: number, fromDryBulb: number, toDryBulb: number) {
  const content = woodMoistureContentFromRelHum(relHum, fromDryBulb);
  const after = woodRelHumFromMoistureContent(content, toDryBulb);
  return { relHum: after, cautions: ["relhum-shift-is-woods"] as const };
}

// ---------------------------------------------------------------------------------------------------- regain table

/** One row of the published table in `data/physics/isotherms.json`: contents in kg/kg at `relHums`. */
export interface RegainRow {
  readonly material: string;
  readonly relHums: readonly number[];
  readonly moistureContents: readonly number[];
}

/** A curve through the points of a table, from (0, 0) to its last point; between them monotone, as `monotoneCurve`.
 *  A reader's own measured points go the same way. @throws OutOfRange beyond the last point: a table is not extended. */
export function tableIsotherm(row: RegainRow, cautions: readonly SorptionCaution[]): Isotherm {
  const curve = monotoneCurve([0, ...row.relHums], [0, ...row.moistureContents], "relative humidity", "1");
  const last = row.relHums.at(-1) ?? 0;
  return {
    material: row.material,
    moistureContentFromRelHum: (relHum, dryBulb) => (room(dryBulb), curve.at(relHum)),
    relHumFromMoistureContent: (content, dryBulb) => {
      room(dryBulb);
      held(content, curve.at(last));
      return relHumWhere(curve.at, content, 0, last);
    },
    slope: (relHum, dryBulb) => (room(dryBulb), curve.slopeAt(relHum)),
    cautions,
  };
}

export interface MonotoneCurve {
  readonly at: (x: number) => number;
  readonly slopeAt: (x: number) => number;
}

/** A smooth curve through points that never turns back between them (piecewise cubic).
 *  Source: Fritsch and Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980); slopes at the points
 *  by Fritsch and Butland's harmonic mean, which needs no second pass (from memory).
 *  @param xs strictly rising   @throws RangeError when they are not; OutOfRange when asked outside the points */
export function monotoneCurve(
  xs: readonly number[],
  ys: readonly number[],
  what: string,
  unit: string,
): MonotoneCurve {
  const steps = xs.slice(1).map((x, i) => piece(xs[i], x, ys[i], ys[i + 1]));
  if (steps.length === 0 || xs.length !== ys.length || steps.some((step) => !(step.width > 0)))
    throw new RangeError(`points of ${what} must rise: got ${xs.join(", ")}`);
  const slopes = pointSlopes(steps);
  const find = (x: number) => {
    const low = steps[0]?.x0 ?? 0;
    const high = xs.at(-1) ?? 0;
    if (!(x >= low && x <= high)) throw new OutOfRange(what, x, unit, low, high);
    const after = steps.findIndex((step) => x <= step.x0 + step.width);
    const at = after < 0 ? steps.length - 1 : after;
    const step = steps[at] ?? piece(0, 1, 0, 0);
    return { step, t: (x - step.x0) / step.width, d0: slopes[at] ?? 0, d1: slopes[at + 1] ?? 0 };
  };
  return { at: (x) => hermite(find(x)), slopeAt: (x) => hermiteSlope(find(x)) };
}

interface Piece {
  readonly x0: number;
  readonly width: number;
  readonly y0: number;
  readonly y1: number;
  readonly secant: number;
}
interface Spot {
  readonly step: Piece;
  readonly t: number;
  readonly d0: number;
  readonly d1: number;
}

function piece(x0 = Number.NaN, x1 = Number.NaN, y0 = Number.NaN, y1 = Number.NaN): Piece {
  return { x0, width: x1 - x0, y0, y1, secant: (y1 - y0) / (x1 - x0) };
}

function pointSlopes(steps: readonly Piece[]): number[] {
  const inner = steps.slice(1).map((right, i) => {
    const left = steps[i] ?? right;
    if (left.secant * right.secant <= 0) return 0;
    const w1 = 2 * right.width + left.width;
    const w2 = right.width + 2 * left.width;
    return (w1 + w2) / (w1 / left.secant + w2 / right.secant);
  });
  return [steps[0]?.secant ?? 0, ...inner, steps.at(-1)?.secant ?? 0];
}

function hermite({ step, t, d0, d1 }: Spot): number {
  const rise = step.y0 * (1 + 2 * t) * (1 - t) ** 2 + step.y1 * t * t * (3 - 2 * t);
  return rise + step.width * (d0 * t * (1 - t) ** 2 - d1 * t * t * (1 - t));
}

function hermiteSlope({ step, t, d0, d1 }: Spot): number {
  return 6 * t * (1 - t) * step.secant + d0 * (1 - t) * (1 - 3 * t) + d1 * t * (3 * t - 2);
}

// ---------------------------------------------------------------------------------------------------- pulp, for its temperature slope

/* Tryding et al., Drying Technology (2022), fitted to Leuk et al. (2016), first desorption of bleached pulp: an upper bound,
 * 1.4 to 1.5 times the book-paper row. Parameters as printed in the authors' code. Measured about 20 to 80 °C. */
const PULP_DRY_BULB = { low: 0, high: 100 } as const;
const GAS_CONSTANT_OF_WATER = 0.4615; // kJ/(kg K)
const KELVIN = 273.15;

/** The GAB row of bleached pulp at one temperature; use it for the temperature slope only. */
export function pulpGabFromDryBulb(dryBulb: number): GabRow {
  const TK = temperature(dryBulb, PULP_DRY_BULB) + KELVIN;
  return {
    m0: 0.0578,
    C: 0.4273 * Math.exp(468.9266 / (GAS_CONSTANT_OF_WATER * TK)),
    K: 0.1011 * Math.exp(297.7358 / (GAS_CONSTANT_OF_WATER * TK)),
  };
}

const HENDERSON_C = 0.5786;
const HENDERSON_N = 4.71;

/** Henderson I: a = 1 − exp(−ξ), ξ = [(w/κ)/(1 − (w/wf)³)]^(1/c). @param moistureContent 0 to below free water `wf` */
export function hendersonRelHumFromMoistureContent(moistureContent: number, dryBulb: number): number {
  const { kappa, wf } = hendersonTerms(dryBulb);
  const w = held(moistureContent, hendersonMoistureContentFromRelHum(MOST_RELHUM, dryBulb));
  const xi = (w / kappa / (1 - (w / wf) ** 3)) ** (1 / HENDERSON_C);
  return 1 - Math.exp(-xi);
}

/** Its inverse in closed form: v = wf/(3κ(−ln(1−a))^c), q = (1/2 + √(1/4 + v³))^(1/3), w = wf(q − v/q). */
export function hendersonMoistureContentFromRelHum(relHum: number, dryBulb: number): number {
  const { kappa, wf } = hendersonTerms(dryBulb);
  const a = fraction(relHum);
  if (a === 0) return 0;
  const v = wf / (3 * kappa * (-Math.log1p(-a)) ** HENDERSON_C);
  const root = Math.sqrt(0.25 + v ** 3);
  const q = (0.5 + root) ** (1 / 3);
  const p = v / q; // q³ − p³ = 1, so q − p is written without the loss of digits of the plain difference
  return wf / (q * q + q * p + p * p);
}

function hendersonTerms(dryBulb: number) {
  const TK = temperature(dryBulb, PULP_DRY_BULB) + KELVIN;
  const kappa = 0.0629 * Math.exp((377.8934 / TK) ** (HENDERSON_N + 1) / (HENDERSON_N + 1));
  const wf = 2.49 * (1 + (296.15 - TK) / 310);
  return { kappa, wf };
}

// ---------------------------------------------------------------------------------------------------- the curves others use

export type SorbentMaterial =
  | "newsprint"
  | "writingPaper"
  | "ragPaper"
  | "kraft"
  | "leather"
  | "parchment"
  | "emulsion"
  | "palmLeaf"
  | "wood"
  | "cotton"
  | "jute";

const DRYING: readonly SorptionCaution[] = ["never-dry-by-weight-alone"];
const RECALLED: readonly SorptionCaution[] = [...DRYING, "isotherm-from-memory"];

const woodCurve = (material: string, cautions: readonly SorptionCaution[]): Isotherm => ({
  material,
  moistureContentFromRelHum: woodMoistureContentFromRelHum,
  relHumFromMoistureContent: woodRelHumFromMoistureContent,
  slope: woodSlope,
  cautions,
});

/** The curve to use for each material. No isotherm of palm leaf, parchment, emulsion or historic leather was found to read:
 *  those are stand-ins and say so. Palm leaf goes by wood; jute, a coarse plant fibre, lies up to a tenth above it at 50 %. */
export const ISOTHERMS: Readonly<Record<SorbentMaterial, Isotherm>> = {
  newsprint: gabIsotherm("newsprint", GAB_ROWS.newsprint, RECALLED),
  writingPaper: gabIsotherm("writing paper", GAB_ROWS.writingPaper, RECALLED),
  ragPaper: gabIsotherm("rag paper", GAB_ROWS.ragPaper, RECALLED),
  kraft: gabIsotherm("kraft paper", GAB_ROWS.kraft, RECALLED),
  leather: gabIsotherm("leather", GAB_ROWS.leather, [...RECALLED, "leather-by-modern-sole-leather"]),
  parchment: gabIsotherm("parchment", GAB_ROWS.catgut, [...RECALLED, "parchment-by-catgut"]),
  emulsion: gabIsotherm("photographic emulsion", GAB_ROWS.catgut, [...RECALLED, "emulsion-by-hide-collagen"]),
  palmLeaf: woodCurve("palm leaf", [...DRYING, "palm-leaf-by-wood"]),
  wood: woodCurve("wood", DRYING),
  cotton: gabIsotherm("cotton cloth", GAB_ROWS.cotton, RECALLED),
  jute: gabIsotherm("jute", GAB_ROWS.jute, RECALLED),
};

// ---------------------------------------------------------------------------------------------------- hygrometer

/** Saturated salt solutions, for trying a hygrometer before its bag readings are trusted: RH% = A exp(B/TK), ±2 %.
 *  Constants: CRC Handbook (after Wexler). */
export const SALTS = {
  LiCl: { A: 14.53, B: -75 },
  MgCl2: { A: 29.26, B: 34 },
  "Mg(NO3)2": { A: 25.28, B: 220 },
  NaBr: { A: 20.49, B: 308 },
  NaCl: { A: 69.2, B: 25 },
  KCl: { A: 49.38, B: 159 },
  K2SO4: { A: 86.75, B: 34 },
} as const;
export type Salt = keyof typeof SALTS;

/** Relative humidity over a saturated salt solution with undissolved salt, a fraction, ±0.02. @param dryBulb 5 to 60 °C */
export function relHumFromSalt(salt: { readonly A: number; readonly B: number }, dryBulb: number): number {
  const TK = temperature(dryBulb, SALT_DRY_BULB) + KELVIN;
  return (salt.A / 100) * Math.exp(salt.B / TK);
}
const SALT_DRY_BULB = { low: 5, high: 60 } as const;

// ---------------------------------------------------------------------------------------------------- search and ranges

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

function fraction(relHum: number): number {
  if (!(relHum >= 0 && relHum <= MOST_RELHUM))
    throw new OutOfRange("relative humidity", relHum, "1", 0, MOST_RELHUM);
  return relHum;
}

function temperature(dryBulb: number, range: { readonly low: number; readonly high: number }): number {
  if (!(dryBulb >= range.low && dryBulb <= range.high))
    throw new OutOfRange("dry bulb", dryBulb, "°C", range.low, range.high);
  return dryBulb;
}

const room = (dryBulb: number): number => temperature(dryBulb, ROOM_DRY_BULB);

function held(moistureContent: number, most: number): number {
  if (!(moistureContent >= 0 && moistureContent <= most))
    throw new OutOfRange("moisture content", moistureContent, "kg/kg", 0, most);
  return moistureContent;
}
