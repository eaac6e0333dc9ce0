import type { Act } from "../../items/campaign.ts";
import { type Day, daysBetween } from "../../units/day.ts";
import type { Plan } from "../plan.ts";

/** What a plan promised when it was accepted. */
export interface AcceptedPlan extends Pick<Plan, "planFrom" | "assignments" | "itemDays"> {
  readonly left: readonly { readonly item: string }[];
  readonly people: readonly { readonly code: string }[];
}

/** An act of an item as a plan gives it. */
export interface Begun {
  readonly item: string;
  readonly act: Act;
  /** Who begins it, or goes on with it on the first day from the morning asked for. */
  readonly person: string;
  /** Days from that morning; negative: all work on it was to be done before. */
  readonly day: number;
  /** Place among all work of the plan. */
  readonly place: number;
  /** It is not finished on that day. */
  readonly goesOn: boolean;
}

export const itemAct = (item: string, act: Act): string => `${item} ${act}`;

/** Every act of the plan, by `itemAct`: its first piece of work from the morning on, else its first of all. */
export function begunFrom(plan: Pick<Plan, "assignments">, morning: Day): Map<string, Begun> {
  const begun = new Map<string, Begun>();
  [...plan.assignments]
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0))
    .forEach(({ item, act, person, day: on }, place) => {
      const day = daysBetween(morning, on);
      const known = begun.get(itemAct(item, act));
      if (!known || (known.day < 0 && day >= 0))
        begun.set(itemAct(item, act), { item, act, person, day, place, goesOn: false });
      else if (day > known.day) begun.set(itemAct(item, act), { ...known, goesOn: true });
    });
  return begun;
}

/** Minutes by which the rounding of a day's lines may shorten it. */
const ROUNDING = 1;

/** Minutes of work near mould, by `person day`; rounded up. */
export function nearMinutesOf(plan: Pick<Plan, "assignments">): Map<string, number> {
  const near = new Map<string, number>();
  for (const { person, day, minutes, exposed } of plan.assignments)
    if (exposed) near.set(`${person} ${day}`, (near.get(`${person} ${day}`) ?? ROUNDING) + minutes);
  return near;
}
