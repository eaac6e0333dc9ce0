import type { Plan } from "../../core/plan/plan.ts";
import { type Day, dayNumber, daysBetween } from "../../core/units/day.ts";

/** Who is there when, and how long near mould, on every day of a plan: small enough to be shown whole. */
export interface Roster {
  readonly from: Day;
  readonly end: Day;
  readonly people: readonly RosterPerson[];
}

export interface RosterPerson {
  readonly code: string;
  readonly name: string;
  /** Null: clean work, whatever the cause. */
  readonly limit: { readonly minutesADay: number; readonly daysAWeek: number } | null;
  /** [day from `from`] whole minutes near mould; −1: not there. */
  readonly near: readonly number[];
}

export function rosterOf({ planFrom, end, people, personDays }: Plan): Roster {
  const days = Math.max(0, daysBetween(planFrom, end) + 1);
  const first = dayNumber(planFrom);
  const near = new Map(people.map(({ code }) => [code, new Array<number>(days).fill(-1)]));
  for (const { person, day, exposedMinutes } of personDays) {
    const at = dayNumber(day) - first;
    const own = near.get(person);
    if (own && at >= 0 && at < days) own[at] = Math.round(exposedMinutes);
  }
  return {
    from: planFrom,
    end,
    people: people.map(({ code, name, mouldLimit }) => {
      const own = near.get(code) ?? [];
      // Who is never near mould in this plan is shown as all others on clean work are, whatever the cause.
      return { code, name, near: own, limit: own.some((minutes) => minutes > 0) ? mouldLimit : null };
    }),
  };
}
