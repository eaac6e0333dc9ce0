import { contentAt, type SorptionTable, slopeAt } from "../../sorption/sorption-table.ts";
import { type AirCell, airSlopeAt, settled } from "./air-cell.ts";
import { RowSystem } from "./row-system.ts";

/* The solver: a row of cells from the surroundings to the core, driven by relative humidity, counting kg of water.
 *
 *   d(water_k)/dt = G_k (relHum_{k−1} − relHum_k) − G_{k+1} (relHum_k − relHum_{k+1}),   water_k = dryMass_k · u(relHum_k)
 *
 * G in kg/h per 1 of relative humidity. Cell 0 is the air and gel of a bag; in a room it is left out and the surroundings
 * stand before cell 1. Behind the last cell is nothing. Time: TR-BDF2 (Bank et al. 1985; γ and the error estimate after Hosea
 * and Shampine, Applied Numerical Mathematics 20, 1996; both from memory): second order, L-stable, Newton on a tridiagonal
 * system twice a step. A cell's water is moved by the flows through its two sides alone and never read back from the
 * isotherm: what leaves one cell enters the next, so mass holds to rounding however early Newton stops.
 * The loops touch plain arrays only and make nothing new; every index lies below `count` or the length of the table, which is
 * what the casts to number say. */

const GAMMA = 2 - Math.SQRT2;
/** Share of the step with which the unknown flow of either stage counts. */
const STAGE = GAMMA / 2;
/** Second stage: water = MIDDLE·(water of the first) − BEFORE·(water before) + STAGE·step·flow. */
const MIDDLE = 1 / (GAMMA * (2 - GAMMA));
const BEFORE = MIDDLE - 1;
/** Error of a step: step·(ERROR_0·flow before + ERROR_1·flow of the first stage + ERROR_2·flow after). */
const ERROR = (-3 * GAMMA * GAMMA + 4 * GAMMA - 2) / (6 * (2 - GAMMA));
const ERROR_0 = ERROR / GAMMA;
const ERROR_1 = -ERROR / (GAMMA * (1 - GAMMA));
const ERROR_2 = ERROR / (1 - GAMMA);

/** Newton stops when no cell moves further than this, relative humidity; what remains is of the order of its square. */
const NEWTON_MOVE = 3e-4;
const MOST_PASSES = 30;
/** Part of the last drift the first guess follows: drying slows. */
const GUESS = 0.7;
const SAFETY = 0.9;
const MOST_SHRINK = 0.2;
const MOST_GROWTH = 4;
const SHORTEST_STEP = 1e-12; // h

/** Relative humidity of the surroundings at an hour. */
export type Outside = (hours: number) => number;

export class DryingRow {
  /** Cells, the air's at 0 among them. */
  readonly count: number;
  /** kg of dry matter in each cell; nothing at 0. */
  readonly dryMass: Float64Array;
  /** Conductance of each cell's outward side, kg/h per 1 of relative humidity. */
  readonly conductance: Float64Array;

  hours = 0;
  readonly relHum: Float64Array;
  /** kg */
  readonly water: Float64Array;
  /** Net inflow, kg/h. */
  readonly flow: Float64Array;
  /** kg gone out to the surroundings since `clock` was set. */
  gone = 0;

  /** The same at the beginning of the last step. */
  hoursBefore = 0;
  readonly relHumBefore: Float64Array;
  readonly waterBefore: Float64Array;
  readonly flowBefore: Float64Array;
  readonly effort = { steps: 0, refused: 0, passes: 0 };

  /** Error allowed in one step, kg of water summed over the row. */
  allowedError = 1e-6;
  /** h */
  longestStep = Number.POSITIVE_INFINITY;

  #table: SorptionTable;
  #nextStep = 0;
  /** Change of relative humidity in an hour over the last step, to guess the next from. */
  readonly #drift: Float64Array;
  readonly #known: Float64Array;
  readonly #flowMid: Float64Array;
  readonly #waterMid: Float64Array;
  readonly #error: Float64Array;
  readonly #system: RowSystem;

  /** @param cells of the item, without the air's */
  constructor(table: SorptionTable, cells: number) {
    const fresh = (): Float64Array => new Float64Array(cells + 1);
    this.count = cells + 1;
    this.#table = table;
    this.dryMass = fresh();
    this.conductance = fresh();
    this.relHum = fresh();
    this.water = fresh();
    this.flow = fresh();
    this.relHumBefore = fresh();
    this.waterBefore = fresh();
    this.flowBefore = fresh();
    this.#drift = fresh();
    this.#known = fresh();
    this.#flowMid = fresh();
    this.#waterMid = fresh();
    this.#error = fresh();
    this.#system = new RowSystem(table, this.dryMass, this.conductance);
  }

  /** First cell in use: 0 in a bag, 1 in a room. */
  get first(): number {
    return this.#system.first;
  }

  /** Puts every cell of the item to a relative humidity, at an hour. */
  fill(relHum: number, hours: number): void {
    const content = contentAt(this.#table, relHum);
    for (let k = 1; k < this.count; k++) {
      this.relHum[k] = relHum;
      this.water[k] = (this.dryMass[k] as number) * content;
    }
    this.hours = hours;
    this.gone = 0;
    this.#restart();
  }

  #restart(): void {
    this.#nextStep = 0;
    this.#drift.fill(0);
  }

  /** Closes the item in with air and gel, which settle between them at once; the item keeps its water. */
  close(air: AirCell, airRelHum: number, gelRelHum: number): void {
    const water =
      air.airWater * airRelHum + (air.gel === null ? 0 : air.gelDryMass * contentAt(air.gel, gelRelHum));
    this.#system.air = air;
    this.relHum[0] = settled(air, water, airRelHum, gelRelHum);
    this.water[0] = water;
    this.#restart();
  }

  /** Lays the item open; the item keeps its water. */
  open(): void {
    this.#system.air = null;
    this.relHum[0] = 0;
    this.water[0] = 0;
    this.flow[0] = 0;
    this.#restart();
  }

  /** kg of water in the item. */
  itemWater(): number {
    return sumFrom1(this.water);
  }

  /** Net inflow to the item, kg/h. */
  itemFlow(): number {
    return sumFrom1(this.flow);
  }

  /** kg of water in the item between the ends of the last step. */
  itemWaterAt(hours: number): number {
    const before = sumFrom1(this.waterBefore);
    const flowBefore = sumFrom1(this.flowBefore);
    const span = this.hours - this.hoursBefore;
    return between(
      (hours - this.hoursBefore) / span,
      before,
      this.itemWater(),
      span * flowBefore,
      span * this.itemFlow(),
    );
  }

  /** Relative humidity of a cell between the ends of the last step. */
  relHumAt(cell: number, hours: number): number {
    const span = this.hours - this.hoursBefore;
    const [before, after] = [this.relHumBefore[cell] as number, this.relHum[cell] as number];
    return between(
      (hours - this.hoursBefore) / span,
      before,
      after,
      (span * (this.flowBefore[cell] as number)) / this.#slopeOf(cell, before),
      (span * (this.flow[cell] as number)) / this.#slopeOf(cell, after),
    );
  }

  #slopeOf(cell: number, relHum: number): number {
    if (cell === 0) return this.#system.air === null ? 1 : airSlopeAt(this.#system.air, relHum);
    return (this.dryMass[cell] as number) * slopeAt(this.#table, relHum);
  }

  /** Goes on to an hour, step by step; `afterStep` may read in between, and ends the run by returning true. */
  goOn(until: number, outside: Outside, afterStep?: () => boolean): void {
    this.#flows(outside(this.hours), this.flow);
    if (this.#nextStep <= 0) this.#nextStep = this.#firstStep();
    while (this.hours < until) {
      this.#step(until, outside);
      if (afterStep?.()) return;
    }
  }

  /** A step in which a hundred times the allowed error flows. */
  #firstStep(): number {
    let most = 0;
    for (let k = this.first; k < this.count; k++) most = Math.max(most, Math.abs(this.flow[k] as number));
    return most > 0 ? (100 * this.allowedError) / most : 1;
  }

  #step(until: number, outside: Outside): void {
    this.waterBefore.set(this.water);
    this.flowBefore.set(this.flow);
    this.relHumBefore.set(this.relHum);
    this.hoursBefore = this.hours;
    const outBefore = this.#outflow(outside(this.hoursBefore));
    const left = until - this.hoursBefore;
    for (;;) {
      const wanted = Math.min(this.#nextStep, this.longestStep);
      const lands = wanted >= left * (1 - 1e-9);
      // two even steps to the end instead of a long and a tiny one
      const step = lands ? left : Math.min(wanted, left / 2);
      const out = this.#stages(step, outside, outBefore);
      const error = Number.isFinite(out) ? this.#errorOf(step) : Number.POSITIVE_INFINITY;
      const growth = SAFETY * Math.cbrt(this.allowedError / Math.max(error, 1e-300));
      const grown = step * Math.min(MOST_GROWTH, Math.max(growth, MOST_SHRINK));
      if (error <= this.allowedError) {
        this.#nextStep = lands ? Math.max(grown, this.#nextStep) : grown;
        this.hours = lands ? until : this.hoursBefore + step;
        this.gone += out;
        this.effort.steps += 1;
        for (let k = this.first; k < this.count; k++)
          this.#drift[k] = ((this.relHum[k] as number) - (this.relHumBefore[k] as number)) / step;
        return;
      }
      this.effort.refused += 1;
      this.#nextStep = grown;
      if (!(grown > SHORTEST_STEP))
        throw new Error(
          `drying: the shortest step, ${SHORTEST_STEP} h, is too long at hour ${this.hoursBefore}; error ${error} kg, allowed ${this.allowedError} kg`,
        );
      this.relHum.set(this.relHumBefore);
    }
  }

  /** Both stages of a step. @returns kg gone out meanwhile; not a number when Newton did not end */
  #stages(step: number, outside: Outside, outBefore: number): number {
    const { water, waterBefore, flow, flowBefore, relHum, relHumBefore, count } = this;
    const share = STAGE * step;
    for (let k = this.first; k < count; k++) {
      this.#known[k] = (waterBefore[k] as number) + share * (flowBefore[k] as number);
      relHum[k] = (relHumBefore[k] as number) + GUESS * GAMMA * step * (this.#drift[k] as number);
    }
    const outsideMid = outside(this.hoursBefore + GAMMA * step);
    if (!this.#newton(share, outsideMid)) return Number.NaN;
    this.#settle(share, outsideMid, this.#waterMid, this.#flowMid);
    const outMid = this.#outflow(outsideMid);
    for (let k = this.first; k < count; k++) {
      this.#known[k] = MIDDLE * (this.#waterMid[k] as number) - BEFORE * (waterBefore[k] as number);
      // straight on from the beginning through the middle is a fair first guess of the end
      const before = relHumBefore[k] as number;
      relHum[k] = before + ((relHum[k] as number) - before) / GAMMA;
    }
    const outsideEnd = outside(this.hoursBefore + step);
    if (!this.#newton(share, outsideEnd)) return Number.NaN;
    this.#settle(share, outsideEnd, water, flow);
    return share * (MIDDLE * (outBefore + outMid) + this.#outflow(outsideEnd));
  }

  /** Seeks the relative humidities at which water = known + share · flow; most passes `MOST_PASSES`. */
  #newton(share: number, outside: number): boolean {
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      this.effort.passes += 1;
      if (this.#system.pass(this.relHum, this.#known, share, outside) <= NEWTON_MOVE) return true;
    }
    return false;
  }

  /** The flows at the relative humidities found, and the water they leave. */
  #settle(share: number, outside: number, water: Float64Array, flow: Float64Array): void {
    this.#flows(outside, flow);
    for (let k = this.first; k < this.count; k++)
      water[k] = (this.#known[k] as number) + share * (flow[k] as number);
  }

  #flows(outside: number, into: Float64Array): void {
    const { relHum, conductance, count } = this;
    const first = this.first;
    let through = (conductance[first] as number) * (outside - (relHum[first] as number));
    for (let k = first; k < count - 1; k++) {
      const next = (conductance[k + 1] as number) * ((relHum[k] as number) - (relHum[k + 1] as number));
      into[k] = through - next;
      through = next;
    }
    into[count - 1] = through;
  }

  #outflow(outside: number): number {
    return (this.conductance[this.first] as number) * ((this.relHum[this.first] as number) - outside);
  }

  /** Error of the step just tried, kg summed over the cells, passed through the step's own matrix once more: that takes out
   *  what the cells at the surface could not follow and have forgotten by the end of the step. */
  #errorOf(step: number): number {
    const { flow, flowBefore, count } = this;
    const flowMid = this.#flowMid;
    const error = this.#error;
    for (let k = this.first; k < count; k++) {
      const before = ERROR_0 * (flowBefore[k] as number);
      error[k] = step * (before + ERROR_1 * (flowMid[k] as number) + ERROR_2 * (flow[k] as number));
    }
    return this.#system.errorThrough(error, STAGE * step);
  }
}

/** Cubic through two values with their slopes times the span. */
function between(t: number, from: number, to: number, riseFrom: number, riseTo: number): number {
  const square = 3 * (to - from) - 2 * riseFrom - riseTo;
  const cubic = riseFrom + riseTo - 2 * (to - from);
  return from + t * (riseFrom + t * (square + t * cubic));
}

function sumFrom1(values: Float64Array): number {
  let sum = 0;
  for (let k = 1; k < values.length; k++) sum += values[k] as number;
  return sum;
}
