import { LEAST_RELHUM, type SorptionTable } from "../../sorption/sorption-table.ts";
import { type AirCell, airSlopeAt, airWaterAt } from "./air-cell.ts";

/** The equations of one stage of a step, water = known + share · flow in every cell, with their tridiagonal matrix as the last Newton
 *  pass left it. The loops touch plain arrays only and make nothing new; every index lies below the count of cells or the length of
 *  the table, which is what the casts to number say. */
export class RowSystem {
  /** What cell 0 holds; null when it is not in use. */
  air: AirCell | null = null;
  /** How fast the water of each cell rises with its relative humidity, kg. */
  readonly slope: Float64Array;
  readonly #table: SorptionTable;
  readonly #dryMass: Float64Array;
  readonly #conductance: Float64Array;
  readonly #diagonal: Float64Array;
  readonly #right: Float64Array;

  /** @param dryMass, conductance of the row, one for each cell; read, never written */
  constructor(table: SorptionTable, dryMass: Float64Array, conductance: Float64Array) {
    this.#table = table;
    this.#dryMass = dryMass;
    this.#conductance = conductance;
    this.slope = new Float64Array(dryMass.length);
    this.#diagonal = new Float64Array(dryMass.length);
    this.#right = new Float64Array(dryMass.length);
  }

  /** First cell in use. */
  get first(): number {
    return this.air === null ? 1 : 0;
  }

  /** One Newton pass: down the row taking out the lower side of the matrix, up again moving the cells.
   *  @returns the furthest any cell moved, relative humidity */
  pass(relHum: Float64Array, known: Float64Array, share: number, outside: number): number {
    const { first, slope } = this;
    const dryMass = this.#dryMass;
    const conductance = this.#conductance;
    const count = relHum.length;
    const { content, rise, step } = this.#table;
    const last = content.length - 2;
    const diagonal = this.#diagonal;
    const right = this.#right;
    let outward = outside;
    let here = relHum[first] as number;
    let sideOut = conductance[first] as number;
    for (let k = first; k < count; k++) {
      const inward = k + 1 < count ? (relHum[k + 1] as number) : here;
      const sideIn = k + 1 < count ? (conductance[k + 1] as number) : 0;
      let held: number;
      let rising: number;
      if (k === 0) {
        held = airWaterAt(this.air as AirCell, here);
        rising = airSlopeAt(this.air as AirCell, here);
      } else {
        // `contentAt` and `slopeAt` in one, as this is where the time goes
        const place = (here - LEAST_RELHUM) / step;
        const i = place <= 0 ? 0 : place >= last ? last : Math.floor(place);
        const t = place - i;
        const c0 = content[i] as number;
        const c1 = content[i + 1] as number;
        const r0 = rise[i] as number;
        const r1 = rise[i + 1] as number;
        const mass = dryMass[k] as number;
        if (t >= 0 && t <= 1) {
          const square = 3 * (c1 - c0) - 2 * r0 - r1;
          const cubic = r0 + r1 - 2 * (c1 - c0);
          held = mass * (c0 + t * (r0 + t * (square + t * cubic)));
          rising = (mass * (r0 + t * (2 * square + 3 * t * cubic))) / step;
        } else {
          held = mass * (t < 0 ? c0 + t * r0 : c1 + (t - 1) * r1);
          rising = (mass * (t < 0 ? r0 : r1)) / step;
        }
      }
      slope[k] = rising;
      const flow = sideOut * (outward - here) - sideIn * (here - inward);
      let d = rising + share * (sideOut + sideIn);
      let r = (known[k] as number) - held + share * flow;
      if (k > first) {
        const link = share * sideOut;
        const factor = link / (diagonal[k - 1] as number);
        d -= factor * link;
        r += factor * (right[k - 1] as number);
      }
      diagonal[k] = d;
      right[k] = r;
      outward = here;
      here = inward;
      sideOut = sideIn;
    }
    let move = 0;
    let furthest = 0;
    for (let k = count - 1; k >= first; k--) {
      const link = k + 1 < count ? share * (conductance[k + 1] as number) : 0;
      move = ((right[k] as number) + link * move) / (diagonal[k] as number);
      relHum[k] = (relHum[k] as number) + move;
      const far = move < 0 ? -move : move;
      if (!(far <= furthest)) furthest = far; // true for what is no number, too
    }
    return furthest;
  }

  /** An error of each cell (kg) through the matrix.   @returns kg, summed over the cells */
  errorThrough(error: Float64Array, share: number): number {
    const { first, slope } = this;
    const conductance = this.#conductance;
    const count = error.length;
    const diagonal = this.#diagonal;
    const right = this.#right;
    for (let k = first; k < count; k++) {
      let r = error[k] as number;
      if (k > first) {
        const link = share * (conductance[k] as number);
        r += (link / (diagonal[k - 1] as number)) * (right[k - 1] as number);
      }
      right[k] = r;
    }
    let move = 0;
    let total = 0;
    for (let k = count - 1; k >= first; k--) {
      const link = k + 1 < count ? share * (conductance[k + 1] as number) : 0;
      move = ((right[k] as number) + link * move) / (diagonal[k] as number);
      total += Math.abs(move) * (slope[k] as number);
    }
    return total;
  }
}
