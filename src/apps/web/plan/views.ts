import { type EntryToWrite, entriesOfChanges } from "../../../core/log/entries-of-change.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { eventsAbout } from "../../../core/log/state.ts";
import { isStationOpen } from "../../../core/plan/station-open.ts";
import type { Change } from "../../../core/plan/what-if/change.ts";
import { addDays, type Day, daysBetween } from "../../../core/units/day.ts";
import type { House, Now } from "../log/now.ts";

/** The last plan the lead accepted. */
export interface AcceptedShown {
  /** Hash of its plan.json. */
  readonly plan: string;
  readonly from: Day;
  /** Empty: no single person wrote it. */
  readonly by: string;
}

export interface PlanRoomView {
  readonly accepted: AcceptedShown | null;
  readonly start: Day;
  readonly end: Day;
  readonly people: readonly { readonly code: string; readonly name: string }[];
  readonly stations: readonly { readonly id: string; readonly isHired: boolean }[];
  readonly stores: readonly { readonly id: string; readonly name: string }[];
}

const planRoomView = ({ state, house }: Now): PlanRoomView => {
  const { people, stations, stores, calendar, start, end } = house;
  const { matters } = standingOf(eventsAbout(state, "campaign:"));
  const last = matters.get("plan")?.standing.findLast((event) => isOf(event, "planAccepted"));
  const by = last?.who.person;
  return {
    ...{ start, end },
    accepted:
      last === undefined
        ? null
        : {
            ...{ plan: last.payload.plan, from: last.payload.from },
            by: people.find(({ code }) => code === by)?.name ?? by ?? "",
          },
    people: people.map(({ code, name }) => ({ code, name })),
    stations: stations.map(({ id }) => ({
      id,
      isHired: calendar.some(({ who, what }) => who === id && what === "open"),
    })),
    stores: stores.map(({ id, name }) => ({ id, name })),
  };
};

/** What stands still behind everybody's days: stations that come and go, deliveries, the end. */
export interface PlanDaysView {
  readonly end: Day;
  readonly stations: readonly StationDays[];
  readonly deliveries: readonly DeliveryDay[];
}
export interface StationDays {
  readonly id: string;
  readonly isHired: boolean;
  /** [day from the first asked for] whether it is there. */
  readonly isOpen: readonly boolean[];
}
export interface DeliveryDay {
  readonly store: string;
  readonly name: string;
  readonly day: Day;
  readonly quantity: number;
}

/** @param from first day   @param to last day */
const planDaysView = ({ house }: Now, from: Day, to: Day): PlanDaysView => {
  const days = Array.from({ length: Math.max(0, daysBetween(from, to) + 1) }, (_, n) => addDays(from, n));
  const whole = { ...house, items: [], findings: [], sessions: [], ward: [] };
  return {
    end: house.end,
    stations: house.stations
      .filter(({ id, kind }) => kind === "camera" || comesAndGoes(house, id))
      .map((station) => ({
        id: station.id,
        isHired: house.calendar.some(({ who, what }) => who === station.id && what === "open"),
        isOpen: days.map((day) => isStationOpen(whole, station, day)),
      })),
    deliveries: house.deliveries.flatMap(({ store, day, quantity }) =>
      day < from || day > to
        ? []
        : [{ store, day, quantity, name: house.stores.find(({ id }) => id === store)?.name ?? store }],
    ),
  };
};

const comesAndGoes = ({ calendar }: House, id: string): boolean => calendar.some(({ who }) => who === id);

/** The entries that make what was supposed true; null: the log has none that says it. */
export interface PlanEntriesView {
  readonly entries: readonly EntryToWrite[] | null;
}

const planEntriesView = ({ house, state }: Now, changes: readonly Change[]): PlanEntriesView => ({
  entries: entriesOfChanges(changes, house, state),
});

export const planViews = {
  planRoom: planRoomView,
  planDays: planDaysView,
  planEntries: planEntriesView,
} as const;
