import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { companyNeededUntil } from "../../core/plan/company.ts";
import { WIPE_FROM } from "../../core/plan/day-order.ts";
import type { PersonDay, Plan, SheetRow } from "../../core/plan/plan.ts";
import { ASSUMED_HOURS } from "../../core/plan/team-clock.ts";
import { sayDo } from "../../core/say/actions.ts";
import { sayDirt } from "../../core/say/conditions.ts";
import { sayDay } from "../../core/say/dates.ts";
import {
  CHANGE_OVER,
  sayAssumedHours,
  sayClockRange,
  sayCompany,
  sayItems,
  sayLonger,
  sayPause,
  saySums,
  sayWork,
} from "../../core/say/day-sheet.ts";
import { type Day, daysBetween, mondayOf } from "../../core/units/day.ts";
import { worn } from "./bench-card-steps.ts";
import type { DayRow, DaySheetView } from "./views.ts";

const STOPS = [
  "colour or fibre on the tool",
  "powder, crystals or a chemical smell",
  "droppings",
  "film that is sticky or smells sharp",
  "flakes, or a leaf or print that resists",
  "anyone feels unwell: stop, leave, wash, say so",
];

/** The sheet of each person present on a day of the plan's clock. A person on clean work is shown as that and nothing more. */
export function daySheetViews(
  plan: Plan,
  campaign: Campaign,
  routes: readonly Route[],
  day: Day,
  locale = "en-GB",
): DaySheetView[] {
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const titles = new Map(campaign.items.map((item) => [item.id, item.title]));
  const ofDay = plan.clock.filter((row) => row.day === day);
  return plan.personDays
    .filter((each) => each.day === day)
    .flatMap((today) => {
      const person = campaign.people.find((each) => each.code === today.person);
      if (!person) return [];
      const rows = ofDay.filter((row) => row.person === person.code);
      const work = rows.filter((row) => row.kind === "work");
      const stations = [...new Set(work.map((row) => row.station).filter((each) => each !== ""))];
      const steps = work.flatMap(({ items, act }) =>
        items.map((item) => routeOf.get(item)?.steps.find((step) => step.act === act)),
      );
      const near = work.some((row) => row.exposed);
      const [first, last] = [rows[0], rows.at(-1)];
      return [
        {
          campaign: campaign.name,
          day: sayDay(day, locale, "full"),
          person: person.name,
          role: person.role,
          stations,
          rows: rows.map((row) => rowOf(row, titles, stations.length > 1, locale)),
          hours: first && last ? sayClockRange({ from: first.from, to: last.to }, locale) : "",
          sums: saySums(rows, locale),
          notes: notesOf(rows, ofDay, today, locale),
          clockNote: sayAssumedHours(ASSUMED_HOURS.opens, ASSUMED_HOURS.lunch, locale),
          mould: mouldOf(plan, campaign, today),
          maskRule: near
            ? `After ${campaign.limits.maskMinutes.value} min of mask wear: off, and ${campaign.limits.maskBreakMinutes.value} min outside the zone.`
            : "",
          protection: worn([...new Set(steps.flatMap((step) => step?.protection ?? []))]).map(sayDo),
          signs: near
            ? ["W009", "M017", "M009", "M004", "M010", "P022"]
            : work.length > 0
              ? ["M009", "M011"]
              : [],
          stops: STOPS,
          askWho: "Ask the lead; the lead asks the conservator. A question is never a delay",
        },
      ];
    });
}

function rowOf(
  row: SheetRow,
  titles: ReadonlyMap<string, string>,
  manyStations: boolean,
  locale: string,
): DayRow {
  const time = sayClockRange(row, locale);
  const minutes = row.to - row.from;
  if (row.kind !== "work")
    return { kind: row.kind === "wipe-down" ? "wipe-down" : "break", time, text: sayPause(row), minutes };
  const [item = ""] = row.items;
  const isOne = row.items.length === 1;
  return {
    kind: "work",
    time,
    item: isOne ? item : sayItems(row.items.length),
    title: isOne ? (titles.get(item) ?? "") : "",
    items: isOne ? [] : row.items,
    act: sayWork(row),
    how: row.dirt >= WIPE_FROM ? CHANGE_OVER : "",
    station: manyStations ? row.station : "",
    dirt: sayDirt(row.dirt),
    minutes,
    exposed: row.exposed,
  };
}

function notesOf(
  rows: readonly SheetRow[],
  ofDay: readonly SheetRow[],
  { presentMinutes }: PersonDay,
  locale: string,
): string[] {
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return [];
  const minutesOf = (kind: SheetRow["kind"]): number =>
    rows.reduce((sum, row) => (row.kind === kind ? sum + row.to - row.from : sum), 0);
  const longer = last.to - first.from - minutesOf("lunch") - minutesOf("briefing") - presentMinutes;
  const until = companyNeededUntil(rows, ofDay);
  return [
    ...(until === null ? [] : [sayCompany(until, locale)]),
    ...(longer > 1 ? [sayLonger(longer, locale)] : []), // a row is rounded to a minute
  ];
}

/** Null, which prints "clean work this week", for everyone without mould work that week, whatever the cause: a blank must not point at anybody. */
function mouldOf(plan: Plan, campaign: Campaign, today: PersonDay): DaySheetView["mould"] {
  const limit = plan.people.find((each) => each.code === today.person)?.mouldLimit ?? null;
  const cleanWork = campaign.calendar.some(
    (row) =>
      row.who === today.person && row.what === "clean work" && row.from <= today.day && today.day <= row.to,
  );
  const monday = mondayOf(today.day);
  const thisWeek = plan.personDays.some(
    (each) =>
      each.person === today.person &&
      each.exposedMinutes > 0 &&
      each.day >= monday &&
      daysBetween(monday, each.day) >= 0 &&
      daysBetween(monday, each.day) < 7,
  );
  if (!limit || cleanWork || !thisWeek) return null;
  const week = plan.personDays.filter(
    (each) =>
      each.person === today.person &&
      each.exposedMinutes > 0 &&
      each.day >= monday &&
      each.day <= today.day &&
      daysBetween(monday, each.day) < 7,
  );
  return {
    today: today.exposedMinutes,
    limitToday: limit.minutesADay,
    week: `${week.reduce((sum, each) => sum + each.exposedMinutes, 0)} min on ${week.length} of ${limit.daysAWeek} days`,
  };
}
