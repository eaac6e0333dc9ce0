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

/** Whole days between the end of task `s` and the first day of the next: the Ward's wait, the next day, or the same day for boxing. */
export function lagAfter(job: Job, s: number): number {
  if (job.tasks[s]?.act === "admit") return wardLag(job);
  return s === job.tasks.length - 1 || job.tasks[s + 1]?.act === "box" ? 0 : 1;
}

/** Day from which the first task can be done when waits are as expected. */
export const firstDayOf = (job: Job): number => (job.inWard ? wardLag(job) : job.ready);

const totalMinutes = (job: Job): number => job.tasks.reduce((sum, task) => sum + expected(task.minutes), 0);

/** Jobs of one kind, shortest first, and how far their minutes lie from their mean, all together. */
interface Group {
  readonly jobs: readonly Job[];
  readonly spread: number;
}

/** Classes of the jobs: like jobs together, and the widest group cut in two at its middle size until there are `most` or all are alike. */
export function classesOf(problem: PlanProblem, most: number): JobClass[] {
  const alike = new Map<string, Job[]>();
  for (const job of problem.jobs) {
    const key = [
      job.tasks.map((task) => task.kind).join("-"),
      wardLag(job) > 0 ? Math.round(Math.log2(wardLag(job))) : "",
      Math.ceil(job.ready / 7),
      job.weight,
      job.due === null ? "" : Math.ceil(job.due / 14),
    ].join("|");
    const group = alike.get(key);
    if (group) group.push(job);
    else alike.set(key, [job]);
  }
  const groups = [...alike.values()].map((jobs) =>
    groupOf(
      [...jobs].sort((a, b) => totalMinutes(a) - totalMinutes(b) || a.item.id.localeCompare(b.item.id)),
    ),
  );
  while (groups.length < most) {
    let widest = 0;
    groups.forEach((each, at) => {
      if (each.spread > (groups[widest]?.spread ?? 0)) widest = at;
    });
    const { jobs, spread } = groups[widest] ?? { jobs: [], spread: 0 };
    if (spread <= 1) break;
    const middle = middleOf(jobs);
    groups.splice(widest, 1, groupOf(jobs.slice(0, middle)), groupOf(jobs.slice(middle)));
  }
  return groups.map((each) => classOf(each.jobs));
}

function groupOf(jobs: readonly Job[]): Group {
  const minutes = jobs.map(totalMinutes);
  const mean = minutes.reduce((sum, each) => sum + each, 0) / jobs.length;
  return { jobs, spread: minutes.reduce((sum, each) => sum + Math.abs(each - mean), 0) };
}

/** First job that is longer than the mean. */
function middleOf(jobs: readonly Job[]): number {
  const mean = jobs.reduce((sum, job) => sum + totalMinutes(job), 0) / jobs.length;
  const at = jobs.findIndex((job) => totalMinutes(job) > mean);
  return Math.min(jobs.length - 1, Math.max(1, at));
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
    lags: acts.map((_, s) => Math.min(...jobs.map((job) => lagAfter(job, s)))),
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
