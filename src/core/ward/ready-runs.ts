import { filmFromHeatTransfer, STILL_AIR_HEAT_TRANSFER } from "../physics/drying/diffusion.ts";
import { type DryingPrecision, DryingRun } from "../physics/drying/drying.ts";
import { type BagReading, RELEASE, USUAL_READER_ERROR } from "./bag-state.ts";
import { type Observation, type Seen, stagesOf, type WardCase, type WardStage } from "./ward-case.ts";

/* The drying model over a grid of permeability and film, and what each run foretells of reader and scale.
 * Casts say that an index lies within rows and columns. */

/** Nine in ten lie within a factor `spread`: so many standard deviations of a normal distribution. */
export const NINE_IN_TEN = 1.645;
/** Runs along the permeability, as standard deviations of what is assumed. */
const PERMEABILITY_RUNS = 7;
const PERMEABILITY_REACH = 2.4;
/** Factors tried on the film; nine in ten within 2. Common practice, no source. */
const FILMS = [0.5, 1, 2] as const;
/** Above this Biot number the film no longer shows and is not tried. */
const FILM_SHOWS_BELOW = 20;
/** Shifts of start and target, as standard deviations of the reader: a point of the five-point rule they are weighed by. */
const SHIFT = 1.3556;
const HORIZON = 3 * 8766; // h
/** The dampest an item is started from; above, free water lies in it, which the model does not know. */
export const MOST_START = 0.985;

/** Places in a row of ready hours: to the target, to one a step above, and both again for an item that started a step damper. */
export const READY = { count: 4, plain: 0, lateTarget: 1, damperStart: 2, both: 3 } as const;

/** What the runs of one film foretell: one row for each permeability tried. */
export interface Sheet {
  readonly film: number;
  /** Rows of `READY` values: ln of the hours from start to ready; infinite: not within the horizon. */
  readonly ready: Float64Array;
  /** Rows of one value for each observation: what is foretold, and what more when the item started a `step` damper. */
  readonly foretold: Float64Array;
  readonly damper: Float64Array;
}

export interface Grid {
  /** ln of the permeability factors run. */
  readonly logs: Float64Array;
  readonly sheets: readonly Sheet[];
  /** By how much start and target are shifted to see what that does, relative humidity. */
  readonly step: number;
  /** Standard deviation of the error all readings share. */
  readonly readerSd: number;
}

export function gridOf(ward: WardCase, start: BagReading, seen: Seen, precision: DryingPrecision): Grid {
  const { body, dryBulb } = ward;
  const reach = (PERMEABILITY_REACH * Math.log(body.spread)) / NINE_IN_TEN;
  const logs = Float64Array.from(
    { length: PERMEABILITY_RUNS },
    (_, i) => reach * ((2 * i) / (PERMEABILITY_RUNS - 1) - 1),
  );
  const still = filmFromHeatTransfer(STILL_AIR_HEAT_TRANSFER, dryBulb);
  const biot = (still * body.depth) / (body.taper + 1) / body.permeability;
  const films = biot > FILM_SHOWS_BELOW ? [1] : FILMS;
  const readerSd = (start.error ?? USUAL_READER_ERROR) / 2;
  const step = SHIFT * readerSd;
  const teller = new Teller(new DryingRun(body, dryBulb, precision), ward, start, seen.observations, step);
  return {
    logs,
    step,
    readerSd,
    sheets: films.map((film) => sheetOf(teller, film, logs, seen.observations.length)),
  };
}

function sheetOf(teller: Teller, film: number, logs: Float64Array, columns: number): Sheet {
  const rows = logs.length;
  const ready = new Float64Array(rows * READY.count);
  const foretold = new Float64Array(rows * columns);
  const damper = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    const factor = Math.exp(logs[row] as number);
    const place = row * columns;
    teller.tell(factor, film, false, foretold, place, ready, row * READY.count);
    teller.tell(factor, film, true, damper, place, ready, row * READY.count + READY.damperStart);
    for (let c = place; c < place + columns; c++) damper[c] = (damper[c] as number) - (foretold[c] as number);
  }
  return { film, ready, foretold, damper };
}

/** Runs the drying model through the stages of one item and tells what the reader and the scale would have shown. */
class Teller {
  readonly #run: DryingRun;
  readonly #start: BagReading;
  readonly #stages: readonly WardStage[];
  readonly #observations: readonly Observation[];
  readonly #now: number;
  readonly #target: number;
  readonly #step: number;
  #next = 0;
  #firstWeight = 0;

  constructor(
    run: DryingRun,
    ward: WardCase,
    start: BagReading,
    observations: readonly Observation[],
    step: number,
  ) {
    this.#run = run;
    this.#start = start;
    this.#stages = stagesOf(ward);
    this.#observations = observations;
    this.#now = ward.now;
    this.#target = ward.target ?? RELEASE.passRelHum;
    this.#step = step;
  }

  /** One run. Fills in a row of what is foretold, and the hours to the target and to one a step above it. */
  tell(
    permeability: number,
    film: number,
    damper: boolean,
    into: Float64Array,
    place: number,
    ready: Float64Array,
    readyPlace: number,
  ): void {
    const run = this.#run;
    run.scale(permeability, film);
    run.start(Math.min(MOST_START, this.#start.relHum + (damper ? this.#step : 0)), this.#start.hours);
    this.#next = 0;
    this.#firstWeight = 0;
    const read = (): boolean => this.#read(into, place);
    for (let i = 0; i < this.#stages.length; i++) {
      const ends = this.#stages[i + 1]?.fromHours ?? this.#now;
      if (i > 0 && i + 1 < this.#stages.length && ends <= run.hours) continue;
      run.place((this.#stages[i] as WardStage).surroundings);
      if (i === 0) read();
      if (ends > run.hours) run.goOn(ends, read);
    }
    ready[readyPlace + READY.lateTarget] = this.#logHoursTo(this.#target + this.#step);
    ready[readyPlace] = this.#logHoursTo(this.#target);
  }

  #logHoursTo(relHum: number): number {
    const at = this.#run.goOnUntilRelHum(relHum, Math.max(this.#run.hours, this.#now + HORIZON));
    return at === null ? Number.POSITIVE_INFINITY : Math.log(Math.max(1e-3, at - this.#start.hours));
  }

  /** Fills in what the last step passed. */
  #read(into: Float64Array, place: number): false {
    const run = this.#run;
    while (this.#next < this.#observations.length) {
      const { hours, kind } = this.#observations[this.#next] as Observation;
      if (hours > run.hours) break;
      const atOnce = run.hoursBefore >= run.hours || hours <= this.#start.hours;
      if (kind === "reading") into[place + this.#next] = run.airRelHumAt(hours);
      else {
        const weight = 1 + (atOnce ? run.moistureContent : run.moistureContentAt(hours));
        if (this.#firstWeight === 0) this.#firstWeight = weight;
        into[place + this.#next] = weight / this.#firstWeight;
      }
      this.#next += 1;
    }
    return false;
  }
}
