import { satPressureRatio } from "../../air/moist-air.ts";
import { OutOfRange, withinRange } from "../../out-of-range.ts";
import { type ClimateSeries, LONGEST_STEP, type Run } from "../climate-series.ts";
import { GROWTH_CLASSES } from "../mould-growth.ts";
import { CURVATURE, DAMP_HOURS, DAMP_RELHUM, heldCriticalRelHum, PARABOLA_RANGE } from "../mould-limits.ts";
import type { WatchRules } from "../watch-rules.ts";
import { DoseMeter, IndexMeter, RunMeter } from "./mould-meters.ts";
import { StepBlock } from "./step-block.ts";
import type { TrackRecord } from "./track-record.ts";

const OVER_READ = 1.05;
/** A reading beyond these is no reading, °C. */
const COLDEST = -60;
const WARMEST = 90;

/** A reading. Moments are hours since the series' own zero. */
interface ReadingAt {
  readonly at: number;
  readonly relHum: number;
  readonly temperature: number;
}

/** One pass of a series through every meter. Moments are hours since the series' own zero. */
export class SeriesPass {
  readonly damp: RunMeter;
  readonly critical: RunMeter;
  readonly atOne: RunMeter;
  readonly visible = new RunMeter(0);
  readonly index: IndexMeter;
  readonly dose = new DoseMeter();
  /** Stretches without a gap. */
  readonly stretches: Run[] = [];
  used = 0;
  missing = 0;
  /** Hours above the critical humidity, times how far above. */
  excessHours = 0;
  wasOverRead = false;
  wasTooWarm = false;
  dampest: ReadingAt | null = null;
  /** The reading furthest above the parabola. */
  furthest: (ReadingAt & { readonly excess: number }) | null = null;
  readonly #curvature: number;
  readonly #block = new StepBlock();
  readonly #record: TrackRecord | null;
  #stretchFrom = Number.NaN;

  /** @param record where the way is put down, when it is wanted */
  constructor(rules: WatchRules, record: TrackRecord | null = null) {
    this.#curvature = CURVATURE[rules.surfaceGroup];
    this.#record = record;
    this.damp = new RunMeter(DAMP_HOURS, record?.damp);
    this.critical = new RunMeter(0, record?.critical);
    this.atOne = new RunMeter(0, record?.atOne);
    this.index = new IndexMeter(rules.startIndex, GROWTH_CLASSES[rules.growthClass], rules.declineFactor);
  }

  /** One pass over the readings; a column that has none at a moment leaves the reading before standing.
   *  @throws OutOfRange naming the reading that is none, RangeError when the columns differ in length */
  readThrough(series: ClimateSeries): void {
    checkLengths(series);
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
        this.missing++;
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
      if (humidity > 1) this.wasOverRead = true;
      if (T > PARABOLA_RANGE.high) this.wasTooWarm = true;
      if (relHum > dampest) {
        dampest = relHum;
        this.dampest = { at, relHum, temperature: T };
      }
      if (excess > furthest) {
        furthest = excess;
        this.furthest = { at, relHum, temperature: T, excess };
      }
    }
    this.used = humidities.length - this.missing;
    this.#endStretch(at);
  }

  /** The steps of the block through every meter. */
  #throughMeters(): void {
    const block = this.#block;
    this.damp.through(block, block.relHum, DAMP_RELHUM, 0);
    this.critical.through(block, block.excess, Number.MIN_VALUE, 0);
    this.excessHours += excessHoursOf(block);
    this.index.through(block);
    this.atOne.through(block, block.index, 1, 1);
    this.visible.through(block, block.index, 3, 1);
    this.dose.through(block);
    this.#record?.steps(block);
    block.goOn();
  }

  /** @param last moment of the reading before, NaN when there is none */
  #startStretch(last: number, at: number): void {
    this.#endStretch(last);
    for (const run of this.#runs()) run.breakOff();
    this.index.startStretch(at);
    this.dose.startStretch(at);
    this.#block.startStretch(at);
    this.#record?.startStretch(at, this.index.index);
    this.#stretchFrom = at;
  }

  #endStretch(at: number): void {
    if (Number.isNaN(at)) return;
    this.#throughMeters();
    for (const run of this.#runs()) run.endStretch(at);
    this.dose.endStretch(at);
    this.stretches.push({ from: this.#stretchFrom, hours: at - this.#stretchFrom });
  }

  #runs(): RunMeter[] {
    return [this.damp, this.critical, this.atOne, this.visible];
  }
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
export const zeroOf = ({ hours }: ClimateSeries): number =>
  hours instanceof Float64Array ? (hours[0] ?? 0) : hours.start;

/** Relative humidity where it is colder: in the air or at the surface. */
export function relHumOfColder(air: number, humidity: number, wall: number): number {
  const relHum = Math.min(1, humidity);
  return wall < air ? Math.min(1, relHum * satPressureRatio(air, wall)) : relHum;
}

/** Hours above the critical humidity, times how far above. */
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
