import { type Grid, NINE_IN_TEN, READY } from "./ready-runs.ts";
import { type Observation, OWN_ERROR, type Seen, type WardCase } from "./ward-case.ts";

/* How well each run meets what was seen (Bayes), between the runs by interpolation, and the band that comes of it.
 * Casts say that an index lies within rows and columns. */

export interface Band {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** A value with its weight. */
interface Point {
  readonly value: number;
  readonly weight: number;
}

const PERMEABILITY_POINTS = 49;
/** Nine in ten films lie within a factor 2. Common practice, no source. */
const FILM_SPREAD = Math.log(2) / NINE_IN_TEN;
/** Shared error of the reader, in its standard deviations, with their weights (five-point Gauss-Hermite rule). */
const READER = [
  { sd: -2.857, weight: 0.011257 },
  { sd: -1.3556, weight: 0.222076 },
  { sd: 0, weight: 0.533333 },
  { sd: 1.3556, weight: 0.222076 },
  { sd: 2.857, weight: 0.011257 },
] as const;

/** What the reading at the start was off by itself, the same way (three points). */
const START = [
  { sd: -1.7321, weight: 1 / 6 },
  { sd: 0, weight: 2 / 3 },
  { sd: 1.7321, weight: 1 / 6 },
] as const;

export interface Weighed {
  /** Ready hours of every point of the grid, rising, with their weights, which sum to 1. */
  readonly ready: readonly Point[];
  readonly permeability: readonly Point[];
  readonly misfit: number;
  readonly atEdge: number;
}

/** Every point of the grid: film, permeability, the reader's shared error, the start's own. */
export function weigh(grid: Grid, { observations }: Seen, ward: WardCase): Weighed {
  const { logs, sheets, step } = grid;
  const columns = observations.length;
  const size = sheets.length * PERMEABILITY_POINTS * READER.length * START.length;
  const score = new Float64Array(size);
  const ready = new Float64Array(size);
  const factor = new Float64Array(size);
  const foretold = new Float64Array(columns);
  const damper = new Float64Array(columns);
  const logReady = new Float64Array(READY.count);
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
      curveAt(sheet.damper, columns, logs.length, place, damper);
      lineAt(sheet.ready, READY.count, logs.length, place, logReady);
      const prior = (log / sd) ** 2 + (Math.log(sheet.film) / FILM_SPREAD) ** 2;
      for (const reader of READER)
        for (const own of START) {
          const shared = reader.sd * grid.readerSd; // by how much the reader shows too little
          const x = (shared + own.sd * OWN_ERROR) / step;
          const misfit = misfitOf(observations, foretold, damper, x, shared);
          least = Math.min(least, misfit);
          score[at] = -(prior + misfit) / 2 + Math.log(reader.weight * own.weight);
          ready[at] = Math.max(ward.now, start + Math.exp(logHours(logReady, x, shared / step)));
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

/** Sum of squared misfits, each by its own error. */
function misfitOf(
  observations: readonly Observation[],
  foretold: Float64Array,
  damper: Float64Array,
  x: number,
  shared: number,
): number {
  let sum = 0;
  for (let c = 0; c < foretold.length; c++) {
    const { value, sd, kind } = observations[c] as Observation;
    const shown = (foretold[c] as number) + x * (damper[c] as number) - (kind === "reading" ? shared : 0);
    sum += ((value - shown) / sd) ** 2;
  }
  return sum;
}

/** ln of the hours to ready with the start shifted by x steps and the target by y. */
function logHours(ready: Float64Array, x: number, y: number): number {
  const plain = along(ready[READY.plain] as number, ready[READY.damperStart] as number, x);
  const late = along(ready[READY.lateTarget] as number, ready[READY.both] as number, x);
  if (Number.isFinite(plain)) return Number.isFinite(late) ? plain + y * (late - plain) : plain;
  return y >= 1 ? late : Number.POSITIVE_INFINITY;
}

/** The damper the start, the later; where a damper one never gets there, so here. */
function along(from: number, damper: number, x: number): number {
  if (!Number.isFinite(from)) return Number.POSITIVE_INFINITY;
  if (Number.isFinite(damper)) return from + x * (damper - from);
  return x > 0 ? Number.POSITIVE_INFINITY : from;
}

function sharesOf(score: Float64Array): Float64Array {
  const best = score.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const raw = score.map((each) => Math.exp(each - best));
  const total = raw.reduce((a, b) => a + b, 0);
  return raw.map((each) => each / total);
}

function sorted(values: Float64Array, weights: Float64Array): Point[] {
  const points: Point[] = [];
  for (let i = 0; i < values.length; i++)
    if ((weights[i] as number) > 1e-9)
      points.push({ value: values[i] as number, weight: weights[i] as number });
  return points.sort((a, b) => (a.value < b.value ? -1 : a.value > b.value ? 1 : 0)); // never is Infinity
}

function edgeOf(factor: Float64Array, weights: Float64Array, last: number): number {
  return weights.reduce(
    (sum, weight, i) => sum + (Math.abs(factor[i] as number) > 0.94 * last ? weight : 0),
    0,
  );
}

/** Straight between two rows, for every column; never beside a row that is never. */
function lineAt(rows: Float64Array, columns: number, count: number, place: number, into: Float64Array): void {
  const i = Math.min(count - 2, Math.floor(place));
  const t = place - i;
  for (let c = 0; c < columns; c++) {
    const a = rows[i * columns + c] as number;
    const b = rows[(i + 1) * columns + c] as number;
    into[c] =
      t === 0 ? a : Number.isFinite(a) && Number.isFinite(b) ? a + (b - a) * t : Number.POSITIVE_INFINITY;
  }
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
function quantile(points: readonly Point[], share: number): number {
  let behind = 0;
  let previous = points[0]?.value ?? Number.NaN;
  let middleBefore = 0;
  for (const { value, weight } of points) {
    const middle = behind + weight / 2;
    if (middle >= share) {
      const t = middle > middleBefore ? (share - middleBefore) / (middle - middleBefore) : 1;
      return Number.isFinite(value) ? previous + (value - previous) * Math.max(0, t) : value;
    }
    behind += weight;
    middleBefore = middle;
    previous = value;
  }
  return previous;
}

export const bandOf = (points: readonly Point[]): Band => ({
  p10: quantile(points, 0.1),
  p50: quantile(points, 0.5),
  p90: quantile(points, 0.9),
});
