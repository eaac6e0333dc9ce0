import { daysBetween } from "../../units/day.ts";
import type { PlanProblem } from "../problem.ts";
import type { SupposedPlan } from "./supposed-plan.ts";

/** How long items would wait for the one person who releases, against the plan as it is. */
export interface ReleaseQueue {
  readonly person: string;
  /** Releases in the plan, and how many of them another person has in it. */
  readonly releases: number;
  readonly fromOthers: number;
  /** Minutes of the person's time these would take. */
  readonly minutes: number;
  /** Days from the plan's release day to hers: half, nine in ten, longest. */
  readonly waits: { readonly p50: number; readonly p90: number; readonly longest: number };
  /** Releases she would not reach by the end. */
  readonly unreached: number;
}

/** First come, first looked at; release goes before all other work of the person, within hours, mould minutes and exposed days. */
export function releaseQueueOf(problem: PlanProblem, plan: SupposedPlan, person: string): ReleaseQueue {
  const p = problem.hands.findIndex((each) => each.person.code === person);
  const asked = plan.assignments.filter((each) => each.act === "release");
  const queue = asked
    .map((each) => ({ ...each, d: daysBetween(plan.planFrom, each.day) }))
    .sort((a, b) => a.d - b.d || (a.item < b.item ? -1 : 1));
  const waits: number[] = [];
  let next = 0;
  let week = 0;
  let row = 0;
  for (let d = 0; d < problem.days.length && next < queue.length; d++) {
    if (problem.weekday[d] === 0) week = 0;
    const mayMould = week < problem.exposedDaysAWeek && row < problem.exposedDaysInARow;
    let left = problem.hands[p]?.minutes[d] ?? 0;
    let near = mayMould && problem.hands[p]?.mayMould[d] ? nearBudget(problem, left) : 0;
    let exposed = false;
    for (let each = queue[next]; each && each.d <= d && each.minutes <= left; each = queue[next]) {
      if (each.exposed && each.minutes > near) break;
      if (each.exposed) {
        exposed = true;
        near -= each.minutes;
      }
      left -= each.minutes;
      waits.push(d - each.d);
      next++;
    }
    row = exposed ? row + 1 : 0;
    if (exposed) week++;
  }
  waits.sort((a, b) => a - b);
  const at = (share: number): number =>
    waits[Math.min(waits.length - 1, Math.floor(share * waits.length))] ?? 0;
  return {
    person,
    releases: queue.length,
    fromOthers: queue.filter((each) => each.person !== person).length,
    minutes: Math.round(queue.reduce((sum, each) => sum + each.minutes, 0)),
    waits: { p50: at(0.5), p90: at(0.9), longest: waits.at(-1) ?? 0 },
    unreached: queue.length - next,
  };
}

const nearBudget = ({ exposedMinutesADay, overhead }: PlanProblem, present: number): number =>
  Math.max(0, Math.min(exposedMinutesADay - overhead.exposed, present - overhead.clean - overhead.exposed));
