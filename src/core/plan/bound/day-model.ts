import type { StationKind } from "../../items/campaign.ts";
import { finishCost, undoneCost } from "../campaign-programme.ts";
import { firstDayOf, lagAfter, wardLag } from "../classes.ts";
import type { Job, PlanProblem } from "../problem.ts";
import { expected, KINDS } from "../work.ts";

/** Days on which somebody works, numbered from 0; only on them can anything be done. */
export interface WorkedDays {
  readonly days: Int32Array;
  /** Day of the plan → number of the first worked day not before it; `days.length` when there is none. */
  readonly numberFrom: Int32Array;
}

export function workedDays(problem: PlanProblem): WorkedDays {
  const days = Int32Array.from(
    problem.days.flatMap((_, d) => (problem.hands.some((hand) => (hand.minutes[d] ?? 0) > 0) ? [d] : [])),
  );
  const numberFrom = new Int32Array(problem.days.length + 1).fill(days.length);
  for (let d = problem.days.length - 1, i = days.length; d >= 0; d--) {
    if (i > 0 && days[i - 1] === d) i--;
    numberFrom[d] = i;
  }
  return { days, numberFrom };
}

/** Every item's chain of tasks on worked days, laid out flat for loops that run through all of them many times. Items alike to the last minute are one. */
export interface DayModel {
  readonly problem: PlanProblem;
  readonly worked: WorkedDays;
  /** Job of the model → the jobs that are exactly so. */
  readonly alike: readonly (readonly Job[])[];
  /** Job of the model → its first task among all tasks; one more at the end. */
  readonly firstTask: Int32Array;
  readonly kind: Int32Array;
  readonly minutes: Float64Array;
  /** Task → [worked day] → worked day from which the next task may follow. */
  readonly nextFrom: readonly Int32Array[];
  /** Task → +1 admits to the Ward, −1 releases what was admitted, 0 neither. */
  readonly ward: Int8Array;
  readonly uses: readonly (ReadonlyMap<number, number> | null)[];
  readonly litres: Float64Array;
  /** Job → worked day from which its first task may be done. */
  readonly ready: Int32Array;
  /** Job → [worked day] → cost of being boxed then. */
  readonly finish: readonly Float64Array[];
  readonly undone: Float64Array;
}

/** `apart`: also items alike to the last minute stay apart. */
export function dayModel(problem: PlanProblem, apart = false): DayModel {
  const worked = workedDays(problem);
  const lastDay = problem.days.length;
  const followers = new Map<number, Int32Array>();
  const nextFrom = (lag: number): Int32Array => {
    const known = followers.get(lag);
    if (known) return known;
    const made = Int32Array.from(worked.days, (d) => worked.numberFrom[Math.min(lastDay, d + lag)] as number);
    followers.set(lag, made);
    return made;
  };
  const finishes = new Map<string, Float64Array>();
  const finish = ({ weight, due }: Job): Float64Array => {
    const key = `${weight}|${due}`;
    const known = finishes.get(key) ?? Float64Array.from(worked.days, (d) => finishCost(weight, due, d));
    finishes.set(key, known);
    return known;
  };
  const alike = apart ? problem.jobs.map((job) => [job]) : alikeJobs(problem);
  const jobs = alike.map((each) => each[0] as Job);
  const firstTask = new Int32Array(jobs.length + 1);
  jobs.forEach((job, j) => {
    firstTask[j + 1] = (firstTask[j] as number) + job.tasks.length;
  });
  const tasks = jobs.flatMap((job) => job.tasks.map((task, at) => ({ job, task, at })));
  return {
    problem,
    worked,
    alike,
    firstTask,
    kind: Int32Array.from(tasks, ({ task }) => task.kind),
    minutes: Float64Array.from(tasks, ({ task }) => expected(task.minutes)),
    nextFrom: tasks.map(({ job, at }) => nextFrom(lagAfter(job, at))),
    ward: Int8Array.from(tasks, ({ job, task }) =>
      task.act === "admit" ? 1 : task.act === "release" && job.tasks[0]?.act === "admit" ? -1 : 0,
    ),
    uses: tasks.map(({ task }) => (task.uses.size > 0 ? task.uses : null)),
    litres: Float64Array.from(jobs, (job) => job.route.wardLitres),
    ready: Int32Array.from(jobs, (job) => worked.numberFrom[Math.min(lastDay, firstDayOf(job))] as number),
    finish: jobs.map(finish),
    undone: Float64Array.from(jobs, (job) => undoneCost(lastDay, job)),
  };
}

function alikeJobs(problem: PlanProblem): Job[][] {
  const groups = new Map<string, Job[]>();
  for (const job of problem.jobs) {
    const tasks = job.tasks.map((task) =>
      [task.kind, expected(task.minutes), ...[...task.uses].flat()].join(" "),
    );
    const ward = job.tasks[0]?.act === "admit" ? `${wardLag(job)} ${job.route.wardLitres}` : "";
    const key = [firstDayOf(job), job.weight, job.due ?? "", ward, ...tasks].join("|");
    const group = groups.get(key);
    if (group) group.push(job);
    else groups.set(key, [job]);
  }
  return [...groups.values()];
}

/** What one more unit of each shared thing is worth on each worked day, in weighted item-days; none is negative. */
export interface Prices {
  /** [kind][worked day], per minute of a person's work. */
  readonly work: readonly Float64Array[];
  /** [worked day], per minute of a place. */
  readonly places: ReadonlyMap<StationKind, Float64Array>;
  /** [worked day], per litre. */
  readonly ward: Float64Array;
  /** [store][worked day], per unit in the store room that evening; nothing from the day on which more could be ordered. */
  readonly stores: readonly Float64Array[];
}

export const noPrices = (problem: PlanProblem, count: number): Prices => ({
  work: KINDS.map(() => new Float64Array(count)),
  places: new Map([...problem.stations.keys()].map((station) => [station, new Float64Array(count)])),
  ward: new Float64Array(count),
  stores: problem.stores.map(() => new Float64Array(count)),
});
