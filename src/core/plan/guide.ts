import type { CampaignProgramme } from "./campaign-programme.ts";
import type { JobClass } from "./classes.ts";
import type { Period } from "./periods.ts";
import type { Job, PlanProblem } from "./problem.ts";

/** How the day-by-day plan decides where the guide leaves a choice. */
export interface Manner {
  /** Least minutes near mould for which a person changes into protection … */
  readonly session: number;
  /** … unless some of them have waited so many days past their wanted day. */
  readonly patience: number;
  /** Kinds of work whose worth differs by less than this share of the dearest kind's are taken in the order of their wanted days. 1: always in that order. */
  readonly sameWorth: number;
  /** The last job of a person's day: one of so many next in the queue that can still be finished that day. 1: the next. */
  readonly fitting: number;
}

/** Common practice, no source. */
export const USUAL_MANNER: Manner = { session: 45, patience: 7, sameWorth: 1, fitting: 1 };

/** What the day-by-day plan takes over from the programme's answer. */
export interface Guide {
  /** Job → for each of its tasks the day the programme means it for; later than the last day: not before the end. */
  readonly wanted: ReadonlyMap<Job, Float64Array>;
  /** [person][day] → exposed days the programme has given the person by the end of that day's period. */
  readonly exposedBy: readonly Float64Array[];
  /** [kind][day] → what a minute of a person's work is worth; empty: not known. */
  readonly worth: readonly Float64Array[];
  readonly manner: Manner;
  /** Job → for each of its tasks the day and the person it is kept for: nobody begins it before, nor on that day anyone else while that person is there. */
  readonly kept?: ReadonlyMap<Job, readonly ({ readonly day: number; readonly person: number } | null)[]>;
}

/** Spreads each class's flow over its jobs, due ones first, and the exposed days over the calendar. */
export function guideFrom(
  problem: PlanProblem,
  classes: readonly JobClass[],
  periods: readonly Period[],
  parts: CampaignProgramme,
  values: Float64Array,
): Guide {
  const wanted = new Map<Job, Float64Array>();
  classes.forEach((each, c) => {
    const jobs = [...each.jobs].sort(
      (a, b) => (a.due ?? 1e9) - (b.due ?? 1e9) || a.item.id.localeCompare(b.item.id),
    );
    for (const job of jobs)
      wanted.set(job, new Float64Array(each.kinds.length).fill(problem.days.length + 1));
    each.kinds.forEach((_, s) => {
      let passed = 0;
      let next = 0;
      periods.forEach((period, t) => {
        const flow = values[parts.flow[c]?.[s]?.[t] as number] ?? 0;
        while (next < jobs.length && next + 0.5 <= passed + flow + 1e-7) {
          const share = flow > 0 ? Math.max(0, next + 0.5 - passed) / flow : 0;
          const days = wanted.get(jobs[next] as Job);
          if (days) days[s] = period.from + share * (period.to - period.from);
          next++;
        }
        passed += flow;
      });
    });
  });
  return {
    wanted,
    exposedBy: problem.hands.map((_, p) => exposedBy(problem, periods, parts.exposedDays[p], values)),
    worth: [],
    manner: USUAL_MANNER,
  };
}

function exposedBy(
  problem: PlanProblem,
  periods: readonly Period[],
  columns: Int32Array | undefined,
  values: Float64Array,
): Float64Array {
  const series = new Float64Array(problem.days.length);
  let sum = 0;
  periods.forEach((period, t) => {
    const column = columns?.[t] ?? -1;
    if (column >= 0) sum += values[column] ?? 0;
    const end = t + 1 < periods.length ? (periods[t + 1] as Period).from : series.length;
    series.fill(sum, period.from, end);
  });
  return series;
}
