import { STANDARD_PRESSURE, satVapourPressure } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";
import type { Isotherm } from "../sorption/isotherm.ts";
import { ISOTHERMS } from "../sorption/sorption.ts";
import {
  AIR_BETWEEN_LEAVES,
  airPermeability,
  PAPER_RESISTANCE,
  permeabilityAlongLeaves,
  permeabilityFromDiffusivity,
  permeabilityThroughSheets,
} from "./diffusion.ts";

/* An item as the drying model sees it: open faces of an area, and a depth from them to the core over which the room left
 * inside narrows. A plane sheet keeps its width (taper 0); the block of a book, open at three edges, narrows to its core.
 *
 * Depth and taper of a block are chosen so that it dries like the brick of Newman's product rule: the first hours by the ratio
 * of volume to open area, the last weeks by the slowest decay, Σ(π/2L)² over its axes. Unlike the product rule it also holds
 * when the surroundings change or depend on the item, and it counts every gram. Beside a solution in two directions of the
 * book of 12 by 17 cm it is 0.02 % of moisture off, the product rule 0.07 %; blocks of 1:1 to 1:4 within 0.05 %. */

export interface DryingBody {
  readonly isotherm: Isotherm;
  /** kg of dry matter. */
  readonly dryMass: number;
  /** m² through which water leaves. */
  readonly openArea: number;
  /** m from the open faces to the core. */
  readonly depth: number;
  /** The room left at a distance x goes as (1 − x/depth)^taper. */
  readonly taper: number;
  /** Vapour permeability on the way out, kg/(m s Pa). */
  readonly permeability: number;
  /** How far the permeability may be off, up or down, as a factor (nine in ten lie within). */
  readonly spread: number;
  readonly cautions: readonly DryingCaution[];
}

export type DryingCaution =
  | "drying-time-is-a-range"
  | "permeability-is-assumed"
  | "leather-diffusivity-assumed"
  | "drying-side-holds-more"
  | "one-temperature"
  | "release-by-reading-only"
  | "gel-never-touches";

/** kg of dry matter per m³. Book block: as the reference runs take it; the others common practice, no source. */
export const DRY_DENSITY = { book: 690, paper: 750, palmLeaf: 600, leather: 800 } as const;

/** No published value for historic books could be read: usual with a band of a factor 3. Common practice, no source. */
const ASSUMED_SPREAD = 3;
const ASSUMED: readonly DryingCaution[] = [
  "drying-time-is-a-range",
  "permeability-is-assumed",
  "drying-side-holds-more",
  "one-temperature",
];

export interface BlockSize {
  /** m, along the spine */
  readonly height: number;
  /** m, spine to fore-edge */
  readonly width: number;
  /** m */
  readonly thickness: number;
}

export interface Stuff {
  readonly isotherm: Isotherm;
  /** kg of dry matter per m³ */
  readonly dryDensity: number;
  /** °C */
  readonly dryBulb: number;
  /** Pa */
  readonly pressure?: number;
  /** Share of air between leaves, 0 to 1. */
  readonly airFraction?: number;
  /** Resistance μ through sheets. */
  readonly resistance?: number;
}

export const bookPaper = (dryBulb: number): Stuff => ({
  isotherm: ISOTHERMS.ragPaper,
  dryDensity: DRY_DENSITY.book,
  dryBulb,
});

const airAround = ({ dryBulb, pressure }: Stuff): number =>
  airPermeability(dryBulb, pressure ?? STANDARD_PRESSURE);
const alongLeaves = (stuff: Stuff): number =>
  permeabilityAlongLeaves(stuff.airFraction ?? AIR_BETWEEN_LEAVES.usual, airAround(stuff));
const throughSheets = (stuff: Stuff): number =>
  permeabilityThroughSheets(stuff.resistance ?? PAPER_RESISTANCE.usual, airAround(stuff));

/** A closed book: water leaves along the leaves at head, tail and fore-edge; spine and boards are taken as shut. */
export const closedBook = (size: BlockSize, stuff: Stuff): DryingBody =>
  block(size, [size.height / 2, size.width], alongLeaves(stuff), stuff);

/** A pressed stack of palm leaves or loose sheets between boards, open at all four edges. */
export const leafStack = (size: BlockSize, stuff: Stuff): DryingBody =>
  block(size, [size.height / 2, size.width / 2], alongLeaves(stuff), stuff);

/** A book stood open and fanned, or a file loosened: sheaves of a thickness (m) with air on both sides.
 *  The edges of the sheaves are left out, which is on the slow side. */
export function fannedBook(size: BlockSize, sheaf: number, stuff: Stuff): DryingBody {
  withinRange("sheaf", sheaf, "m", 1e-5, size.thickness);
  return block(size, [sheaf / 2], throughSheets(stuff), stuff);
}

/** Single leaves with air on both sides: a sheaf of one leaf. */
export const looseLeaves = (size: BlockSize, leafThickness: number, stuff: Stuff): DryingBody =>
  fannedBook(size, leafThickness, stuff);

/** m²/s through leather or board. No value was found: 1e-11 to 1e-10, common practice, no source. */
export const LEATHER_DIFFUSIVITY = { low: 1e-11, usual: 3e-11, high: 1e-10 } as const;
/** Where the diffusivity is turned into a permeability; between, it follows the isotherm. */
const LEATHER_RELHUM = 0.65;

/** A leather-covered board or a cover off its book: one face open, the other against the block. */
export function leatherBoard(
  size: BlockSize,
  stuff: Stuff,
  diffusivity: number = LEATHER_DIFFUSIVITY.usual,
): DryingBody {
  const permeability = permeabilityFromDiffusivity(
    withinRange("diffusivity", diffusivity, "m²/s", 1e-12, 1e-8),
    satVapourPressure(stuff.dryBulb),
    stuff.dryDensity,
    stuff.isotherm.slope(LEATHER_RELHUM, stuff.dryBulb),
  );
  const body = block(size, [size.thickness], permeability, stuff);
  return { ...body, cautions: [...body.cautions, "leather-diffusivity-assumed"] };
}

function block(
  size: BlockSize,
  waysOut: readonly number[],
  permeability: number,
  { isotherm, dryDensity }: Stuff,
): DryingBody {
  const volume = size.height * size.width * size.thickness;
  const { depth, taper, openness } = narrowingDepth(waysOut);
  return {
    isotherm,
    dryMass: withinRange("dry density", dryDensity, "kg/m³", 50, 2500) * volume,
    openArea: openness * volume,
    depth,
    taper,
    permeability,
    spread: ASSUMED_SPREAD,
    cautions: ASSUMED,
  };
}

/** Widest narrowing tried; a cube open on all sides has 3.84. */
const MOST_TAPER = 6;

/** Depth, taper and openness of a block. @param waysOut one to three axes, m: half the width where both sides are open, the
 *  whole where one is */
export function narrowingDepth(waysOut: readonly number[]): {
  readonly depth: number;
  readonly taper: number;
  /** m² of open face for each m³ */
  readonly openness: number;
} {
  for (const way of waysOut) withinRange("way out", way, "m", 1e-6, 10);
  const openness = waysOut.reduce((sum, way) => sum + 1 / way, 0);
  const decay = waysOut.reduce((sum, way) => sum + (Math.PI / 2 / way) ** 2, 0); // 1/m², of diffusivity × time
  const taper = waysOut.length === 1 ? 0 : taperFromDecay(Math.sqrt(decay) / openness);
  return { depth: (taper + 1) / openness, taper, openness };
}

/** The taper whose slowest decay is the wanted one: the first zero of the radial wave stands at the open face.
 *  Halving between 0 and `MOST_TAPER`, to 1e-9.   @param wanted root of the decay × volume / open area */
function taperFromDecay(wanted: number): number {
  let [low, high] = [0, MOST_TAPER];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (radialWave(middle, wanted * (middle + 1)) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Σ (−z²/4)^k/(k! (ν+1)…(ν+k)), ν = (taper − 1)/2: the wave standing in taper + 1 dimensions, 1 at the core. */
function radialWave(taper: number, z: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 60 && Math.abs(term) > 1e-16; k++) {
    term *= (-z * z) / 4 / (k * ((taper - 1) / 2 + k));
    sum += term;
  }
  return sum;
}
