import {
  GROWTH_CLASSES,
  type Growth,
  type GrowthClassName,
  growthAfter,
} from "../../../../core/physics/mould/mould-growth.ts";
import {
  criticalRelHum,
  DAMP_HOURS,
  DAMP_RELHUM,
  PARABOLA_RANGE,
} from "../../../../core/physics/mould/mould-limits.ts";
import { LONGEST_STEP, USUAL_RULES } from "../../../../core/physics/mould/mould-watch.ts";
import { type AirSeries, judgedRelHum } from "../air-series.ts";

/* The mould watch along its way, for drawing: index and lamps at every reading, by the same limits as the watch. */

/** A stretch of time, hours since 1970-01-01. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}
export interface Track {
  readonly hours: Float64Array;
  readonly dryBulb: Float64Array;
  /** Per cent, where mould is judged. */
  readonly percent: Float64Array;
  readonly index: Float64Array;
  /** Damp, critical, index. */
  readonly lamps: readonly [readonly Stretch[], readonly Stretch[], readonly Stretch[]];
}

export function trackOf(series: AirSeries, growthClass: GrowthClassName): Track {
  const { hours, dryBulb, surface } = series;
  const relHum = judgedRelHum(series);
  const index = new Float64Array(hours.length).fill(Number.NaN);
  const lamps = [new LampTrack(DAMP_HOURS), new LampTrack(0), new LampTrack(0)] as const;
  const [damp, critical, atOne] = lamps;
  let growth: Growth = { index: 0, dryHours: 0 };
  let before = -1;
  for (let i = 0; i < hours.length; i++) {
    const [at, phi] = [hours[i] as number, relHum[i] as number]; // i stays below the length
    if (Number.isNaN(phi + (dryBulb[i] as number))) continue;
    const stands = before < 0 ? Number.POSITIVE_INFINITY : at - (hours[before] as number);
    if (stands > LONGEST_STEP) {
      growth = { index: 0, dryHours: 0 };
      for (const lamp of lamps) lamp.breakOff();
    } else {
      const [T, was] = [judgedAt(dryBulb, surface, before), relHum[before] as number];
      const span = { from: at - stands, to: at };
      growth = growthAfter(growth, T, was, stands, GROWTH_CLASSES[growthClass], USUAL_RULES.declineFactor);
      damp.step(was >= DAMP_RELHUM, span);
      critical.step(was > criticalAt(T), span);
      atOne.step(growth.index >= 1, span);
    }
    index[i] = growth.index;
    before = i;
  }
  for (const lamp of lamps) lamp.breakOff();
  const percent = relHum.map((value) => 100 * value);
  return { hours, dryBulb, percent, index, lamps: [damp.lit, critical.lit, atOne.lit] };
}

const judgedAt = (dryBulb: Float64Array, surface: Float64Array | undefined, i: number): number =>
  Math.min(dryBulb[i] as number, surface?.[i] ?? Number.POSITIVE_INFINITY);

/** The parabola of the readiest surfaces, held at the ends of its range as the watch does. */
const criticalAt = (T: number): number =>
  Math.min(
    1,
    criticalRelHum(Math.min(PARABOLA_RANGE.high, Math.max(PARABOLA_RANGE.low, T)), USUAL_RULES.surfaceGroup),
  );

/** Gathers the stretches in which one lamp is lit: from when a run has lasted long enough until it ends. */
class LampTrack {
  readonly lit: Stretch[] = [];
  readonly #enough: number;
  #from = Number.NaN;
  #to = Number.NaN;

  constructor(enough: number) {
    this.#enough = enough;
  }

  step(isOn: boolean, { from, to }: Stretch): void {
    if (!isOn) this.breakOff();
    else {
      if (Number.isNaN(this.#from)) this.#from = from;
      this.#to = to;
    }
  }

  breakOff(): void {
    const since = this.#from + this.#enough;
    if (this.#to >= since) this.lit.push({ from: since, to: this.#to });
    this.#from = Number.NaN;
    this.#to = Number.NaN;
  }
}
