import { absHumidityFromRelHum, satVapourPressure } from "../air/moist-air.ts";
import type { Enclosure } from "../bags/bags.ts";
import { MEASURED_GEL } from "../bags/gel-isotherms.ts";
import { OutOfRange, withinRange } from "../out-of-range.ts";
import type { Isotherm, SorptionCaution } from "../sorption/isotherm.ts";
import {
  contentAt,
  LEAST_RELHUM,
  type SorptionTable,
  sorptionTable,
  tableDryBulb,
} from "../sorption/sorption-table.ts";
import { tableIsotherm } from "../sorption/table-isotherm.ts";
import type { AirCell } from "./_internals/air-cell.ts";
import { DryingRow, type Outside } from "./_internals/drying-row.ts";
import { filmFromHeatTransfer, STILL_AIR_HEAT_TRANSFER } from "./diffusion.ts";
import type { DryingBody, DryingCaution } from "./drying-body.ts";

/* Drying of an item in a room or in a bag: what it holds, what a closed bag would show, and when it gets somewhere.
 * Hours, relative humidity as a fraction, masses kg. One temperature a run. */

/** Relative humidity over time; straight between the points, held before the first and after the last. */
export interface RelHumSeries {
  /** Rising. */
  readonly hours: readonly number[];
  readonly relHums: readonly number[];
}

/** A room, aired or dehumidified: its air is not moved by the item. */
export interface Room {
  readonly kind: "room";
  readonly relHum: number | RelHumSeries;
  /** kg/(m² s Pa); left out: still air */
  readonly film?: number;
}

/** A closed bag, box or tent: its air follows gel, item and leak. */
export interface ClosedBag {
  readonly kind: "bag";
  /** m³ */
  readonly airVolume: number;
  readonly gel?: { readonly dryMass: number; readonly relHum: number };
  /** Relative humidity of the air at closing; left out: the gel's, or the room's. */
  readonly airRelHum?: number;
  /** Through film and seams, kg/(h Pa); see `leakFromEnclosure`. */
  readonly leak: number;
  /** Of the room it stands in. */
  readonly relHum: number | RelHumSeries;
  readonly film?: number;
}
export type Surroundings = Room | ClosedBag;

/** Leak of an enclosure through film and seams, kg/(h Pa): A·Π + N·V/(Rv·TK). The same water as `leakMass`, driven the same way. */
export function leakFromEnclosure(enclosure: Enclosure, dryBulb: number): number {
  const { area, permeance, volume, airChangesPerDay } = enclosure;
  const throughFilm = (area * permeance) / 1000; // kg/(day Pa)
  const withAir =
    (airChangesPerDay * volume * absHumidityFromRelHum(dryBulb, 1)) / satVapourPressure(dryBulb);
  return (throughFilm + withAir) / 24;
}

/** Regular-density gel taking water up, as one curve; between 10 and 35 °C it goes by relative humidity alone. */
export const GEL_ISOTHERM: Isotherm = tableIsotherm(
  {
    material: "silica gel",
    relHums: MEASURED_GEL.adsorption.relHums.slice(1),
    moistureContents: MEASURED_GEL.adsorption.contents.slice(1),
  },
  [],
);

export interface DryingPrecision {
  /** Cells from the open face to the core. */
  readonly cells: number;
  /** Error allowed in one step, kg of water per kg of dry matter. */
  readonly allowedError: number;
}
/** Mean moisture of a closed book within 0.01 % of a run on 640 cells, at any day of 180 (`bench/drying.ts`). */
export const FINE: DryingPrecision = { cells: 20, allowedError: 2e-5 };
/** Within 0.04 %: for the many runs of a forecast, where a thousand items wait. */
export const QUICK: DryingPrecision = { cells: 10, allowedError: 2e-5 };

/** Cells widen from the open face: face i of n stands at depth × (i/n)^GRADING. */
const GRADING = 2;
const HOUR = 3600; // s
/** Steps in a room whose relative humidity changes are no longer than this, so that its days are seen. */
const SERIES_STEP = 6; // h

/** What the item would show and hold, at one hour. */
export interface DryingPoint {
  readonly hours: number;
  /** Mean of the item, kg/kg. */
  readonly moistureContent: number;
  /** What a closed bag without gel would come to show. */
  readonly equilibriumRelHum: number;
  /** Of the air around it now. */
  readonly airRelHum: number;
  readonly surfaceRelHum: number;
  readonly coreRelHum: number;
  /** From the open face inward: depth (m) and relative humidity. */
  readonly profile: readonly { readonly depth: number; readonly relHum: number }[];
}

export interface DryingCourse {
  readonly points: readonly DryingPoint[];
  /** kg that left the item. */
  readonly lost: number;
  readonly cautions: readonly (DryingCaution | SorptionCaution)[];
}

/** The item from a relative humidity it starts with, at the hours asked. @param hours from 0, rising   @throws OutOfRange */
export function dryingCourse(
  body: DryingBody,
  dryBulb: number,
  startRelHum: number,
  surroundings: Surroundings,
  hours: readonly number[],
  precision: DryingPrecision = FINE,
): DryingCourse {
  const run = new DryingRun(body, dryBulb, precision);
  run.start(startRelHum);
  const before = run.water;
  run.place(surroundings);
  const points = hours.map((at) => {
    run.goOn(at);
    return run.point();
  });
  return { points, lost: before - run.water, cautions: cautionsOf(body, surroundings) };
}

/** Hours until the item would show a relative humidity in a closed bag, or null when it does not within `mostHours`. */
export function hoursUntilRelHum(
  body: DryingBody,
  dryBulb: number,
  startRelHum: number,
  surroundings: Surroundings,
  target: number,
  mostHours: number,
  precision: DryingPrecision = FINE,
): number | null {
  const run = new DryingRun(body, dryBulb, precision);
  run.start(startRelHum);
  run.place(surroundings);
  return run.goOnUntilRelHum(target, mostHours);
}

function cautionsOf(body: DryingBody, surroundings: Surroundings): (DryingCaution | SorptionCaution)[] {
  const gel: DryingCaution[] = surroundings.kind === "bag" && surroundings.gel ? ["gel-never-touches"] : [];
  return [...body.cautions, ...body.isotherm.cautions, ...gel, "release-by-reading-only"];
}

/** One item on its way, from surroundings to surroundings; reused for many runs of the same body. */
export class DryingRun {
  readonly #row: DryingRow;
  readonly #body: DryingBody;
  readonly #table: SorptionTable;
  readonly #dryBulb: number;
  readonly #satPressure: number;
  /** Way through the item to each cell from the one before, m divided by the share of the open area there. */
  readonly #ways: Float64Array;
  readonly #centres: Float64Array;
  #permeability: number;
  #filmFactor = 1;
  #surroundings: Surroundings | null = null;
  #outside: Outside = () => 0;

  constructor(body: DryingBody, dryBulb: number, precision: DryingPrecision = FINE) {
    this.#body = body;
    this.#dryBulb = dryBulb;
    this.#table = sorptionTable(body.isotherm, dryBulb);
    this.#satPressure = satVapourPressure(dryBulb);
    this.#permeability = body.permeability;
    this.#row = new DryingRow(this.#table, precision.cells);
    this.#row.allowedError = precision.allowedError * body.dryMass;
    this.#ways = new Float64Array(precision.cells);
    this.#centres = new Float64Array(precision.cells);
    this.#cutCells(precision.cells);
  }

  #cutCells(cells: number): void {
    const { depth, taper, dryMass } = this.#body;
    const left = (x: number): number => Math.max(0, 1 - x / depth);
    let [near, before] = [0, 0];
    for (let i = 0; i < cells; i++) {
      const far = depth * ((i + 1) / cells) ** GRADING;
      const [a, b] = [left(near), left(far)];
      const volume = a ** (taper + 1) - b ** (taper + 1);
      // the middle of a cell is that of its volume, else a narrowing block comes out too slow
      const inward = ((taper + 1) / (taper + 2)) * (a ** (taper + 2) - b ** (taper + 2));
      const centre = depth * (1 - inward / volume);
      this.#row.dryMass[i + 1] = dryMass * volume;
      this.#ways[i] = (centre - before) / a ** taper;
      this.#centres[i] = centre;
      near = far;
      before = centre;
    }
  }

  /** The same body with permeability and film multiplied: for trying what readings say about them. */
  scale(permeabilityFactor: number, filmFactor: number): void {
    this.#permeability = this.#body.permeability * permeabilityFactor;
    this.#filmFactor = filmFactor;
  }

  /** Puts the whole item to a relative humidity. @param relHum `LEAST_RELHUM` to the last the isotherm answers for */
  start(relHum: number, hours = 0): void {
    this.#row.fill(this.#within("relative humidity of the item", relHum), hours);
  }

  /** Moves the item, with the water it has, to other surroundings. */
  place(surroundings: Surroundings): void {
    const outside = outsideOf(surroundings.relHum);
    this.#surroundings = surroundings;
    this.#outside = outside;
    this.#row.longestStep = typeof surroundings.relHum === "number" ? Number.POSITIVE_INFINITY : SERIES_STEP;
    this.#conduct(surroundings);
    if (surroundings.kind === "room") this.#row.open();
    else {
      const air = surroundings.airRelHum ?? surroundings.gel?.relHum ?? outside(this.#row.hours);
      this.#row.close(this.#airCell(surroundings), air, surroundings.gel?.relHum ?? air);
    }
  }

  #conduct(surroundings: Surroundings): void {
    const { openArea } = this.#body;
    const still = filmFromHeatTransfer(STILL_AIR_HEAT_TRANSFER, this.#dryBulb);
    const film = (surroundings.film ?? still) * this.#filmFactor;
    const hourly = HOUR * this.#satPressure * openArea;
    const { conductance, count } = this.#row;
    for (let k = 1; k < count; k++) {
      const inside = (this.#ways[k - 1] ?? 0) / this.#permeability;
      conductance[k] = hourly / (k === 1 ? inside + 1 / film : inside);
    }
    conductance[0] = surroundings.kind === "bag" ? surroundings.leak * this.#satPressure : 0;
  }

  #airCell({ airVolume, gel }: ClosedBag): AirCell {
    withinRange("air in the bag", airVolume, "m³", 1e-6, 1000);
    return {
      gel: gel ? sorptionTable(GEL_ISOTHERM, this.#dryBulb) : null,
      gelDryMass: gel?.dryMass ?? 0,
      airWater: airVolume * absHumidityFromRelHum(this.#dryBulb, 1),
    };
  }

  goOn(until: number, afterStep?: () => boolean): void {
    if (this.#surroundings === null) throw new Error("drying: the item was placed nowhere; call place first");
    if (until < this.hours) throw new OutOfRange("hour", until, "h", this.hours, Number.POSITIVE_INFINITY);
    this.#row.goOn(until, this.#outside, afterStep);
  }

  /** Goes on until the item would show the target in a closed bag. @returns the hour, or null when it does not until `until` */
  goOnUntilRelHum(target: number, until: number): number | null {
    const wanted = this.waterAtRelHum(target);
    if (this.water <= wanted) return this.hours;
    this.goOn(until, () => this.water <= wanted);
    return this.water <= wanted ? this.#hourOfWater(wanted) : null;
  }

  /** The hour of the last step at which the water passed a mark; halving, 40 times. */
  #hourOfWater(wanted: number): number {
    let [early, late] = [this.#row.hoursBefore, this.#row.hours];
    for (let i = 0; i < 40; i++) {
      const middle = (early + late) / 2;
      if (this.#row.itemWaterAt(middle) > wanted) early = middle;
      else late = middle;
    }
    return late;
  }

  get hours(): number {
    return this.#row.hours;
  }
  get hoursBefore(): number {
    return this.#row.hoursBefore;
  }
  /** kg of water in the item. */
  get water(): number {
    return this.#row.itemWater();
  }
  /** kg of water in item, gel and air together, for checking the balance. */
  get allWater(): number {
    return this.#row.water.reduce((sum, water) => sum + water, 0);
  }
  /** kg that went out of the room's or the bag's side. */
  get gone(): number {
    return this.#row.gone;
  }
  get moistureContent(): number {
    return this.water / this.#body.dryMass;
  }
  get effort(): DryingRow["effort"] {
    return this.#row.effort;
  }

  /** Between the ends of the last step. */
  moistureContentAt(hours: number): number {
    return this.#row.itemWaterAt(hours) / this.#body.dryMass;
  }
  /** Of the air around the item, between the ends of the last step. */
  airRelHumAt(hours: number): number {
    return this.#row.first === 0 ? this.#row.relHumAt(0, hours) : this.#outside(hours);
  }

  /** The item's cells as the equations have them: dry mass (kg) and conductance of the outward side (kg/h per 1). */
  cells(): { readonly dryMass: readonly number[]; readonly conductance: readonly number[] } {
    const { dryMass, conductance } = this.#row;
    return { dryMass: Array.from(dryMass.subarray(1)), conductance: Array.from(conductance.subarray(1)) };
  }

  waterAtRelHum(relHum: number): number {
    return this.#body.dryMass * contentAt(this.#table, this.#within("relative humidity", relHum));
  }

  point(): DryingPoint {
    const { relHum, count, hours } = this.#row;
    const { isotherm } = this.#body;
    const moistureContent = this.moistureContent;
    return {
      hours,
      moistureContent,
      equilibriumRelHum: isotherm.relHumFromMoistureContent(moistureContent, tableDryBulb(this.#dryBulb)),
      airRelHum: this.#row.first === 0 ? (relHum[0] ?? 0) : this.#outside(hours),
      surfaceRelHum: relHum[1] ?? 0,
      coreRelHum: relHum[count - 1] ?? 0,
      profile: Array.from(this.#centres, (depth, i) => ({ depth, relHum: relHum[i + 1] ?? 0 })),
    };
  }

  #within(what: string, relHum: number): number {
    return withinRange(what, relHum, "1", LEAST_RELHUM, this.#table.most);
  }
}

/** @throws OutOfRange outside 0 to 1; RangeError when the hours do not rise */
function outsideOf(relHum: number | RelHumSeries): Outside {
  if (typeof relHum === "number") {
    const constant = withinRange("relative humidity of the room", relHum, "1", 0, 1);
    return () => constant;
  }
  const { hours, relHums } = relHum;
  if (
    hours.length === 0 ||
    hours.length !== relHums.length ||
    hours.some((h, i) => i > 0 && !(h > (hours[i - 1] ?? h)))
  )
    throw new RangeError("relative humidity of the room: the hours of a series must rise, one value to each");
  for (const each of relHums) withinRange("relative humidity of the room", each, "1", 0, 1);
  let at = 0;
  return (hour) => {
    while (at > 0 && hour < (hours[at] ?? 0)) at -= 1;
    while (at + 1 < hours.length && hour >= (hours[at + 1] ?? 0)) at += 1;
    const [h0, r0] = [hours[at] ?? 0, relHums[at] ?? 0];
    const [h1, r1] = [hours[at + 1], relHums[at + 1]];
    if (h1 === undefined || r1 === undefined || hour <= h0) return r0;
    return r0 + ((r1 - r0) * (hour - h0)) / (h1 - h0);
  };
}
