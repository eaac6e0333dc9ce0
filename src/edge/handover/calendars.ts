import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import type { Norms } from "../../core/care/norms.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { ASSUMED_HOURS } from "../../core/plan/team-clock.ts";
import { CALENDAR as words } from "../../core/say/papers/calendar.ts";
import { addDays, type Day } from "../../core/units/day.ts";
import { hadGrowth } from "../papers/had-growth.ts";
import { type CalendarEvent, icalText } from "./ical-text.ts";
import { wardRounds } from "./ward-rounds.ts";

/** What the calendars are made of. */
export interface CalendarSource {
  readonly plan: Plan;
  readonly campaign: Campaign;
  readonly care: readonly ItemCare[];
  readonly routes: readonly Route[];
  readonly norms: Norms;
}

/** The house's calendar (camera, Ward rounds, look-backs, orders) and each person's shifts: file name and text. */
export function calendars(source: CalendarSource): { readonly name: string; readonly text: string }[] {
  const { plan, campaign } = source;
  const text = (name: string, events: readonly CalendarEvent[]): string =>
    icalText(name, campaign.name, plan.planFrom, inOrder(events));
  const house = [...cameraSlots(source), ...wardRounds(source), ...lookBacks(source), ...orderDays(plan)];
  return [
    { name: "house.ics", text: text(words.name(campaign.name), house) },
    ...plan.people.map(({ code }) => ({
      name: `shifts-${code.replace(/[^\p{L}\p{N}_-]/gu, "-")}.ics`,
      text: text(words.nameOf(campaign.name, code), shifts(plan, code)),
    })),
  ];
}

const inOrder = (events: readonly CalendarEvent[]): CalendarEvent[] =>
  [...events].sort(
    (a, b) =>
      a.day.localeCompare(b.day) ||
      (a.clock?.from ?? -1) - (b.clock?.from ?? -1) ||
      a.summary.localeCompare(b.summary),
  );

/** By the clock where the day is laid in it, else from the usual opening for the hours present and lunch. */
const shifts = (plan: Plan, code: string): CalendarEvent[] =>
  plan.personDays
    .filter(({ person, presentMinutes }) => person === code && presentMinutes > 0)
    .map(({ day, presentMinutes }) => {
      const rows = plan.clock.filter((row) => row.day === day && row.person === code);
      const from = rows[0]?.from ?? ASSUMED_HOURS.opens;
      const to = rows.at(-1)?.to ?? ASSUMED_HOURS.opens + presentMinutes + ASSUMED_HOURS.lunch.minutes;
      return {
        about: ["shift", code, day],
        day,
        clock: { from, to },
        summary: words.shift(code),
        description: words.shiftNote,
      };
    });

function cameraSlots({ plan }: CalendarSource): CalendarEvent[] {
  const slots = new Map<string, (typeof plan.assignments)[number][]>();
  for (const each of plan.assignments)
    if (each.act === "image") {
      const key = `${each.day} ${each.station}`;
      slots.set(key, [...(slots.get(key) ?? []), each]);
    }
  return [...slots.values()].flatMap((pieces) => {
    const [first] = pieces;
    if (!first) return [];
    const { day, station } = first;
    const rows = plan.clock.filter(
      (row) => row.day === day && row.station === station && row.act === "image",
    );
    const names = [...new Set(pieces.map(({ item }) => item))];
    return [
      {
        about: ["camera", station, day],
        day,
        clock:
          rows.length === 0
            ? null
            : { from: Math.min(...rows.map(({ from }) => from)), to: Math.max(...rows.map(({ to }) => to)) },
        summary: words.camera(station, names.length),
        description: words.cameraNote(
          pieces.reduce((sum, { minutes }) => sum + minutes, 0),
          names,
        ),
      },
    ];
  });
}

/** Boxed items that had growth or insects, the days of the norm after boxing. */
function lookBacks({ plan, campaign, care, norms }: CalendarSource): CalendarEvent[] {
  const grown = new Set(care.filter(hadGrowth).map(({ item }) => item.id));
  const boxed = [
    ...campaign.sessions.filter(({ act }) => act === "box").map(({ item, day }) => ({ item, day })),
    ...plan.itemDays.flatMap(({ item, days }) => (days.box ? [{ item, day: days.box }] : [])),
  ].filter(({ item }) => grown.has(item));
  const { low, typical } = norms.band("d-lookback");
  return [low, typical].flatMap((after) => {
    const byDay = new Map<Day, string[]>();
    for (const { item, day } of boxed) {
      const look = addDays(day, after);
      if (look >= plan.planFrom) byDay.set(look, [...(byDay.get(look) ?? []), item]);
    }
    return [...byDay].map(([day, list]) => ({
      about: ["look-back", String(after), day],
      day,
      clock: null,
      summary: words.lookBack(after, list.length),
      description: words.lookBackNote(list),
    }));
  });
}

const orderDays = (plan: Plan): CalendarEvent[] =>
  plan.orders.map(({ store, name, packs, quantity, unit, route, orderBy, neededBy }) => ({
    about: ["order", store, neededBy],
    day: orderBy < plan.planFrom ? plan.planFrom : orderBy,
    clock: null,
    summary: words.order(name),
    description: words.orderNote(packs, `${quantity} ${unit}`, route),
  }));
