/** Meters that a mould watch runs a series through. They change in place and make nothing new: a watch takes millions of readings. */
import type { Run } from "../climate-series.ts";
import {
  ceilingIfGrowing,
  type GrowthClass,
  indexAfterDecline,
  indexTowards,
  NOT_GROWING,
} from "../mould-growth.ts";
import { DOSE_HOURS, DOSE_WARMEST, dosePerDay } from "../mould-limits.ts";
import type { StepBlock } from "./step-block.ts";

// A value read from a column is a number: each loop stays below the block's count.

/** Counts for how long something goes on without a break. Moments are hours since the series' own zero; steps follow each other
 *  without a gap, so that nothing need be counted but where a run begins and ends. */
export class RunMeter {
  /** Hours of all runs together. */
  hours = 0;
  longestHours = 0;
  longestFrom = Number.NaN;
  /** When a run first had lasted long enough. */
  firstLit = Number.NaN;
  /** The run in which the series ended, its hours 0 when there is none. */
  runHours = 0;
  runFrom = Number.NaN;
  #isOn = false;
  #countedFrom = Number.NaN;
  readonly #enough: number;
  readonly #lit: Run[] | null;

  /** @param enough hours a run must last to light the lamp; 0: at once
   *  @param lit takes every stretch for which the lamp was lit, when that is wanted */
  constructor(enough: number, lit: Run[] | null = null) {
    this.#enough = enough;
    this.#lit = lit;
  }

  /** @param values one a step; on from `least` up   @param known when a step's value was known: 0 at its beginning, 1 at its end */
  through({ moments, count }: StepBlock, values: Float64Array, least: number, known: 0 | 1): void {
    let isOn = this.#isOn;
    for (let i = 0; i < count; i++) {
      if ((values[i] as number) >= least === isOn) continue;
      isOn = !isOn;
      this.#turn(isOn, moments[i] as number, moments[i + known] as number);
    }
  }

  #turn(isOn: boolean, from: number, known: number): void {
    if (!isOn) {
      this.endStretch(from);
      this.breakOff();
      return;
    }
    this.#isOn = true;
    this.#countedFrom = from;
    this.runFrom = known;
  }

  /** No reading follows within reach: the run going on is counted. */
  endStretch(at: number): void {
    if (!this.#isOn) return;
    this.#isOn = false;
    this.runHours = at - this.#countedFrom;
    this.hours += this.runHours;
    if (this.runHours > this.longestHours) {
      this.longestHours = this.runHours;
      this.longestFrom = this.runFrom;
    }
    if (this.runHours >= this.#enough - ROUNDING) this.#light(this.runFrom + this.#enough, at);
  }

  #light(from: number, to: number): void {
    if (Number.isNaN(this.firstLit)) this.firstLit = from;
    this.#lit?.push({ from, hours: Math.max(0, to - from) });
  }

  /** Others follow after a gap, of which nothing is known. */
  breakOff(): void {
    this.runHours = 0;
  }

  get isLit(): boolean {
    return !Number.isNaN(this.firstLit);
  }
  get isLitNow(): boolean {
    return this.runHours > 0 && this.runHours >= this.#enough - ROUNDING;
  }
}

/** Sums of many small steps fall short of whole hours by less than this, h. */
const ROUNDING = 1e-6;

/** Follows the mould index. */
export class IndexMeter {
  index: number;
  highest: number;
  highestAt = Number.NaN;
  #dryFrom = 0;
  readonly #start: number;
  readonly #class: GrowthClass;
  readonly #decline: number;

  constructor(start: number, growthClass: GrowthClass, declineFactor: number) {
    this.index = start;
    this.highest = start;
    this.#start = start;
    this.#class = growthClass;
    this.#decline = declineFactor;
  }

  /** Writes the index at the end of each step into the block. */
  through({ moments, temperature, relHum, index: indices, count }: StepBlock): void {
    let index = this.index;
    for (let i = 0; i < count; i++) {
      const T = temperature[i] as number;
      const phi = relHum[i] as number;
      const begin = moments[i] as number;
      const end = moments[i + 1] as number;
      const ceiling = ceilingIfGrowing(T, phi, this.#class);
      if (ceiling !== NOT_GROWING) {
        this.#dryFrom = end;
        index = indexTowards(ceiling, index, T, phi, end - begin, this.#class);
        if (index > this.highest) {
          this.highest = index;
          this.highestAt = end;
        }
      } else if (index > 0)
        index = indexAfterDecline(index, begin - this.#dryFrom, end - begin, this.#decline);
      indices[i] = index;
    }
    this.index = index;
  }

  /** After a gap the index starts anew: what grew or died meanwhile is not known. */
  startStretch(at: number): void {
    this.index = this.#start;
    this.#dryFrom = at;
  }
}

/** Sums the dose of 12 h means. */
export class DoseMeter {
  /** Days of full dose, never below 0. */
  dose = 0;
  highest = 0;
  highestAt = Number.NaN;
  /** The 12 h under way: where they began, and the sums over their hours. */
  #from = 0;
  #warmth = 0;
  #damp = 0;

  through({ moments, temperature, relHum, count }: StepBlock): void {
    for (let i = 0; i < count; ) {
      i = this.#within(moments, temperature, relHum, i, count);
      if (i === count) return;
      this.#stepAcross(
        temperature[i] as number,
        relHum[i] as number,
        moments[i] as number,
        moments[i + 1] as number,
      );
      i++;
    }
  }

  /** Sums the steps that end before the 12 h do.   @returns the first that does not, or `count` */
  #within(
    moments: Float64Array,
    temperature: Float64Array,
    relHum: Float64Array,
    first: number,
    count: number,
  ): number {
    const until = this.#from + (DOSE_HOURS - ROUNDING);
    let warmth = this.#warmth;
    let damp = this.#damp;
    let i = first;
    for (; i < count && (moments[i + 1] as number) < until; i++) {
      const hours = (moments[i + 1] as number) - (moments[i] as number);
      warmth += (temperature[i] as number) * hours;
      damp += (relHum[i] as number) * hours;
    }
    this.#warmth = warmth;
    this.#damp = damp;
    return i;
  }

  #stepAcross(dryBulb: number, relHum: number, from: number, to: number): void {
    for (let at = from; at < to; ) {
      const until = Math.min(to, this.#from + DOSE_HOURS);
      this.#warmth += dryBulb * (until - at);
      this.#damp += relHum * (until - at);
      at = until;
      if (at - this.#from >= DOSE_HOURS - ROUNDING) this.#settle(at);
    }
  }

  startStretch(at: number): void {
    this.dose = 0;
    this.#from = at;
  }

  /** The last hours of a stretch are fewer than 12: they count for what they are. */
  endStretch(at: number): void {
    if (at - this.#from > ROUNDING) this.#settle(at);
  }

  #settle(at: number): void {
    const hours = at - this.#from;
    const mean = Math.min(DOSE_WARMEST, this.#warmth / hours);
    const relHum = Math.min(1, this.#damp / hours);
    const gained = (dosePerDay(mean, relHum) * hours) / 24;
    this.dose = Math.max(0, this.dose + gained);
    if (this.dose > this.highest) {
      this.highest = this.dose;
      this.highestAt = at;
    }
    this.#from = at;
    this.#warmth = 0;
    this.#damp = 0;
  }
}
