import { filmFromHeatTransfer, STILL_AIR_HEAT_TRANSFER } from "../physics/diffusion.ts";
import { type DryingPrecision, DryingRun } from "../physics/drying.ts";
import { type BagReading, RELEASE, USUAL_READER_ERROR } from "./bag-state.ts";
import { type Observation, type Seen, stagesOf, type WardCase, type WardStage } from "./ward-case.ts";

/* The drying model over a grid of permeability and film, and what each run foretells of reader and scale.
 * Casts say that an index lies within rows and columns. */

/** Nine in ten lie within a factor `spread`: so many standard deviations of a normal distribution. */
export const NINE_IN_TEN = 1.645;
/** Runs along the permeability, as standard deviations of what is assumed. */
const PERMEABILITY_RUNS = 9;
const PERMEABILITY_REACH = 2.4;
/** Factors tried on the film; nine in ten within 2. Common practice, no source. */
const FILMS = [0.5, 1, 2] as const;
/** Above this Biot number the film no longer shows and is not tried. */
const FILM_SHOWS_BELOW = 20;
const HORIZON = 3 * 8766; // h
/** The dampest an item is started from; above, free water lies in it, which the model does not know. */
export const MOST_START = 0.985;

/** What the runs of one film foretell: one row for each permeability tried. */
export interface Sheet {
  readonly film: number;
  /** ln(hours from start to ready); infinite: not within the horizon */
  readonly ready: Float64Array;
  readonly readyShift: Float64Array;
  /** Rows of one value for each observation. */
  readonly foretold: Float64Array;
  readonly foretoldShift: Float64Array;
}

export interface Grid {
  /** ln of the permeability factors run. */
  readonly logs: Float64Array;
  readonly sheets: readonly Sheet[];
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
  const run = new DryingRun(body, dryBulb, precision);
  const teller = new Teller(run, ward, start, seen.observations);
  return { logs, readerSd, sheets: films.map((film) => sheetOf(teller, film, logs, seen, readerSd)) };
}

function sheetOf(teller: Teller, film: number, logs: Float64Array, seen: Seen, readerSd: number): Sheet {
  const [rows, columns] = [logs.length, seen.observations.length];
  const sheet: Sheet = {
    film,
    ready: new Float64Array(rows),
    readyShift: new Float64Array(rows),
    foretold: new Float64Array(rows * columns),
    foretoldShift: new Float64Array(rows * columns),
  };
  for (let row = 0; row < rows; row++) {
    const factor = Math.exp(logs[row] as number);
    const place = row * columns;
    sheet.ready[row] = teller.tell(factor, film, 0, sheet.foretold, place);
    // the reader shows too little by one standard deviation: the item was, and is, that much damper
    const damper = teller.tell(factor, film, readerSd, sheet.foretoldShift, place);
    const ready = sheet.ready[row] as number;
    sheet.readyShift[row] = Number.isFinite(damper) ? damper - ready : Number.POSITIVE_INFINITY;
    for (let c = place; c < place + columns; c++)
      sheet.foretoldShift[c] = (sheet.foretoldShift[c] as number) - (sheet.foretold[c] as number);
  }
  return sheet;
}

/** Runs the drying model through the stages of one item and tells what the reader and the scale would have shown. */
class Teller {
  readonly #run: DryingRun;
  readonly #start: BagReading;
  readonly #stages: readonly WardStage[];
  readonly #observations: readonly Observation[];
  readonly #now: number;
  readonly #target: number;
  #next = 0;
  #firstWeight = 0;

  constructor(run: DryingRun, ward: WardCase, start: BagReading, observations: readonly Observation[]) {
    this.#run = run;
    this.#start = start;
    this.#stages = stagesOf(ward);
    this.#observations = observations;
    this.#now = ward.now;
    this.#target = ward.target ?? RELEASE.passRelHum;
  }

  /** @param readerLow by how much the reader shows too little   @returns ln of the hours from start to ready */
  tell(permeability: number, film: number, readerLow: number, into: Float64Array, place: number): number {
    const run = this.#run;
    run.scale(permeability, film);
    run.start(Math.min(MOST_START, this.#start.relHum + readerLow), this.#start.hours);
    this.#next = 0;
    this.#firstWeight = 0;
    const read = (): boolean => this.#read(readerLow, into, place);
    for (let i = 0; i < this.#stages.length; i++) {
      const ends = this.#stages[i + 1]?.fromHours ?? this.#now;
      if (i > 0 && i + 1 < this.#stages.length && ends <= run.hours) continue;
      run.place((this.#stages[i] as WardStage).surroundings);
      if (i === 0) read();
      if (ends > run.hours) run.goOn(ends, read);
    }
    const ready = run.goOnUntilRelHum(this.#target + readerLow, this.#now + HORIZON);
    return ready === null ? Number.POSITIVE_INFINITY : Math.log(Math.max(1e-3, ready - this.#start.hours));
  }

  /** Fills in what the last step passed. */
  #read(readerLow: number, into: Float64Array, place: number): false {
    const run = this.#run;
    while (this.#next < this.#observations.length) {
      const { hours, kind } = this.#observations[this.#next] as Observation;
      if (hours > run.hours) break;
      const atOnce = run.hoursBefore >= run.hours || hours <= this.#start.hours;
      if (kind === "reading") into[place + this.#next] = run.airRelHumAt(hours) - readerLow;
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
