import { addDays, type Day, daysBetween, weekdayOf } from "../../../../core/units/day.ts";
import type { Roster, RosterPerson } from "../use-shown-plan.ts";
import type { PlanDaysView, StationDays } from "../views.ts";

/** Weeks drawn past the end, so that the end can be dragged there. */
const WEEKS_BEYOND = 8;

/** The days a roster covers, in whole weeks. */
export interface Calendar {
  /** A Monday. */
  readonly first: Day;
  readonly weeks: number;
}

export function calendarOf({ from, end }: Pick<Roster, "from" | "end">): Calendar {
  const first = addDays(from, -weekdayOf(from));
  return { first, weeks: Math.floor(daysBetween(first, end) / 7) + 1 + WEEKS_BEYOND };
}

export const dayAt = ({ first }: Calendar, at: number): Day => addDays(first, at);
export const placeOf = ({ first }: Calendar, day: Day): number => daysBetween(first, day);
export const lastDay = (calendar: Calendar): Day => dayAt(calendar, calendar.weeks * 7 - 1);

/** Something in a row that can be taken to another day. */
export interface Mark {
  readonly at: number;
  readonly kind: "end" | "delivery";
  /** Empty: the end. */
  readonly store: string;
  readonly name: string;
  readonly quantity: number;
}

export type Row =
  | { readonly kind: "marks"; readonly what: "end" | "goods"; readonly marks: readonly Mark[] }
  | { readonly kind: "station"; readonly station: StationDays }
  | {
      readonly kind: "person";
      readonly person: RosterPerson /** [day of the calendar] −2: outside the plan or nobody in; −1: not there; else minutes near mould. */;
      readonly near: Int16Array;
    };

/** Rows from the top: the end, deliveries, stations that come and go, people. */
export function rowsOf(calendar: Calendar, roster: Roster, still: PlanDaysView): readonly Row[] {
  const end = { at: placeOf(calendar, still.end), kind: "end", store: "", name: "", quantity: 0 } as const;
  const deliveries = still.deliveries.map(
    ({ store, name, day, quantity }): Mark => ({
      ...{ at: placeOf(calendar, day), kind: "delivery", store, name, quantity },
    }),
  );
  const offset = placeOf(calendar, roster.from);
  const days = calendar.weeks * 7;
  const length = Math.max(0, ...roster.people.map(({ near }) => near.length));
  const isIn = Array.from({ length }, (_, n) => roster.people.some(({ near }) => (near[n] ?? -1) >= 0));
  return [
    { kind: "marks", what: "end", marks: [end] },
    ...(deliveries.length > 0 ? [{ kind: "marks", what: "goods", marks: deliveries } as const] : []),
    ...still.stations.map((station) => ({ kind: "station", station }) as const),
    ...roster.people.map((person): Row => {
      const near = new Int16Array(days).fill(-2);
      for (const [n, minutes] of person.near.entries()) near[offset + n] = isIn[n] ? minutes : -2;
      return { kind: "person", person, near };
    }),
  ];
}

/** A person's week: near mould on so many days, so many minutes. */
export function weekOf(near: Int16Array, week: number): { readonly days: number; readonly minutes: number } {
  const own = near.subarray(week * 7, week * 7 + 7);
  return {
    days: own.reduce((n, minutes) => n + (minutes > 0 ? 1 : 0), 0),
    minutes: own.reduce((sum, minutes) => sum + Math.max(0, minutes), 0),
  };
}
