import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { CALENDAR as words } from "../../core/say/papers/calendar.ts";
import { addDays, type Day } from "../../core/units/day.ts";
import type { CalendarEvent } from "./ical-text.ts";

/** Days between two looks at a bag. Common practice, no source. */
const EVERY = 3;
/** Waits that end by drying, so that the gel is changed at each look. */
const DRIES = /^drying/;

interface Stay {
  readonly item: string;
  readonly from: Day;
  /** The day the plan lets it out. */
  readonly until: Day;
  readonly dries: boolean;
}

/** One entry a day for all bags to be read, on days when somebody is in. */
export function wardRounds(source: {
  readonly plan: Plan;
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
}): CalendarEvent[] {
  const { plan } = source;
  const open = [
    ...new Set(plan.personDays.flatMap((each) => (each.presentMinutes > 0 ? [each.day] : []))),
  ].sort();
  const read = new Map<Day, Set<string>>();
  const gel = new Map<Day, Set<string>>();
  const note = (map: Map<Day, Set<string>>, day: Day, item: string): void => {
    map.set(day, (map.get(day) ?? new Set()).add(item));
  };
  for (const stay of staysOf(source))
    for (let look = addDays(stay.from, EVERY); look < stay.until; look = addDays(look, EVERY)) {
      const day = openDay(open, look, stay.from);
      if (look < plan.planFrom || day === null || day >= stay.until) continue;
      note(read, day, stay.item);
      if (stay.dries) note(gel, day, stay.item);
    }
  return [...read].map(([day, items]) => {
    const [all, changed] = [[...items].sort(), [...(gel.get(day) ?? [])].sort()];
    return {
      about: ["ward round", day],
      day,
      clock: null,
      summary: words.round(all.length, changed.length),
      description: words.roundNote(all, changed),
    };
  });
}

/** From the last reading, else from the bag's closing or the planned day of it, to the planned release; to the end where none is planned. */
function staysOf({
  plan,
  campaign,
  routes,
}: {
  readonly plan: Plan;
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
}): Stay[] {
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const since = new Map<string, Day>();
  for (const { item, act, day } of campaign.sessions) if (act === "admit") since.set(item, day);
  for (const { item, what, day } of campaign.ward)
    if ((what === "closed" || what === "read") && day > (since.get(item) ?? "")) since.set(item, day);
  const released = new Set(campaign.sessions.flatMap(({ act, item }) => (act === "release" ? [item] : [])));
  const planned = new Map(plan.itemDays.map(({ item, days }) => [item, days]));
  return [...new Set([...since.keys(), ...planned.keys()])].flatMap((item) => {
    const days = planned.get(item);
    const from = days?.admit ?? since.get(item);
    const dries = DRIES.test(routeOf.get(item)?.wardWhy ?? "");
    return from && !released.has(item) ? [{ item, from, until: days?.release ?? plan.end, dries }] : [];
  });
}

/** The last day on which somebody is in, not after the wanted one and after the first; else the next. */
function openDay(open: readonly Day[], wanted: Day, after: Day): Day | null {
  const before = open.findLast((day) => day <= wanted && day > after);
  return before ?? open.find((day) => day >= wanted) ?? null;
}
