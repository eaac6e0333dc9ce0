import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Assignment, PersonDay, Plan } from "../../core/plan/plan.ts";
import { sayDo } from "../../core/say/actions.ts";
import { sayAct, sayDirt } from "../../core/say/conditions.ts";
import { sayDay } from "../../core/say/dates.ts";
import { type Day, daysBetween, mondayOf } from "../../core/units/day.ts";
import { worn } from "./bench-card-view.ts";
import type { DayRow, DaySheetView } from "./views.ts";

const STOPS = [
  "colour or fibre on the tool",
  "powder, crystals or a chemical smell",
  "droppings",
  "film that is sticky or smells sharp",
  "flakes, or a leaf or print that resists",
  "anyone feels unwell: stop, leave, wash, say so",
];

/** The sheet of each person present on the day, clean work first. A person on clean work is shown as that and nothing more. */
export function daySheetViews(
  plan: Plan,
  campaign: Campaign,
  routes: readonly Route[],
  day: Day,
  locale = "en-GB",
): DaySheetView[] {
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const titles = new Map(campaign.items.map((item) => [item.id, item.title]));
  return plan.personDays
    .filter((each) => each.day === day)
    .flatMap((today) => {
      const person = campaign.people.find((each) => each.code === today.person);
      if (!person) return [];
      const pieces = plan.assignments
        .filter((each) => each.day === day && each.person === person.code)
        .sort((a, b) => a.order - b.order);
      const stations = [...new Set(pieces.map((piece) => piece.station).filter((each) => each !== ""))];
      const steps = pieces.map((piece) =>
        routeOf.get(piece.item)?.steps.find((step) => step.act === piece.act),
      );
      const near = pieces.some((piece) => piece.exposed);
      return [
        {
          campaign: campaign.name,
          day: sayDay(day, locale, "full"),
          person: person.name,
          role: person.role,
          stations,
          rows: rowsOf(pieces, titles, stations.length > 1),
          mould: mouldOf(plan, campaign, today),
          maskRule: near
            ? `After ${campaign.limits.maskMinutes.value} min of mask wear: off, and ${campaign.limits.maskBreakMinutes.value} min outside the zone.`
            : "",
          protection: worn([...new Set(steps.flatMap((step) => step?.protection ?? []))]).map(sayDo),
          signs: near
            ? ["W009", "M017", "M009", "M004", "M010", "P022"]
            : pieces.length > 0
              ? ["M009", "M011"]
              : [],
          stops: STOPS,
          askWho: "Ask the lead; the lead asks the conservator. A question is never a delay",
        },
      ];
    });
}

function rowsOf(
  pieces: readonly Assignment[],
  titles: ReadonlyMap<string, string>,
  manyStations: boolean,
): DayRow[] {
  return pieces.flatMap((piece, at): DayRow[] => {
    const work: DayRow = {
      kind: "work",
      item: piece.item,
      title: titles.get(piece.item) ?? "",
      act: sayAct(piece.act),
      how: "",
      station: manyStations ? piece.station : "",
      dirt: sayDirt(piece.dirt),
      minutes: Math.max(1, Math.round(piece.minutes)),
      exposed: piece.exposed,
    };
    const change = piece.exposed && !pieces[at - 1]?.exposed;
    return [
      ...(change
        ? [
            {
              kind: "break" as const,
              text: "Change: put protection on, lay out the station in the dirty zone.",
            },
          ]
        : []),
      work,
      ...(piece.wipeAfter
        ? [{ kind: "wipe-down" as const, text: "Wipe-down: sheet off, wipe, dry, fresh gloves." }]
        : []),
    ];
  });
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
