/**
 * The mould watch: a long series of readings under three lamps together, with the dose model as a second opinion.
 *
 * 1. damp: 65 % or more at the surface for 48 hours. Watch.
 * 2. critical: above the critical-humidity parabola of the readiest surfaces. Act.
 * 3. index: the VTT mould index reaches 1. Act; from 3 it can be seen.
 *
 * No lamp is an all-clear: the index is blind below 80 %, and a series tells only of the place where the logger lay.
 */

import { satPressureRatio } from "../air/moist-air.ts";
import { OutOfRange, withinRange } from "../out-of-range.ts";
import { DoseMeter, IndexMeter, RunMeter } from "./_internals/mould-meters.ts";
import { StepBlock } from "./_internals/step-block.ts";
import { GROWTH_CLASSES, type GrowthClassName } from "./mould-growth.ts";
import {
  CRITICAL_DOSE_DAYS,
  CURVATURE,
  DAMP_HOURS,
  DAMP_RELHUM,
  heldCriticalRelHum,
  PARABOLA_RANGE,
  type SurfaceGroup,
} from "./mould-limits.ts";

/** Readings of one logger, oldest first. A reading stands until the next one; the last ends the series. */
export interface ClimateSeries {
  /** Hours since 1970-01-01, strictly rising, one for each reading; or the first and the even step between readings. */
  readonly hours: Float64Array | { readonly start: number; readonly step: number };
  /** Air, °C. NaN in any column: no reading at that moment. */
  readonly dryBulb: Float64Array;
  /** Air, 0 to 1. Up to 1.05 is taken as saturated, since loggers over-read there. */
  readonly relHum: Float64Array;
  /** Temperature of the coldest surface, °C. Where it is colder than the air, growth is judged at the surface. */
  readonly surface?: Float64Array;
}

export interface WatchRules {
  /** `very-sensitive` unless told. */
  readonly growthClass: GrowthClassName;
  /** How fast the index recedes when dry, 0 to 1; 0.25 unless told. */
  readonly declineFactor: number;
  /** Index at the start, 0 to 6: above 0 when mould has grown there before. */
  readonly startIndex: number;
  /** Group of the parabola; `a`, the readiest, unless told. */
  readonly surfaceGroup: SurfaceGroup;
}

export const USUAL_RULES: WatchRules = {
  growthClass: "very-sensitive",
  declineFactor: 0.25,
  startIndex: 0,
  surfaceGroup: "a",
};

/** Something that went on without a break. Moments are hours since 1970-01-01. */
export interface Run {
  readonly from: number;
  readonly hours: number;
}
export interface Lamp {
  /** At any time in the series. */
  readonly isLit: boolean;
  /** At the end of the series. */
  readonly isLitNow: boolean;
  readonly firstLit: number | null;
  readonly longest: Run | null;
  /** What is still going on at the end. */
  readonly now: Run | null;
  /** Hours of all runs together. */
  readonly hours: number;
}
export interface Moment {
  readonly at: number;
  readonly relHum: number;
  readonly temperature: number;
}
export type WatchReason =
  | { readonly code: "damp-too-long" | "above-critical"; readonly hours: number; readonly from: number }
  | { readonly code: "index-at-one" | "index-visible"; readonly index: number; readonly at: number }
  | { readonly code: "dose-reached"; readonly days: number; readonly at: number };

export interface MouldWatch {
  /** `unknown`: no two readings within 6 hours. `quiet`: no lamp, which is no all-clear. */
  readonly state: "unknown" | "quiet" | "watch" | "act";
  /** The same at the end of the series. */
  readonly stateNow: "unknown" | "quiet" | "watch" | "act";
  readonly damp: Lamp;
  /** With the degree counted: hours above, times how far above (fraction · h). */
  readonly critical: Lamp & { readonly excessHours: number };
  readonly index: Lamp & {
    readonly growthClass: GrowthClassName;
    readonly highest: number;
    readonly atEnd: number;
    readonly firstVisible: number | null;
  };
  /** Second opinion: days of full dose, and whether it parts from the index. */
  readonly dose: { readonly highest: number; readonly share: number; readonly disagrees: boolean };
  readonly dampest: Moment | null;
  /** Where the humidity stood furthest above the parabola (or least below it). */
  readonly furthest: (Moment & { readonly excess: number }) | null;
  /** Stretches without a gap of more than 6 h; each is judged by itself. */
  readonly stretches: readonly Run[];
  readonly readings: { readonly used: number; readonly missing: number };
  readonly reasons: readonly WatchReason[];
  readonly cautions: readonly WatchCaution[];
}
export type WatchCaution =
  | "vtt-alone-is-no-all-clear"
  | "quiet-is-no-all-clear"
  | "index-blind-below-80"
  | "second-opinion-disagrees"
  | "series-has-gaps"
  | "air-not-surface"
  | "reading-above-saturation"
  | "warmer-than-fitted"
  | "no-readings";

/** Longest step over which a reading may stand, h. Source: the index is not additive over gaps; the 6 h are common practice, no source. */
export const LONGEST_STEP = 6;
const OVER_READ = 1.05;
/** A reading beyond these is no reading, °C. */
const COLDEST = -60;
const WARMEST = 90;

/** Watches over a series of any length; time grows with the number of readings alone.
 *  @throws OutOfRange naming the reading when a temperature is outside −60 to 90 °C, a humidity outside 0 to 1.05, or time does not rise
 *  @throws RangeError when the columns differ in length */
export function watchMould(series: ClimateSeries, given: Partial<WatchRules> = {}): MouldWatch {
  const rules = { ...USUAL_RULES, ...given };
  checkLengths(series);
  withinRange("index at the start", rules.startIndex, "1", 0, 6);
  withinRange("decline factor", rules.declineFactor, "1", 0, 1);
  const watch = new Watch(rules);
  watch.readThrough(series);
  return watch.result(zeroOf(series), series.surface === undefined);
}

function checkLengths({ hours, dryBulb, relHum, surface }: ClimateSeries): void {
  const times = hours instanceof Float64Array ? hours.length : relHum.length;
  const lengths = [times, dryBulb.length, surface?.length ?? relHum.length];
  if (lengths.some((length) => length !== relHum.length))
    throw new RangeError(
      `The columns differ in length: ${relHum.length} humidities, but ${lengths.join(", ")}`,
    );
  if (!(hours instanceof Float64Array)) withinRange("step between readings", hours.step, "h", 1e-4, 8760);
}

/** Moments are counted from the first reading, so that steps of minutes keep their digits. */
const zeroOf = ({ hours }: ClimateSeries): number =>
  hours instanceof Float64Array ? (hours[0] ?? 0) : hours.start;

/** Relative humidity where it is colder: in the air or at the surface. */
function relHumOfColder(air: number, humidity: number, wall: number): number {
  const relHum = Math.min(1, humidity);
  return wall < air ? Math.min(1, relHum * satPressureRatio(air, wall)) : relHum;
}

/** The meters, and the one pass through them. */
class Watch {
  readonly #rules: WatchRules;
  readonly #curvature: number;
  readonly #damp = new RunMeter(DAMP_HOURS);
  readonly #critical = new RunMeter(0);
  readonly #atOne = new RunMeter(0);
  readonly #visible = new RunMeter(0);
  readonly #index: IndexMeter;
  readonly #dose = new DoseMeter();
  readonly #block = new StepBlock();
  readonly #stretches: Run[] = [];
  #used = 0;
  #missing = 0;
  #excessHours = 0;
  #wasOverRead = false;
  #wasTooWarm = false;
  #stretchFrom = Number.NaN;
  /** The dampest reading, and the one furthest above the parabola. */
  #dampest: Moment | null = null;
  #furthest: (Moment & { readonly excess: number }) | null = null;

  constructor(rules: WatchRules) {
    this.#rules = rules;
    this.#curvature = CURVATURE[rules.surfaceGroup];
    this.#index = new IndexMeter(rules.startIndex, GROWTH_CLASSES[rules.growthClass], rules.declineFactor);
  }

  /** One pass over the readings; a column that has none at a moment leaves the reading before standing. */
  readThrough(series: ClimateSeries): void {
    const { relHum: humidities, dryBulb, surface, hours } = series;
    const walls = surface ?? dryBulb;
    const times = hours instanceof Float64Array ? hours : null;
    const step = hours instanceof Float64Array ? 0 : hours.step;
    const zero = zeroOf(series);
    const block = this.#block;
    let [dampest, furthest] = [-1, -2]; // below every humidity, and every excess
    let [at, T, relHum, excess] = [Number.NaN, Number.NaN, Number.NaN, Number.NaN];
    for (let i = 0; i < humidities.length; i++) {
      // Every column is as long as the humidities: checked on entry.
      const air = dryBulb[i] as number;
      const humidity = humidities[i] as number;
      const wall = walls[i] as number;
      if (Number.isNaN(air + humidity + wall)) {
        this.#missing++;
        continue;
      }
      const now = times === null ? i * step : (times[i] as number) - zero;
      if (!isReading(air, humidity, wall) || now <= at) refuse(i + 1, at, now, air, humidity, wall);
      if (block.isFull) this.#throughMeters();
      if (now - at <= LONGEST_STEP) block.add(now, T, relHum, excess);
      else this.#startStretch(at, now);
      at = now;
      T = wall < air ? wall : air;
      relHum = relHumOfColder(air, humidity, wall);
      excess = relHum - heldCriticalRelHum(T, this.#curvature);
      if (humidity > 1) this.#wasOverRead = true;
      if (T > PARABOLA_RANGE.high) this.#wasTooWarm = true;
      if (relHum > dampest) {
        dampest = relHum;
        this.#dampest = { at, relHum, temperature: T };
      }
      if (excess > furthest) {
        furthest = excess;
        this.#furthest = { at, relHum, temperature: T, excess };
      }
    }
    this.#used = humidities.length - this.#missing;
    this.#endStretch(at);
  }

  /** The steps of the block through every meter. */
  #throughMeters(): void {
    const block = this.#block;
    this.#damp.through(block, block.relHum, DAMP_RELHUM, 0);
    this.#critical.through(block, block.excess, Number.MIN_VALUE, 0);
    this.#excessHours += excessHoursOf(block);
    this.#index.through(block);
    this.#atOne.through(block, block.index, 1, 1);
    this.#visible.through(block, block.index, 3, 1);
    this.#dose.through(block);
    block.goOn();
  }

  /** @param last moment of the reading before, NaN when there is none */
  #startStretch(last: number, at: number): void {
    this.#endStretch(last);
    for (const run of this.#runs()) run.breakOff();
    this.#index.startStretch(at);
    this.#dose.startStretch(at);
    this.#block.startStretch(at);
    this.#stretchFrom = at;
  }

  #endStretch(at: number): void {
    if (Number.isNaN(at)) return;
    this.#throughMeters();
    for (const run of this.#runs()) run.endStretch(at);
    this.#dose.endStretch(at);
    this.#stretches.push({ from: this.#stretchFrom, hours: at - this.#stretchFrom });
  }

  #runs(): RunMeter[] {
    return [this.#damp, this.#critical, this.#atOne, this.#visible];
  }

  result(zero: number, isAirOnly: boolean): MouldWatch {
    const isKnown = this.#stretches.some((stretch) => stretch.hours > 0);
    const damp = lampOf(this.#damp, zero);
    const critical = { ...lampOf(this.#critical, zero), excessHours: this.#excessHours };
    const index = { ...lampOf(this.#atOne, zero), ...this.#indexResult(zero) };
    const dose = this.#doseResult();
    const isDose = dose.share >= 1;
    const state = stateOf(isKnown, damp.isLit || isDose, critical.isLit || index.isLit);
    return {
      state,
      stateNow: stateOf(isKnown, damp.isLitNow, critical.isLitNow || index.isLitNow),
      damp,
      critical,
      index,
      dose,
      dampest: this.#dampest && { ...this.#dampest, at: zero + this.#dampest.at },
      furthest: this.#furthest && { ...this.#furthest, at: zero + this.#furthest.at },
      stretches: this.#stretches.map(({ from, hours }) => ({ from: zero + from, hours })),
      readings: { used: this.#used, missing: this.#missing },
      reasons: this.#reasons(zero, damp, critical, index),
      cautions: this.#cautions(state, isAirOnly, damp.isLit || critical.isLit, dose.disagrees),
    };
  }

  #indexResult(zero: number) {
    return {
      growthClass: this.#rules.growthClass,
      highest: this.#index.highest,
      atEnd: this.#index.index,
      firstVisible: this.#visible.isLit ? zero + this.#visible.firstLit : null,
    };
  }

  #doseResult() {
    const share = this.#dose.highest / CRITICAL_DOSE_DAYS;
    return { highest: this.#dose.highest, share, disagrees: share >= 1 !== this.#index.highest >= 1 };
  }

  #reasons(zero: number, damp: Lamp, critical: Lamp, index: MouldWatch["index"]): WatchReason[] {
    const reasons: WatchReason[] = [];
    const at = zero + this.#index.highestAt;
    if (damp.isLit && damp.longest) reasons.push({ code: "damp-too-long", ...damp.longest });
    if (critical.isLit && critical.longest) reasons.push({ code: "above-critical", ...critical.longest });
    if (index.isLit)
      reasons.push({ code: index.highest >= 3 ? "index-visible" : "index-at-one", index: index.highest, at });
    if (this.#dose.highest >= CRITICAL_DOSE_DAYS)
      reasons.push({ code: "dose-reached", days: this.#dose.highest, at: zero + this.#dose.highestAt });
    return reasons;
  }

  #cautions(
    state: MouldWatch["state"],
    isAirOnly: boolean,
    isDamp: boolean,
    disagrees: boolean,
  ): WatchCaution[] {
    const holds: Record<WatchCaution, boolean> = {
      "no-readings": state === "unknown",
      "vtt-alone-is-no-all-clear": true,
      "quiet-is-no-all-clear": state === "quiet",
      "index-blind-below-80": isDamp && this.#index.highest < 1,
      "second-opinion-disagrees": disagrees,
      "series-has-gaps": this.#stretches.length > 1,
      "air-not-surface": isAirOnly,
      "reading-above-saturation": this.#wasOverRead,
      "warmer-than-fitted": this.#wasTooWarm,
    };
    return (Object.keys(holds) as WatchCaution[]).filter((code) => holds[code]);
  }
}

/** How long above the critical humidity, times how far. */
function excessHoursOf({ moments, excess, count }: StepBlock): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    // i is below the count, and there is one moment more than steps
    const above = excess[i] as number;
    if (above > 0) sum += above * ((moments[i + 1] as number) - (moments[i] as number));
  }
  return sum;
}

const isReading = (air: number, humidity: number, wall: number): boolean =>
  air >= COLDEST &&
  air <= WARMEST &&
  wall >= COLDEST &&
  wall <= WARMEST &&
  humidity >= 0 &&
  humidity <= OVER_READ;

/** Says what is wrong with the reading of that place in the series, from 1. */
function refuse(n: number, before: number, at: number, air: number, humidity: number, wall: number): never {
  if (at <= before) throw new OutOfRange(`hours of reading ${n}`, at, "h", before, Number.POSITIVE_INFINITY);
  withinRange(`temperature of reading ${n}`, air, "°C", COLDEST, WARMEST);
  withinRange(`surface of reading ${n}`, wall, "°C", COLDEST, WARMEST);
  throw new OutOfRange(`relative humidity of reading ${n}`, humidity, "1", 0, OVER_READ);
}

function stateOf(isKnown: boolean, isWatch: boolean, isAct: boolean): MouldWatch["state"] {
  if (!isKnown) return "unknown";
  if (isAct) return "act";
  return isWatch ? "watch" : "quiet";
}

const lampOf = (run: RunMeter, zero: number): Lamp => ({
  isLit: run.isLit,
  isLitNow: run.isLitNow,
  firstLit: run.isLit ? zero + run.firstLit : null,
  longest: run.longestHours > 0 ? { from: zero + run.longestFrom, hours: run.longestHours } : null,
  now: run.runHours > 0 ? { from: zero + run.runFrom, hours: run.runHours } : null,
  hours: run.hours,
});
