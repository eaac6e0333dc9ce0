/** Meters that a mould watch runs a series through. They change in place and make nothing new: a watch takes millions of readings. */
import { type GrowthClass, indexAfterDecline, indexAfterGrowth, isGrowing } from "../mould-growth.ts";
import { DOSE_HOURS, DOSE_WARMEST, dosePerDay } from "../mould-limits.ts";

/** Counts for how long something goes on without a break. Hours are hours since the series' own zero. */
export class RunMeter {
  /** Hours of all runs together. */
  hours = 0;
  longestHours = 0;
  longestFrom = Number.NaN;
  /** When a run first had lasted long enough. */
  firstLit = Number.NaN;
  /** The run going on, its hours 0 when there is none. */
  runHours = 0;
  runFrom = Number.NaN;
  readonly #enough: number;

  /** @param enough hours a run must last to light the lamp; 0: at once */
  constructor(enough: number) {
    this.#enough = enough;
  }

  step(isOn: boolean, from: number, stepHours: number): void {
    if (!isOn) {
      this.runHours = 0;
      return;
    }
    if (this.runHours === 0) this.runFrom = from;
    this.runHours += stepHours;
    this.hours += stepHours;
    if (this.runHours > this.longestHours) {
      this.longestHours = this.runHours;
      this.longestFrom = this.runFrom;
    }
    if (this.firstLit !== this.firstLit && this.runHours >= this.#enough - ROUNDING)
      this.firstLit = this.runFrom + this.#enough;
  }

  /** A gap: nothing is known of what came between. */
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
  #dryHours = 0;
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

  step(dryBulb: number, relHum: number, from: number, stepHours: number): void {
    if (!isGrowing(dryBulb, relHum, this.#class)) {
      if (this.index > 0)
        this.index = indexAfterDecline(this.index, this.#dryHours, stepHours, this.#decline);
      this.#dryHours += stepHours;
      return;
    }
    this.index = indexAfterGrowth(this.index, dryBulb, relHum, stepHours, this.#class);
    this.#dryHours = 0;
    if (this.index > this.highest) {
      this.highest = this.index;
      this.highestAt = from + stepHours;
    }
  }

  /** After a gap the index starts anew: what grew or died meanwhile is not known. */
  breakOff(): void {
    this.index = this.#start;
    this.#dryHours = 0;
  }
}

/** Sums the dose of 12 h means. */
export class DoseMeter {
  /** Days of full dose, never below 0. */
  dose = 0;
  highest = 0;
  highestAt = Number.NaN;
  /** Some 12 h were warmer than the dose model reaches: it was held at its warmest. */
  wasTooWarm = false;
  #hours = 0;
  #warmth = 0;
  #damp = 0;

  step(dryBulb: number, relHum: number, from: number, stepHours: number): void {
    let at = from;
    for (let left = stepHours; left > 0; ) {
      const part = Math.min(left, DOSE_HOURS - this.#hours);
      this.#hours += part;
      this.#warmth += dryBulb * part;
      this.#damp += relHum * part;
      left -= part;
      at += part;
      if (this.#hours >= DOSE_HOURS - ROUNDING) this.#settle(at);
    }
  }

  /** The last hours of a stretch are fewer than 12: they count for what they are. */
  breakOff(at: number): void {
    if (this.#hours > ROUNDING) this.#settle(at);
    this.dose = 0;
  }

  #settle(at: number): void {
    const mean = this.#warmth / this.#hours;
    if (mean > DOSE_WARMEST) this.wasTooWarm = true;
    const relHum = Math.min(1, this.#damp / this.#hours);
    const gained = (dosePerDay(Math.min(mean, DOSE_WARMEST), relHum) * this.#hours) / 24;
    this.dose = Math.max(0, this.dose + gained);
    if (this.dose > this.highest) {
      this.highest = this.dose;
      this.highestAt = at;
    }
    this.#hours = 0;
    this.#warmth = 0;
    this.#damp = 0;
  }
}
