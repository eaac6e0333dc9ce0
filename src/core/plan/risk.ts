import { dayNumber, dayOfNumber } from "../units/day.ts";
import { seeded, triangular } from "./chance.ts";
import type { Guide } from "./guide.ts";
import type { Finish } from "./plan.ts";
import type { Job, PlanProblem, Task } from "./problem.ts";
import { type Fortune, walk } from "./walk.ts";
import { expected, KINDS } from "./work.ts";

/** How wide chance is. All common practice, no source. */
const ABSENCE = 0.03; // share of person-days lost to illness and the like
const LATE_DELIVERY = 0.25; // share of stores whose deliveries come late …
const LATE_DAYS = 21; // … by up to so many days
const TEAM_SPREAD = 0.3; // the team's own pace against the norms, low to high around 1, one draw a kind of work

/** Simulated campaigns, each walked day by day with its own luck: when the last item is boxed, and how many are by the end. */
export function finishOf(problem: PlanProblem, guide: Guide, draws: number, seed: number): Finish {
  const ends: number[] = [];
  const boxed: number[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const outcome = walk(problem, guide, fortuneOf(problem, seed + draw));
    boxed.push(outcome.boxed);
    ends.push(outcome.boxed === problem.jobs.length ? outcome.lastDay : Number.POSITIVE_INFINITY);
  }
  ends.sort((a, b) => a - b);
  boxed.sort((a, b) => a - b);
  const at = (values: readonly number[], share: number): number =>
    values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? 0;
  const day = (share: number) => {
    const d = at(ends, share);
    return Number.isFinite(d) && d >= 0 ? dayOfNumber(dayNumber(problem.campaign.planFrom) + d) : null;
  };
  return {
    p10: day(0.1),
    p50: day(0.5),
    p90: day(0.9),
    boxed: { p10: at(boxed, 0.1), p50: at(boxed, 0.5), p90: at(boxed, 0.9) },
    draws,
  };
}

function fortuneOf(problem: PlanProblem, seed: number): Fortune {
  const draw = seeded(Math.imul(seed + 1, 2654435761));
  const pace = KINDS.map(() => triangular(1 - TEAM_SPREAD / 2, 1, 1 + TEAM_SPREAD, draw()));
  const spread = new Map<Job, Float64Array>();
  const ward = new Map<Job, number>();
  for (const job of problem.jobs) {
    spread.set(
      job,
      Float64Array.from(job.tasks, (task) => minutesOf(task, draw()) * (pace[task.kind] ?? 1)),
    );
    const wait = job.route.wardDays;
    if (wait) ward.set(job, Math.max(1, Math.ceil(triangular(wait.low, wait.typical, wait.high, draw()))));
  }
  const away = problem.hands.map(() => Uint8Array.from(problem.days, () => (draw() < ABSENCE ? 1 : 0)));
  const delays = problem.stores.map(() => (draw() < LATE_DELIVERY ? Math.ceil(draw() * LATE_DAYS) : 0));
  return {
    minutes: (job, task) => spread.get(job)?.[task] ?? expected((job.tasks[task] as Task).minutes),
    wardDays: (job) => ward.get(job) ?? 1,
    absent: (p, d) => away[p]?.[d] === 1,
    delay: (store) => delays[store] ?? 0,
  };
}

const minutesOf = (task: Task, u: number): number =>
  triangular(task.minutes.low, task.minutes.typical, task.minutes.high, u);
