import { chanceAt, keyOf, triangular } from "../chance.ts";
import type { Luck } from "../plan.ts";
import type { Job, PlanProblem, Task } from "../problem.ts";
import { EXPECTED, type Fortune } from "../walk.ts";
import { betaPert } from "./beta-pert.ts";
import { paceWidths, TEAM_PACE } from "./pace-widths.ts";

/** How wide chance is. All common practice, no source. */
const ABSENCE = 0.03; // share of a person's days lost to illness and the like …
const MOST_DAYS_AWAY = 5; // … in spells of one to so many days
const LATE_DELIVERY = 0.25; // share of stores whose deliveries come late …
const MOST_DAYS_LATE = 21; // … by up to so many days
const SAME_AIR = 0.5; // chance that a wait goes as the season's air does, the same for all, and not its own way

export const EVERY_LUCK: readonly Luck[] = ["minutes", "waits", "absence", "deliveries", "pace"];

/** The luck of one simulated campaign; what is not among the kinds of luck goes as the plan expects. */
export type Fortunes = (draw: number, lucks: readonly Luck[]) => Fortune;

/**
 * Luck from a seed. A draw hangs on the item, person or store it falls on, so it is the same in a campaign with more or fewer of them, and the
 * same whether other luck is drawn or not: common random numbers.
 */
export function fortunesOf(problem: PlanProblem, seed: number): Fortunes {
  const keys = new Map(problem.jobs.map((job) => [job, keyOf(job.item.id)]));
  const key = (job: Job): number => keys.get(job) ?? 0;
  const widths = paceWidths(problem);
  return (draw, lucks) => {
    const stream = (luck: Luck): number | null =>
      lucks.includes(luck) ? keyOf(`${seed} ${draw} ${luck}`) : null;
    const [minutes, waits, pace] = [stream("minutes"), stream("waits"), stream("pace")];
    const away = daysAway(problem, stream("absence"));
    const delays = daysLate(problem, stream("deliveries"));
    return {
      minutes: (job, at) => {
        const { minutes: band, kind } = job.tasks[at] as Task;
        const own =
          minutes === null ? EXPECTED.minutes(job, at) : betaPert(band, chanceAt(minutes, key(job), kind));
        if (pace === null) return own;
        const team = triangular(TEAM_PACE.low, TEAM_PACE.typical, TEAM_PACE.high, chanceAt(pace, kind));
        return own * (1 + widths(job, kind) * (team - 1));
      },
      wardDays: (job) => {
        const wait = job.route.wardDays;
        if (waits === null || !wait) return EXPECTED.wardDays(job);
        const alike = chanceAt(waits, key(job), 0) < SAME_AIR;
        const u = alike ? chanceAt(waits) : chanceAt(waits, key(job), 1);
        return Math.max(1, Math.ceil(betaPert(wait, u)));
      },
      absent: (p, d) => away[p]?.[d] === 1,
      delay: (store) => delays[store] ?? 0,
    };
  };
}

/** [person] → 1 on days away, in spells. */
function daysAway({ hands, days }: PlanProblem, stream: number | null): Uint8Array[] {
  if (stream === null) return [];
  const begins = ABSENCE / ((1 + MOST_DAYS_AWAY) / 2);
  return hands.map(({ person }) => {
    const away = new Uint8Array(days.length);
    const key = keyOf(person.code);
    for (let d = 0; d < away.length; d++)
      if (chanceAt(stream, key, d, 0) < begins)
        away.fill(1, d, d + 1 + Math.floor(MOST_DAYS_AWAY * chanceAt(stream, key, d, 1)));
    return away;
  });
}

/** Store → days its deliveries come late, all of them alike. */
const daysLate = ({ stores }: PlanProblem, stream: number | null): number[] =>
  stream === null
    ? []
    : stores.map(({ use }) =>
        chanceAt(stream, keyOf(use), 0) < LATE_DELIVERY
          ? Math.ceil(MOST_DAYS_LATE * chanceAt(stream, keyOf(use), 1))
          : 0,
      );
