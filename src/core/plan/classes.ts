import type { Job, PlanProblem } from "./problem.ts";
import { expected } from "./work.ts";

/** Jobs alike enough to be planned together: same acts, like minutes, same wait, weight and arrival. */
export interface JobClass {
  readonly jobs: readonly Job[];
  readonly kinds: readonly number[];
  /** Mean expected minutes of each task. */
  readonly minutes: readonly number[];
  /** Whole days between the end of a task and the start of the next; the last is 0. */
  readonly lags: readonly number[];
  readonly litres: number;
  readonly ready: number;
  readonly weight: number;
  readonly due: number | null;
  readonly uses: readonly ReadonlyMap<number, number>[];
}

/** Working days of the Ward's wait, from the norms' expected value. */
export const wardLag = (job: Job): number =>
  job.route.wardDays ? Math.ceil(expected(job.route.wardDays)) : 0;

const sizeBand = (job: Job, bands: number): number => {
  const total = job.tasks.reduce((sum, task) => sum + expected(task.minutes), 0);
  return Math.round(Math.log2(Math.max(1, total)) * bands);
};

/** Classes of the jobs; minutes are banded ever more coarsely until there are at most `most` classes. */
export function classesOf(problem: PlanProblem, most: number): JobClass[] {
  for (const bands of [2, 1, 0.5, 0.25, 0]) {
    const groups = new Map<string, Job[]>();
    for (const job of problem.jobs) {
      const key = [
        job.tasks.map((task) => task.kind).join("-"),
        sizeBand(job, bands),
        wardLag(job) > 0 ? Math.round(Math.log2(wardLag(job))) : "",
        Math.ceil(job.ready / 7),
        job.weight,
        job.due === null ? "" : Math.ceil(job.due / 14),
      ].join("|");
      const group = groups.get(key);
      if (group) group.push(job);
      else groups.set(key, [job]);
    }
    if (groups.size <= most || bands === 0) return [...groups.values()].map(classOf);
  }
  return [];
}

function classOf(jobs: readonly Job[]): JobClass {
  const first = jobs[0] as Job;
  const mean = (of: (job: Job) => number): number =>
    jobs.reduce((sum, job) => sum + of(job), 0) / jobs.length;
  const acts = first.tasks.map((task) => task.act);
  return {
    jobs,
    kinds: first.tasks.map((task) => task.kind),
    minutes: first.tasks.map((_, s) =>
      mean((job) => expected((job.tasks[s] as Job["tasks"][number]).minutes)),
    ),
    lags: acts.map((act, s) =>
      act === "admit"
        ? Math.min(...jobs.map(wardLag))
        : s === acts.length - 1 || acts[s + 1] === "box"
          ? 0
          : 1,
    ),
    litres: acts.includes("admit") ? mean((job) => job.route.wardLitres) : 0,
    ready: Math.min(...jobs.map((job) => job.ready)),
    weight: first.weight,
    due: first.due === null ? null : Math.max(...jobs.map((job) => job.due ?? 0)),
    uses: first.tasks.map((_, s) => meanUses(jobs, s)),
  };
}

function meanUses(jobs: readonly Job[], s: number): Map<number, number> {
  const sums = new Map<number, number>();
  for (const job of jobs)
    for (const [store, quantity] of job.tasks[s]?.uses ?? [])
      sums.set(store, (sums.get(store) ?? 0) + quantity / jobs.length);
  return sums;
}
