import { filmFromHeatTransfer, STILL_AIR_HEAT_TRANSFER } from "../physics/diffusion.ts";
import { type DryingPrecision, DryingRun, QUICK, type Surroundings } from "../physics/drying.ts";
import { type DryingBody, type DryingCaution } from "../physics/drying-body.ts";
import type { SorptionCaution } from "../physics/sorption.ts";
import { type BagReading, RELEASE, USUAL_READER_ERROR, type Weighing } from "./bag-state.ts";
import { TAIL_BAND, TAIL_NEEDS, tailFromWeighings, timeToTarget } from "./tail.ts";

/* When two readings could first pass, as a band, from the readings and weighings so far. How easily damp moves through an
 * item and how fast its surface gives it off are not known beforehand: the drying model is run over a grid of both, each run is
 * weighed by how well it meets what was seen (Bayes), and the band is read off the weighed runs. The reader's own error is taken
 * as one and the same in all its readings, the one at the start included; it is the third direction of the grid.
 * This says when to look; it releases nothing. Hours from any fixed moment. */

export interface WardStage {
  readonly fromHours: number;
  readonly surroundings: Surroundings;
}

export interface WardCase {
  readonly body: DryingBody;
  /** °C */
  readonly dryBulb: number;
  /** A reading of the closed, rested bag when drying began. */
  readonly start: BagReading | null;
  /** What it lay in, from the start on; the last one goes on. */
  readonly stages: readonly WardStage[];
  /** In the closed bag; those taken while it lay open are left out. */
  readonly readings: readonly BagReading[];
  readonly weighings: readonly Weighing[];
  readonly now: number;
  /** Left out: the pass line of release. */
  readonly target?: number;
}

export interface Band {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export type NoDate =
  | "no-closed-reading"
  | "no-surroundings"
  | "look-again-a-day-later"
  | "no-change-seen"
  | "less-than-a-third-dried"
  | "never-in-these-surroundings"
  | "perhaps-never-in-these-surroundings"
  | "readings-and-model-disagree"
  | "outside-what-was-tried";

export type ReadyCaution =
  | DryingCaution
  | SorptionCaution
  | "tail-disagrees"
  | "one-reader-one-error"
  | "readings-in-open-air-left-out"
  | "planning-figure-only";

export interface Learned {
  /** Permeability against what was assumed, a factor. */
  readonly permeability: Band;
  /** Share of the expected loss that is behind, 0 to 1. */
  readonly lossBehind: number;
  /** Mean misfit, in standard deviations of what was seen. */
  readonly misfit: number;
  readonly seen: number;
  readonly leftOut: number;
}

export type ReadyDate =
  | {
      readonly ok: true;
      /** Hour from which two readings could pass. */
      readonly hours: Band;
      readonly learned: Learned;
      /** By the exponential tail of the weighings, where there are enough. */
      readonly byTail: number | null;
      readonly cautions: readonly ReadyCaution[];
    }
  | {
      readonly ok: false;
      readonly because: readonly NoDate[];
      /** For planning a campaign, never for an item: the band so far, where there is one. */
      readonly planning: Band | null;
      readonly learned: Learned | null;
      readonly cautions: readonly ReadyCaution[];
    };

/** Nine in ten lie within a factor `spread`: so many standard deviations of a normal distribution. */
const NINE_IN_TEN = 1.645;
/** Runs along the permeability, as standard deviations of what is assumed. */
const PERMEABILITY_RUNS = 9;
const PERMEABILITY_REACH = 2.4;
const PERMEABILITY_POINTS = 49;
/** Factors tried on the film; nine in ten within 2. Common practice, no source. */
const FILMS = [0.5, 1, 2] as const;
const FILM_SPREAD = Math.log(2) / NINE_IN_TEN;
/** Above this Biot number the film no longer shows and is not tried. */
const FILM_SHOWS_BELOW = 20;
/** Shared error of the reader, in its standard deviations, with their weights (five-point Gauss-Hermite rule). */
const READER = [
  { sd: -2.857, weight: 0.011257 },
  { sd: -1.3556, weight: 0.222076 },
  { sd: 0, weight: 0.533333 },
  { sd: 1.3556, weight: 0.222076 },
  { sd: 2.857, weight: 0.011257 },
] as const;
/** What one reading is off by itself, beside the shared error: reader, rest of the bag and model. Common practice, no source. */
const OWN_ERROR = 0.01;
/** Share by which the isotherm may misjudge a change of weight. Common practice, no source. */
const WEIGHT_SHARE = 0.1;
const HORIZON = 3 * 8766; // h
const MOST_MISFIT = 3;
const MOST_AT_EDGE = 0.15;
const LEAST_LOSS = 1 / 3;
const LEAST_HOURS = 24;
/** Before it, a freshly closed bag shows the air that was shut in. Common practice, no source. */
const SETTLING_HOURS = 2;

/** The ready date of one item, or why there is none yet. Same input, same answer; the order of readings does not matter. */
export function readyDate(ward: WardCase, precision: DryingPrecision = QUICK): ReadyDate {
  const { body, start } = ward;
  const cautions: ReadyCaution[] = [...body.cautions, ...body.isotherm.cautions, "release-by-reading-only"];
  const nothing = (because: NoDate): ReadyDate => ({
    ok: false,
    because: [because],
    planning: null,
    learned: null,
    cautions,
  });
  if (start === null) return nothing("no-closed-reading");
  if (stagesOf(ward).length === 0) return nothing("no-surroundings");
  const seen = observationsOf(ward, start);
  const weighed = weigh(gridOf(ward, start, seen, precision), seen, ward);
  return answer(ward, start, seen, weighed, cautions);
}

// ---------------------------------------------------------------------------------------------------- what was seen

interface Observation {
  readonly hours: number;
  readonly kind: "reading" | "weighing";
  /** Relative humidity, or kg/kg against the first weighing. */
  readonly value: number;
  readonly sd: number;
}

interface Seen {
  readonly observations: readonly Observation[];
  readonly leftOut: number;
  readonly weighings: readonly Weighing[];
}

const inOrder = <T extends { readonly hours: number }>(what: readonly T[], from: number, to: number): T[] =>
  what.filter((each) => each.hours >= from && each.hours <= to).sort((a, b) => a.hours - b.hours);

function observationsOf(ward: WardCase, start: BagReading): Seen {
  const { readings, weighings, now } = ward;
  const stages = stagesOf(ward);
  const looked = inOrder(readings, start.hours, now).filter((each) => each.hours > start.hours);
  const closed = looked.filter((each) => isOfClosedBag(each, stages));
  const onScale = inOrder(weighings, start.hours, now);
  const observations = [
    ...closed.map(
      (each): Observation => ({ hours: each.hours, kind: "reading", value: each.relHum, sd: OWN_ERROR }),
    ),
    ...lossesOf(onScale),
  ].sort((a, b) => a.hours - b.hours);
  return { observations, leftOut: looked.length - closed.length, weighings: onScale };
}

/** Weights as shares of the first one: what box and scale add alike falls out. */
function lossesOf(weighings: readonly Weighing[]): Observation[] {
  const first = weighings[0];
  if (!first) return [];
  return weighings.map((each) => {
    const scale = Math.max(each.scaleStep ?? 1, first.scaleStep ?? 1) / first.grams;
    const value = each.grams / first.grams;
    return { hours: each.hours, kind: "weighing", value, sd: Math.hypot(scale, WEIGHT_SHARE * (1 - value)) };
  });
}

/** Those that have begun, in order. */
const stagesOf = ({ stages, now }: WardCase): WardStage[] =>
  stages.filter((each) => each.fromHours <= now).sort((a, b) => a.fromHours - b.fromHours);

/** Whether a reading is one of a closed bag that had time to settle. */
function isOfClosedBag({ hours }: BagReading, stages: readonly WardStage[]): boolean {
  const stage = stages.findLast((each) => each.fromHours <= hours) ?? stages[0];
  return stage?.surroundings.kind === "bag" && hours - stage.fromHours >= SETTLING_HOURS;
}

// ---------------------------------------------------------------------------------------------------- the runs

/** What the runs of one film foretell: one row for each permeability tried. */
interface Sheet {
  readonly film: number;
  /** ln(hours from start to ready); infinite: not within the horizon */
  readonly ready: Float64Array;
  readonly readyShift: Float64Array;
  /** Rows of one value for each observation. */
  readonly foretold: Float64Array;
  readonly foretoldShift: Float64Array;
}

interface Grid {
  /** ln of the permeability factors run. */
  readonly logs: Float64Array;
  readonly sheets: readonly Sheet[];
  readonly readerSd: number;
}

function gridOf(ward: WardCase, start: BagReading, seen: Seen, precision: DryingPrecision): Grid {
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
const MOST_START = 0.985;

// ---------------------------------------------------------------------------------------------------- weighing the runs

interface Weighed {
  /** Ready hours of every point of the grid, rising, with their weights, which sum to 1. */
  readonly ready: readonly { readonly hours: number; readonly weight: number }[];
  readonly permeability: readonly { readonly hours: number; readonly weight: number }[];
  readonly misfit: number;
  readonly atEdge: number;
}

function weigh(grid: Grid, { observations }: Seen, ward: WardCase): Weighed {
  const { logs, sheets } = grid;
  const columns = observations.length;
  const size = sheets.length * READER.length * PERMEABILITY_POINTS;
  const score = new Float64Array(size);
  const ready = new Float64Array(size);
  const factor = new Float64Array(size);
  const foretold = new Float64Array(columns);
  const shift = new Float64Array(columns);
  const start = ward.start?.hours ?? 0;
  const [first, last] = [logs[0] as number, logs[logs.length - 1] as number];
  const sd = Math.log(ward.body.spread) / NINE_IN_TEN;
  let at = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const sheet of sheets)
    for (let p = 0; p < PERMEABILITY_POINTS; p++) {
      const log = first + ((last - first) * p) / (PERMEABILITY_POINTS - 1);
      const place = ((log - first) / (last - first)) * (logs.length - 1);
      curveAt(sheet.foretold, columns, logs.length, place, foretold);
      curveAt(sheet.foretoldShift, columns, logs.length, place, shift);
      const readyLog = lineAt(sheet.ready, place);
      const readyShift = lineAt(sheet.readyShift, place);
      const prior = (log / sd) ** 2 + (Math.log(sheet.film) / FILM_SPREAD) ** 2;
      for (const reader of READER) {
        let misfit = 0;
        for (let c = 0; c < columns; c++) {
          const { value, sd: error } = observations[c] as Observation;
          misfit += ((value - (foretold[c] as number) - reader.sd * (shift[c] as number)) / error) ** 2;
        }
        least = Math.min(least, misfit);
        score[at] = -(prior + misfit) / 2 + Math.log(reader.weight);
        ready[at] = Math.max(ward.now, start + Math.exp(shifted(readyLog, reader.sd, readyShift)));
        factor[at] = log;
        at += 1;
      }
    }
  const weights = sharesOf(score);
  return {
    ready: sorted(ready, weights),
    permeability: sorted(factor.map(Math.exp), weights),
    misfit: columns === 0 ? 0 : Math.sqrt(least / columns),
    atEdge: edgeOf(factor, weights, last),
  };
}

/** The damper the item is than the reader says, the later; where a damper one never gets there, so here. */
function shifted(log: number, sd: number, shift: number): number {
  if (!Number.isFinite(log)) return Number.POSITIVE_INFINITY;
  if (Number.isFinite(shift)) return log + sd * shift;
  return sd > 0 ? Number.POSITIVE_INFINITY : log;
}

function sharesOf(score: Float64Array): Float64Array {
  const best = score.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const raw = score.map((each) => Math.exp(each - best));
  const total = raw.reduce((a, b) => a + b, 0);
  return raw.map((each) => each / total);
}

function sorted(values: Float64Array, weights: Float64Array): { hours: number; weight: number }[] {
  const points: { hours: number; weight: number }[] = [];
  for (let i = 0; i < values.length; i++)
    if ((weights[i] as number) > 1e-9)
      points.push({ hours: values[i] as number, weight: weights[i] as number });
  return points.sort((a, b) => (a.hours < b.hours ? -1 : a.hours > b.hours ? 1 : 0)); // never is Infinity
}

function edgeOf(factor: Float64Array, weights: Float64Array, last: number): number {
  return weights.reduce(
    (sum, weight, i) => sum + (Math.abs(factor[i] as number) > 0.94 * last ? weight : 0),
    0,
  );
}

/** Straight between two rows; never beside a row that is never. */
function lineAt(values: Float64Array, place: number): number {
  const i = Math.min(values.length - 2, Math.floor(place));
  const t = place - i;
  const [a, b] = [values[i] as number, values[i + 1] as number];
  if (t === 0) return a;
  return Number.isFinite(a) && Number.isFinite(b) ? a + (b - a) * t : Number.POSITIVE_INFINITY;
}

/** A parabola-true curve (Catmull-Rom) through the rows, for every column. */
function curveAt(
  rows: Float64Array,
  columns: number,
  count: number,
  place: number,
  into: Float64Array,
): void {
  const i = Math.min(count - 2, Math.floor(place));
  const t = place - i;
  const [before, after] = [Math.max(0, i - 1), Math.min(count - 1, i + 2)];
  for (let c = 0; c < columns; c++) {
    const y1 = rows[i * columns + c] as number;
    const y2 = rows[(i + 1) * columns + c] as number;
    const m1 = (y2 - (rows[before * columns + c] as number)) / (i + 1 - before);
    const m2 = ((rows[after * columns + c] as number) - y1) / (after - i);
    into[c] = y1 + t * (m1 + t * (3 * (y2 - y1) - 2 * m1 - m2 + t * (m1 + m2 - 2 * (y2 - y1))));
  }
}

/** Where a share of the weight lies behind; halfway between neighbours. */
function quantile(
  points: readonly { readonly hours: number; readonly weight: number }[],
  share: number,
): number {
  let behind = 0;
  let previous = points[0]?.hours ?? Number.NaN;
  let middleBefore = 0;
  for (const { hours, weight } of points) {
    const middle = behind + weight / 2;
    if (middle >= share) {
      const t = middle > middleBefore ? (share - middleBefore) / (middle - middleBefore) : 1;
      return Number.isFinite(hours) ? previous + (hours - previous) * Math.max(0, t) : hours;
    }
    behind += weight;
    middleBefore = middle;
    previous = hours;
  }
  return previous;
}

// ---------------------------------------------------------------------------------------------------- the answer

function answer(
  ward: WardCase,
  start: BagReading,
  seen: Seen,
  weighed: Weighed,
  given: readonly ReadyCaution[],
): ReadyDate {
  const hours = widened(bandOf(weighed.ready), ward.now);
  const permeability = bandOf(weighed.permeability);
  const learned: Learned = {
    permeability,
    lossBehind: lossBehind(ward, start, permeability.p50),
    misfit: weighed.misfit,
    seen: seen.observations.length,
    leftOut: seen.leftOut,
  };
  const because = refusals(ward, start, seen, weighed, hours, learned);
  const byTail = tailHours(ward, start, seen.weighings);
  const disagrees = byTail !== null && (byTail < hours.p10 || byTail > hours.p90);
  const cautions: ReadyCaution[] = [
    ...given,
    "one-reader-one-error",
    ...(disagrees ? (["tail-disagrees"] as const) : []),
    ...(seen.leftOut > 0 ? (["readings-in-open-air-left-out"] as const) : []),
  ];
  if (because.length === 0) return { ok: true, hours, learned, byTail, cautions };
  return { ok: false, because, planning: hours, learned, cautions: [...cautions, "planning-figure-only"] };
}

const bandOf = (points: Weighed["ready"]): Band => ({
  p10: quantile(points, 0.1),
  p50: quantile(points, 0.5),
  p90: quantile(points, 0.9),
});

/** Never narrower than a quarter of the remaining time either way: model and surroundings are not that well known. */
const widened = ({ p10, p50, p90 }: Band, now: number): Band => ({
  p10: Math.min(p10, now + (1 - TAIL_BAND) * (p50 - now)),
  p50,
  p90: Math.max(p90, now + (1 + TAIL_BAND) * (p50 - now)),
});

function refusals(
  ward: WardCase,
  start: BagReading,
  seen: Seen,
  weighed: Weighed,
  hours: Band,
  learned: Learned,
): NoDate[] {
  const last = seen.observations.at(-1);
  const when = (so: boolean, code: NoDate): NoDate[] => (so ? [code] : []);
  if (start.relHum <= (ward.target ?? RELEASE.passRelHum)) return [];
  return [
    ...when(last === undefined || last.hours - start.hours < LEAST_HOURS, "look-again-a-day-later"),
    ...when(last !== undefined && !changeSeen(start, seen), "no-change-seen"),
    ...when(learned.lossBehind < LEAST_LOSS, "less-than-a-third-dried"),
    ...when(!Number.isFinite(hours.p50), "never-in-these-surroundings"),
    ...when(Number.isFinite(hours.p50) && !Number.isFinite(hours.p90), "perhaps-never-in-these-surroundings"),
    ...when(weighed.misfit > MOST_MISFIT, "readings-and-model-disagree"),
    ...when(weighed.atEdge > MOST_AT_EDGE, "outside-what-was-tried"),
  ];
}

/** A change beyond what a reading is off by itself, or three steps of the scale. */
function changeSeen(start: BagReading, { observations, weighings }: Seen): boolean {
  const lowest = Math.min(...observations.filter((o) => o.kind === "reading").map((o) => o.value));
  const [first, last] = [weighings[0], weighings.at(-1)];
  const steps =
    first && last ? (first.grams - last.grams) / Math.max(first.scaleStep ?? 1, last.scaleStep ?? 1) : 0;
  return start.relHum - lowest > 2 * OWN_ERROR || steps >= TAIL_NEEDS.scaleSteps;
}

/** How much of the way from the start to the target has been gone now, by the likeliest run; the target counts as the end. */
function lossBehind(ward: WardCase, start: BagReading, permeability: number): number {
  const run = new DryingRun(ward.body, ward.dryBulb, QUICK);
  run.scale(permeability, 1);
  run.start(Math.min(MOST_START, start.relHum), start.hours);
  const before = run.water;
  const toLose = before - run.waterAtRelHum(ward.target ?? RELEASE.passRelHum);
  const stages = stagesOf(ward);
  for (const [i, stage] of stages.entries()) {
    const ends = stages[i + 1]?.fromHours ?? ward.now;
    run.place(stage.surroundings);
    if (ends > run.hours) run.goOn(ends);
  }
  return toLose <= 0 ? 1 : Math.min(1, Math.max(0, (before - run.water) / toLose));
}

/** The hour by the tail of the weighings; only in a room of one relative humidity, whose asymptote the isotherm gives. */
function tailHours(ward: WardCase, start: BagReading, weighings: readonly Weighing[]): number | null {
  const place = ward.stages.at(-1)?.surroundings;
  const first = weighings[0];
  if (!first || place?.kind !== "room" || typeof place.relHum !== "number") return null;
  const { isotherm } = ward.body;
  const content = (relHum: number): number => isotherm.moistureContentFromRelHum(relHum, ward.dryBulb);
  const dry = first.grams / (1 + content(Math.min(MOST_START, start.relHum)));
  const weighed = weighings.map((each) => ({ hours: each.hours, moistureContent: each.grams / dry - 1 }));
  const [asymptote, from, target] = [
    content(place.relHum),
    content(Math.min(MOST_START, start.relHum)),
    content(ward.target ?? RELEASE.passRelHum),
  ];
  if (target <= asymptote) return null;
  const late = weighed.filter(
    (each) => from - each.moistureContent >= TAIL_NEEDS.lossBehind * (from - asymptote),
  );
  const last = late.at(-1);
  const fell = late.length > 0 ? ((late[0]?.moistureContent ?? 0) - (last?.moistureContent ?? 0)) * dry : 0;
  if (!last || late.length < TAIL_NEEDS.weighings || fell < TAIL_NEEDS.scaleSteps * (first.scaleStep ?? 1))
    return null;
  const tail = tailFromWeighings(late, asymptote);
  return tail && last.hours + timeToTarget(last.moistureContent, target, asymptote, tail.rate);
}
