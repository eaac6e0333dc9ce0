import type { DayModel } from "../bound/day-model.ts";
import { DayPlaces } from "../day-places.ts";
import type { Job, PlanProblem } from "../problem.ts";
import type { Piece, Walk } from "../walk.ts";
import { expected, KINDS } from "../work.ts";
import type { ExactProgramme } from "./exact-programme.ts";

/** Less work than this is a rounding of the solver's, in minutes. */
const NOTHING = 0.05;
/** Most minutes of a task that such roundings may leave out. */
const MISSING = 1;

interface Portion {
  readonly job: Job;
  readonly j: number;
  readonly task: number;
  minutes: number;
}

/** The plan that an answer of the exact programme is: its work handed to the people it names, a job to who worked on it before where that can be. */
export function walkOf(model: DayModel, parts: ExactProgramme, values: Float64Array): Walk {
  const { problem, worked } = model;
  const owner = new Int32Array(problem.jobs.length).fill(-1);
  const places = new DayPlaces(problem.stationRows, problem.hands.length);
  const pieces: Piece[] = [];
  worked.days.forEach((day, i) => {
    places.morning(day);
    // Exposed work first, as people change once.
    for (const k of [...KINDS.keys()].sort((a, b) => Number(KINDS[b]?.exposed) - Number(KINDS[a]?.exposed))) {
      const portions = portionsOf(model, parts, values, k, i);
      const left = parts.given.map((kinds) => {
        const column = kinds[k]?.[i] ?? -1;
        return column < 0 ? 0 : (values[column] ?? 0);
      });
      for (const pass of ["who began", "anyone"] as const)
        for (const portion of portions)
          for (const p of problem.hands.keys()) {
            if (pass === "who began" && owner[portion.j] !== p) continue;
            for (;;) {
              const minutes = Math.min(portion.minutes, left[p] as number, places.room(k, p));
              if (minutes < NOTHING) break;
              portion.minutes -= minutes;
              left[p] = (left[p] as number) - minutes;
              owner[portion.j] = p;
              const station = places.take(k, p, minutes);
              pieces.push({ day, person: p, job: portion.job, task: portion.task, station, minutes });
            }
          }
    }
  });
  return asWalk(model, pieces, lastDays(model, pieces));
}

/** The day each task was worked on last; −1: never. */
function lastDays({ problem }: DayModel, pieces: readonly Piece[]): Map<Job, Int32Array> {
  const ends = new Map(problem.jobs.map((job) => [job, new Int32Array(job.tasks.length).fill(-1)]));
  for (const { job, task, day } of pieces) {
    const days = ends.get(job) as Int32Array;
    days[task] = Math.max(days[task] as number, day);
  }
  return ends;
}

/** What is done of a kind of work on a day, job by job; work on what will not be finished is left out. */
function portionsOf(
  model: DayModel,
  parts: ExactProgramme,
  values: Float64Array,
  k: number,
  i: number,
): Portion[] {
  const slow = model.problem.slowness[model.worked.days[i] as number] ?? 1;
  return model.problem.jobs.flatMap((job, j) =>
    job.tasks.flatMap((each, task) => {
      const at = (model.firstTask[j] as number) + task;
      const column = parts.share[at]?.[i] ?? -1;
      const finished = (values[parts.ended[at]?.at(-1) ?? -1] ?? 0) > 0.5;
      const minutes =
        column < 0 || !finished ? 0 : slow * (model.minutes[at] as number) * (values[column] ?? 0);
      return each.kind === k && minutes >= NOTHING ? [{ job, j, task, minutes }] : [];
    }),
  );
}

function asWalk({ problem }: DayModel, pieces: readonly Piece[], ends: ReadonlyMap<Job, Int32Array>): Walk {
  const exposed = problem.hands.map(() => new Uint8Array(problem.days.length));
  const used = problem.stores.map(() => new Float64Array(problem.days.length));
  const use = (store: number, day: number, quantity: number): void => {
    const series = used[store] as Float64Array;
    series[day] = (series[day] ?? 0) + quantity;
  };
  const begun = new Set<string>();
  for (const { day, person, job, task } of pieces) {
    const own = job.tasks[task] as Job["tasks"][number];
    if (own.exposed && !exposed[person]?.[day]) {
      (exposed[person] as Uint8Array)[day] = 1;
      for (const [store, quantity] of problem.sessionUses) use(store, day, quantity);
    }
    if (begun.has(`${job.item.id}|${task}`)) continue;
    begun.add(`${job.item.id}|${task}`);
    for (const [store, quantity] of own.uses) use(store, day, quantity);
  }
  const boxes = [...ends.values()].map((days) => days[days.length - 1] ?? -1);
  return {
    pieces,
    ends,
    exposed,
    used,
    lastDay: Math.max(-1, ...boxes),
    boxed: boxes.filter((day) => day >= 0).length,
  };
}

/**
 * Whether a plan does all the work it ends and the stores and the Ward bear it. The programme counts stores by shares of work, several
 * stations of a kind as one, and a Ward too full on the first morning as large enough, so a plan of it may rarely ask too much.
 */
export function isBorne({ problem }: DayModel, day: Walk): boolean {
  const stores = problem.stores.every((store, s) => {
    let there = store.onHand;
    return problem.days.every((_, d) => {
      there += (store.arrivals[d] ?? 0) - (day.used[s]?.[d] ?? 0);
      return d >= store.reorderFrom || there >= -1e-6;
    });
  });
  return stores && isWorked(problem, day) && fitsWard(problem, day);
}

function isWorked(problem: PlanProblem, { pieces, ends }: Walk): boolean {
  const done = new Map(problem.jobs.map((job) => [job, new Float64Array(job.tasks.length)]));
  for (const { job, task, day, minutes } of pieces) {
    const own = done.get(job) as Float64Array;
    own[task] = (own[task] as number) + minutes / (problem.slowness[day] ?? 1);
  }
  return [...ends].every(([job, days]) =>
    job.tasks.every(
      (task, s) =>
        (days[s] as number) < 0 || (done.get(job)?.[s] as number) > expected(task.minutes) - MISSING,
    ),
  );
}

/** A day on which nothing is admitted breaks no limit. */
function fitsWard({ jobs, days, wardLitres }: PlanProblem, { pieces, ends }: Walk): boolean {
  const begun = new Map<Job, number>();
  for (const { job, task, day } of pieces)
    if (job.tasks[task]?.act === "admit") begun.set(job, Math.min(begun.get(job) ?? day, day));
  const litres = new Float64Array(days.length);
  for (const job of jobs) {
    const from = job.inWard ? 0 : (begun.get(job) ?? days.length);
    const out = ends.get(job)?.[job.tasks.findIndex((task) => task.act === "release")] ?? -1;
    for (let d = from; d < (out < 0 ? days.length : out); d++)
      litres[d] = (litres[d] ?? 0) + job.route.wardLitres;
  }
  return [...begun.values()].every((day) => (litres[day] as number) <= wardLitres + 1e-6);
}
