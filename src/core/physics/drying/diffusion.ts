import { STANDARD_PRESSURE } from "../air/moist-air.ts";
import { OutOfRange, withinRange } from "../out-of-range.ts";

/* Moisture moving through sheets, stacks and blocks: closed forms for constant diffusivity, and the coefficients the
 * drying model takes. Lengths m, time s, diffusivity m²/s, permeability kg/(m s Pa), film coefficient kg/(m² s Pa).
 * Change: share of the whole change that has happened, 0 to 1; of the mean unless it is said to be of the centre. */

const GAS_CONSTANT_OF_WATER = 461.5; // J/(kg K)
const KELVIN = 273.15;

/** Fo = D t/L². @param depth half the thickness when both faces are open, the whole when one is sealed */
export const fourierFromTime = (diffusivity: number, seconds: number, depth: number): number =>
  (diffusivity * seconds) / depth ** 2;

// ---------------------------------------------------------------------------------------------------- plane sheet

/** Below this the short-time form is right to 1e-12 and the series slow. */
const SHORT_FOURIER = 0.02;

/** Change of a plane sheet whose faces are held at the new value from the start.
 *  @param fourier 0 upward   @throws OutOfRange below 0
 *  Source: Crank, The Mathematics of Diffusion (1975), plane sheet: 1 − Σ 8/((2n+1)²π²) exp(−(2n+1)²π²Fo/4), and for short
 *  times 2√(Fo/π); from memory, and checked one against the other. */
export function planeSheetChange(fourier: number): number {
  withinRange("Fourier number", fourier, "1", 0, Number.MAX_VALUE);
  if (fourier < SHORT_FOURIER) return 2 * Math.sqrt(fourier / Math.PI);
  let left = 0;
  for (let n = 0; n < 40; n++) {
    const b = ((2 * n + 1) * Math.PI) / 2;
    left += (2 / b ** 2) * Math.exp(-(b ** 2) * fourier);
  }
  return 1 - left;
}

/** Fourier number at which a plane sheet has made a share of its change; inverse of `planeSheetChange`.
 *  Halving between 0 and 15, to 1e-13, at most 100 times.   @param change 0 to below 1 */
export function fourierFromPlaneSheetChange(change: number): number {
  withinRange("change", change, "1", 0, 1 - 1e-15);
  return risingRoot((fourier) => planeSheetChange(fourier) - change, 0, 15);
}

/** Change at the centre (or the sealed face): 1 − (4/π) Σ (−1)ⁿ/(2n+1) exp(−(2n+1)²π²Fo/4).
 *  Source: Crank (1975), from memory.   @param fourier 0 upward; below 0.002 nothing has arrived, to 1e-13 */
export function planeSheetCentreChange(fourier: number): number {
  withinRange("Fourier number", fourier, "1", 0, Number.MAX_VALUE);
  if (fourier < 0.002) return 0;
  let left = 0;
  for (let n = 0; n < 60; n++) {
    const odd = 2 * n + 1;
    left += ((n % 2 === 0 ? 1 : -1) / odd) * Math.exp((-(odd ** 2) * Math.PI ** 2 * fourier) / 4);
  }
  return Math.min(1, Math.max(0, 1 - (4 / Math.PI) * left));
}

// ---------------------------------------------------------------------------------------------------- with a surface film

const MOST_ROOTS = 3000;
const NEGLIGIBLE = 1e-13;

/** Roots of b tan b = Bi, the smallest first. @param biot above 0: film coefficient × depth / permeability
 *  Each lies alone between nπ and nπ + π/2; halving to 1e-13.   Source: Crank (1975) Table 4.1, from memory. */
export function biotRoots(biot: number, count: number): number[] {
  aboveZero("Biot number", biot, "1");
  return Array.from({ length: count }, (_, n) => biotRoot(biot, n));
}

function biotRoot(biot: number, n: number): number {
  const rising = (b: number): number => b * Math.sin(b) - biot * Math.cos(b);
  const sign = n % 2 === 0 ? 1 : -1;
  return risingRoot((b) => sign * rising(b), n * Math.PI, (n + 0.5) * Math.PI);
}

/** Change of a plane sheet behind a surface film: 1 − Σ 2Bi² exp(−b²Fo)/(b²(b² + Bi² + Bi)).
 *  Source: Crank (1975), surface evaporation; from memory.   @param fourier 0 upward   @param biot above 0 */
export function planeSheetChangeBehindFilm(fourier: number, biot: number): number {
  withinRange("Fourier number", fourier, "1", 0, Number.MAX_VALUE);
  aboveZero("Biot number", biot, "1");
  if (fourier === 0) return 0;
  let left = 0;
  for (let n = 0; n < MOST_ROOTS; n++) {
    const b = biotRoot(biot, n);
    const share = (2 * biot ** 2) / (b ** 2 * (b ** 2 + biot ** 2 + biot));
    const term = share * Math.exp(-(b ** 2) * fourier);
    left += term;
    if (term < NEGLIGIBLE) break;
  }
  return Math.max(0, 1 - left);
}

/** Change of a block open along several axes: what is left is the product of what is left along each.
 *  Source: Newman's product rule (1931), from memory; exact for constant diffusivity.   @param changes one for each axis */
export const brickChange = (changes: readonly number[]): number =>
  1 - changes.reduce((left, change) => left * (1 - withinRange("change", change, "1", 0, 1)), 1);

// ---------------------------------------------------------------------------------------------------- air, film, book

/** Water vapour permeability of still air, kg/(m s Pa): 2.306e-5 · (p0/p)/(Rv TK) · (TK/273.15)^1.81.
 *  Source: Schirmer's formula as in ISO 12572, from memory.   @param dryBulb −20 to 80 °C */
export function airPermeability(dryBulb: number, pressure: number = STANDARD_PRESSURE): number {
  const TK = withinRange("dry bulb", dryBulb, "°C", -20, 80) + KELVIN;
  aboveZero("pressure", pressure, "Pa");
  const share = STANDARD_PRESSURE / pressure / (GAS_CONSTANT_OF_WATER * TK);
  return 2.306e-5 * share * (TK / KELVIN) ** 1.81;
}

/** Above it the flow along a plate is no longer smooth and the equation of `flatPlateFilm` ends. */
const MOST_LAMINAR_REYNOLDS = 5e5;

export interface PlateAir {
  /** m/s along the plate */
  readonly velocity: number;
  /** m, of the plate along the flow */
  readonly length: number;
  /** m²/s; air at 20 °C 1.51e-5 */
  readonly kinematicViscosity: number;
  /** Of water vapour in air, m²/s; 2.5e-5 at 20 °C */
  readonly vapourDiffusivity: number;
  readonly dryBulb: number;
}

/** Film of moving air on a flat plate: Sh = 0.664 Re^½ Sc^⅓, hm = Sh D/length, film = hm/(Rv TK).
 *  Source: laminar flat plate, mean over its length; from memory.   @throws OutOfRange above Reynolds 5e5 */
export function flatPlateFilm(air: PlateAir): {
  readonly sherwood: number;
  /** m/s */
  readonly massTransfer: number;
  /** kg/(m² s Pa) */
  readonly film: number;
} {
  const { velocity, length, kinematicViscosity, vapourDiffusivity, dryBulb } = air;
  const reynolds = (velocity * length) / kinematicViscosity;
  withinRange("Reynolds number", reynolds, "1", 0, MOST_LAMINAR_REYNOLDS);
  const schmidt = kinematicViscosity / vapourDiffusivity;
  const sherwood = 0.664 * Math.sqrt(reynolds) * Math.cbrt(schmidt);
  const massTransfer = (sherwood * vapourDiffusivity) / length;
  return { sherwood, massTransfer, film: massTransfer / (GAS_CONSTANT_OF_WATER * (dryBulb + KELVIN)) };
}

/** Of air near 20 °C; Le = thermal diffusivity by vapour diffusivity. From memory. */
const AIR = { density: 1.204, heatCapacity: 1006, lewis: 0.85 } as const; // kg/m³, J/(kg K), 1

/** Film from a heat transfer coefficient: hm = hc/(ρ cp Le^⅔), film = hm/(Rv TK), kg/(m² s Pa).
 *  Still room air, hc 3 W/(m² K), gives 2.0e-8.   Source: Lewis relation, from memory. */
export function filmFromHeatTransfer(heatTransfer: number, dryBulb: number): number {
  aboveZero("heat transfer coefficient", heatTransfer, "W/(m² K)");
  const massTransfer = heatTransfer / (AIR.density * AIR.heatCapacity * AIR.lewis ** (2 / 3));
  return massTransfer / (GAS_CONSTANT_OF_WATER * (dryBulb + KELVIN));
}

/** Still air of a room, W/(m² K). Common practice, no source. */
export const STILL_AIR_HEAT_TRANSFER = 3;

/** Along the leaves of a closed book vapour runs in the air films between them: permeability = air share × that of air.
 *  That layers conduct side by side and the air layers rule: Derluyn et al. 2007 (abstract). The share is an assumption to be
 *  refined from readings: 0.03 to 0.15, usual 0.08.   @param airFraction 0 to 1 */
export const permeabilityAlongLeaves = (airFraction: number, permeabilityOfAir: number): number =>
  withinRange("air share between leaves", airFraction, "1", 0, 1) * permeabilityOfAir;
export const AIR_BETWEEN_LEAVES = { low: 0.03, usual: 0.08, high: 0.15 } as const;

/** Through the sheets: permeability = that of air / μ. Paper: μ of the order of 30 to 150, from memory. */
export const permeabilityThroughSheets = (resistance: number, permeabilityOfAir: number): number =>
  permeabilityOfAir / withinRange("resistance μ", resistance, "1", 1, 1e6);
export const PAPER_RESISTANCE = { low: 30, usual: 70, high: 150 } as const;

/** D = δ psat/(ρ ξ), m²/s: permeability and slope of the isotherm as one diffusivity; it falls as the slope rises with damp.
 *  @param satPressure Pa   @param density kg of dry matter per m³   @param slope kg/kg per 1 of relative humidity */
export const diffusivityFromPermeability = (
  permeability: number,
  satPressure: number,
  density: number,
  slope: number,
): number => (permeability * satPressure) / (density * slope);

/** The same the other way, for a material whose diffusivity is what is known. */
export const permeabilityFromDiffusivity = (
  diffusivity: number,
  satPressure: number,
  density: number,
  slope: number,
): number => (diffusivity * density * slope) / satPressure;

/** kg/(m² s) from a surface wet with a film of water: film × (psat(wet bulb) − vapour pressure). */
export const wetSurfaceRate = (film: number, satPressureAtWetBulb: number, vapourPressure: number): number =>
  film * (satPressureAtWetBulb - vapourPressure);

// ---------------------------------------------------------------------------------------------------- searches and ranges

/** Root of something rising between two ends, by halving to 1e-13 relative. */
function risingRoot(rising: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let step = 0; step < 100 && b - a > 1e-13 * Math.max(1e-3, b); step++) {
    const middle = (a + b) / 2;
    if (rising(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

function aboveZero(what: string, got: number, unit: string): void {
  if (!(got > 0)) throw new OutOfRange(what, got, unit, Number.MIN_VALUE, Number.MAX_VALUE);
}
