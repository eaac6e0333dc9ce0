import type { Campaign, Session, WardNote } from "../src/core/items/campaign.ts";
import { seeded, triangular } from "../src/core/plan/chance.ts";
import type { DayPlan } from "../src/core/plan/improve/day-plan.ts";
import type { Job, Task } from "../src/core/plan/problem.ts";
import { EXPECTED, type Fortune, type Walk, walk } from "../src/core/plan/walk.ts";
import { expected } from "../src/core/plan/work.ts";
import { addDays, weekdayOf } from "../src/core/units/day.ts";

const DAYS = 7;

export interface WeekLuck {
  readonly seed: number;
  /** Minutes of every task over what the plan reckons with, on the average. */
  readonly slower: number;
  /** Share of person-days lost. */
  readonly absence: number;
}

/** Minutes spread over each task's own norm, low to high, around what the plan reckons with; nobody away. */
export const usualLuck = (seed: number): WeekLuck => ({ seed, slower: 1, absence: 0 });

/**
 * The campaign a week later: its plan worked with some luck, and written down as the tables ask: acts that were finished, each with its
 * minutes, bags closed and read on working days, stores counted. What was only begun is in no table.
 */
export function afterAWeek(campaign: Campaign, { walkedIn, guide }: DayPlan, luck: WeekLuck): Campaign {
  const week = walk(walkedIn, guide, fortuneOf(walkedIn.jobs, luck));
  const planFrom = addDays(campaign.planFrom, DAYS);
  const sessions = sessionsOf(campaign, week);
  const stores = campaign.stores.map((store) => {
    const at = walkedIn.stores.findIndex(({ use }) => use === store.use);
    const moved = (series: Float64Array = new Float64Array(0)): number =>
      series.subarray(0, DAYS).reduce((sum, each) => sum + each, 0);
    return {
      ...store,
      onHand: store.onHand + moved(walkedIn.stores[at]?.arrivals) - moved(week.used[at]),
    };
  });
  return {
    ...campaign,
    planFrom,
    stores,
    sessions: [...campaign.sessions, ...sessions],
    ward: [...campaign.ward, ...sessions.flatMap((each) => bagNotes(each, planFrom))],
  };
}

function fortuneOf(jobs: readonly Job[], { seed, slower, absence }: WeekLuck): Fortune {
  const draw = seeded(seed);
  const minutes = new Map(
    jobs.map((job) => [job, job.tasks.map((task) => slower * minutesOf(task, draw()))]),
  );
  const away = new Map<string, boolean>();
  return {
    ...EXPECTED,
    minutes: (job, task) => minutes.get(job)?.[task] ?? 0,
    absent: (person, day) => {
      const key = `${person} ${day}`;
      const known = away.get(key) ?? draw() < absence;
      away.set(key, known);
      return known;
    },
  };
}

/** A draw over the norm's triangle, its mean brought to the plan's. */
function minutesOf({ minutes: { low, typical, high } }: Task, u: number): number {
  const mean = (low + typical + high) / 3;
  return mean > 0 ? (triangular(low, typical, high, u) * expected({ low, typical, high })) / mean : 0;
}

function sessionsOf({ planFrom, people }: Campaign, { pieces, ends }: Walk): Session[] {
  const worked = new Map<string, { minutes: number; person: string }>();
  const keyOf = (job: Job, task: number): string => `${job.item.id} ${task}`;
  for (const { job, task, person, minutes } of pieces) {
    const known = worked.get(keyOf(job, task))?.minutes ?? 0;
    worked.set(keyOf(job, task), { minutes: known + minutes, person: people[person]?.code ?? "" });
  }
  return [...ends].flatMap(([job, days]) =>
    job.tasks.flatMap(({ act, exposed }, task) => {
      const day = days[task] ?? -1;
      const done = worked.get(keyOf(job, task));
      if (day < 0 || day >= DAYS || !done) return [];
      return [{ day: addDays(planFrom, day), item: job.item.id, act, exposed, ...done }];
    }),
  );
}

/** A bag closed at noon and read every working day after at 50 %. */
function bagNotes({ act, item, day }: Session, before: Campaign["planFrom"]): WardNote[] {
  if (act !== "admit") return [];
  const note = (days: number, what: WardNote["what"], value: number): WardNote => ({
    item,
    day: addDays(day, days),
    minute: 720,
    what,
    value,
  });
  const read = Array.from({ length: DAYS }, (_, days) => note(days, "read", 0.5));
  return [note(0, "closed", 10), ...read.filter((each) => each.day < before && weekdayOf(each.day) < 5)];
}
