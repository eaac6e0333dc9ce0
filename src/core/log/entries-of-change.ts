import type { CalendarEntry, Campaign, Limits } from "../items/campaign.ts";
import type { Change } from "../plan/what-if/change.ts";
import { changed } from "../plan/what-if/changes.ts";
import { addDays } from "../units/day.ts";
import type { Kind, Payload } from "./kinds.ts";
import { isOf, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout } from "./state.ts";

/** An entry as it is to be written. */
export type EntryToWrite = {
  readonly [K in Kind]: { readonly kind: K; readonly payload: Payload<K> };
}[Kind];

/** The campaign without its items. */
type House = Omit<Campaign, "items" | "findings" | "sessions" | "ward">;

/** What can only be supposed: who comes and what arrives is listed with more than a scenario says, and an order or an air is no entry. */
const ONLY_SUPPOSED: ReadonlySet<Change["change"]> = new Set([
  "more people",
  "more items",
  "hold back",
  "order",
  "room heat",
]);

/**
 * The entries that make supposed changes true, one after the other. Null: the log has no entry that says just that.
 * Held against each other afterwards, a campaign told by them is the one that was supposed.
 */
export function entriesOfChanges(
  changes: readonly Change[],
  house: House,
  state: CampaignState,
): readonly EntryToWrite[] | null {
  const entries: EntryToWrite[] = [];
  let now = house;
  for (const change of changes) {
    if (ONLY_SUPPOSED.has(change.change)) return null;
    const after = changed({ ...now, items: [], findings: [], sessions: [], ward: [] }, change);
    const own =
      change.change === "late"
        ? lateEntries(change, state, now)
        : change.change === "delivery"
          ? [deliveryEntry(change, state)]
          : entriesBetween(now, after);
    if (own === null || own.length === 0) return null;
    entries.push(...own);
    now = after;
  }
  return entries;
}

/** Every delivery on its way under its own name, on its new day. */
function lateEntries(
  { stores, days }: Change & { change: "late" },
  state: CampaignState,
  { planFrom }: House,
): EntryToWrite[] {
  return stores.flatMap((store) =>
    expectedOf(state, store)
      .filter(({ day }) => day >= planFrom)
      .map((payload) => {
        const day = addDays(payload.day, days);
        return {
          kind: "deliveryExpected",
          payload: { ...payload, day: day < planFrom ? planFrom : day },
        } as const;
      }),
  );
}

/** What is on its way of a store, as it was written down. */
function expectedOf(state: CampaignState, store: string): Payload<"deliveryExpected">[] {
  const { matters } = standingOf(eventsAbout(state, `store:${store}`));
  return [...matters.values()].flatMap(({ standing }) => {
    if (standing.some((event) => isOf(event, "deliveryArrived"))) return [];
    const last = standing.findLast((event) => isOf(event, "deliveryExpected"));
    return last === undefined ? [] : [last.payload];
  });
}

/** A delivery of its own, with a name that no other of the store has. */
function deliveryEntry(
  { store, day, quantity }: Change & { change: "delivery" },
  state: CampaignState,
): EntryToWrite {
  const taken = new Set(
    standingOf(eventsAbout(state, `store:${store}`)).counted.flatMap((event) =>
      isOf(event, "deliveryExpected", "deliveryArrived") ? [event.payload.delivery] : [],
    ),
  );
  let delivery = `${store} ${day}`;
  for (let n = 2; taken.has(delivery); n++) delivery = `${store} ${day} ${n}`;
  return { kind: "deliveryExpected", payload: { store, delivery, day, quantity } };
}

/** Calendar rows, settings, stations and limits that differ; null: a row went away, which no entry says. */
function entriesBetween(before: House, after: House): EntryToWrite[] | null {
  const added = after.calendar.filter((row) => !before.calendar.includes(row));
  const gone = before.calendar.filter((row) => !after.calendar.includes(row));
  if (gone.some((row) => !added.some((other) => covers(other, row)))) return null;
  if (added.some((row) => isOverruled(row, before))) return null;
  const { name, start, end, wardLitres, stations, limits } = after;
  const people = new Set(after.people.map(({ code }) => code));
  return [
    ...added.map((row) => rowEntry(row, people)),
    ...(end !== before.end || wardLitres !== before.wardLitres
      ? [{ kind: "settingsChanged", payload: { name, start, end, wardLitres } } as const]
      : []),
    ...(stations === before.stations ? [] : [{ kind: "stationsChanged", payload: { stations } } as const]),
    ...(limits === before.limits
      ? []
      : [{ kind: "limitsChanged", payload: { limits: byTheLead(limits) } } as const]),
  ];
}

/** A limit that was supposed and is taken has the lead as its source. */
function byTheLead(limits: Limits): Limits {
  const all = Object.entries(limits).map(([name, limit]) => [
    name,
    limit.source === "supposed" ? { ...limit, source: "set by the lead" } : limit,
  ]);
  return { ...limits, ...Object.fromEntries(all) };
}

const covers = (one: CalendarEntry, other: CalendarEntry): boolean =>
  one.who === other.who &&
  one.what === other.what &&
  one.hours === other.hours &&
  one.from <= other.from &&
  one.to >= other.to;

/** Of the rows of hours that cover a day the first counts, and an entry comes last: a longer day written before would stand. */
const isOverruled = (row: CalendarEntry, { calendar }: House): boolean =>
  row.what === "hours" &&
  calendar.some(
    (each) =>
      each.what === "hours" &&
      (each.who === row.who || each.who === "everyone" || row.who === "everyone") &&
      each.from <= row.to &&
      each.to >= row.from &&
      (each.hours ?? 0) > (row.hours ?? 0),
  );

function rowEntry({ who, what, from, to, hours }: CalendarEntry, people: ReadonlySet<string>): EntryToWrite {
  const days = { person: who, from, to };
  if (people.has(who) && what === "away") return { kind: "personAway", payload: days };
  if (people.has(who) && what === "clean work") return { kind: "cleanWorkThisWeek", payload: days };
  if (people.has(who) && what === "hours")
    return { kind: "personHours", payload: { ...days, hours: hours ?? 0 } };
  return {
    kind: "calendarChanged",
    payload: { who, what, from, to, ...(hours === undefined ? {} : { hours }) },
  };
}
