import { ACTS, type Act, type Campaign } from "../../core/items/campaign.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { sayDay, sayDayRange, sayNumber } from "../../core/say/dates.ts";
import { WEEK as words } from "../../core/say/papers/week.ts";
import { sayDrivers } from "../../core/say/risk.ts";
import { addDays, type Day, daysBetween } from "../../core/units/day.ts";
import type { Block, SheetView } from "./sheet-view.ts";

/** The seven days before the plan's morning and the way still to go, for a funder: counts and days, no person and no item. */
export function weekView(plan: Plan, campaign: Campaign, locale = "en-GB"): SheetView {
  const from = addDays(plan.planFrom, -7);
  const to = addDays(plan.planFrom, -1);
  const range = sayDayRange(from, to, locale);
  return {
    kind: words.kind,
    campaign: plan.campaign,
    title: words.title,
    side: range,
    tail: range,
    wide: false,
    code: "",
    blocks: [
      {
        kind: "lead",
        text: words.lead(sayNumber(plan.doneBefore, locale), sayNumber(plan.itemCount, locale)),
      },
      finishBlock(plan, locale),
      doneBlock(plan, campaign, from, locale),
      { kind: "facts", title: "", rows: hoursOf(campaign, from, locale) },
      roomsBlock(plan, locale),
      { kind: "points", title: words.holds, lines: plan.binds.slice(0, 3).map(({ sentence }) => sentence) },
      { kind: "points", title: words.needs, lines: needsOf(plan) },
      { kind: "points", title: words.without, lines: withoutOf(plan) },
    ],
  };
}

function finishBlock(plan: Plan, locale: string): Block {
  const { p10, p50, p90, draws, boxed } = plan.finish;
  const days = Math.max(1, daysBetween(plan.start, plan.end));
  const mark = (share: string, day: Day | null) => ({
    at: day ? Math.min(1, Math.max(0, daysBetween(plan.start, day) / days)) : 1,
    label: share,
    day: day ? words.by(sayDay(day, locale)) : words.afterEnd(sayDay(plan.end, locale)),
  });
  return {
    kind: "span",
    from: sayDay(plan.start, locale),
    to: sayDay(plan.end, locale),
    marks: [mark(words.tenth, p10), mark(words.half, p50), mark(words.nineTenths, p90)],
    says: [
      boxed.p10 === plan.routed
        ? words.allBoxed(sayNumber(plan.routed, locale))
        : words.boxed(
            sayNumber(boxed.p50, locale),
            sayNumber(plan.routed, locale),
            sayNumber(boxed.p10, locale),
          ),
      sentence(sayDrivers(plan)),
      words.honest(draws),
    ].join(" "),
  };
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function doneBlock(plan: Plan, { sessions }: Campaign, from: Day, locale: string): Block {
  const items = (act: Act, isWithin: (day: Day) => boolean): string =>
    sayNumber(
      new Set(sessions.filter((each) => each.act === act && isWithin(each.day)).map(({ item }) => item)).size,
      locale,
    );
  return {
    kind: "table",
    title: words.done,
    columns: [
      { name: words.doneColumns.act, width: "2fr" },
      { name: words.doneColumns.week, width: "1fr" },
      { name: words.doneColumns.before, width: "1fr" },
      { name: words.doneColumns.left, width: "1fr" },
    ],
    rows: ACTS.map((act) => [
      words.act[act],
      { strong: items(act, (day) => day >= from && day < plan.planFrom) },
      items(act, (day) => day < from),
      sayNumber(plan.itemDays.filter(({ days }) => days[act]).length, locale),
    ]),
    blank: 0,
    tall: false,
  };
}

function hoursOf({ sessions, planFrom }: Campaign, from: Day, locale: string): [string, string][] {
  const week = sessions.filter(({ day }) => day >= from && day < planFrom);
  const hours = (list: typeof week): string =>
    sayNumber(list.reduce((sum, { minutes }) => sum + minutes, 0) / 60, locale);
  return [
    [words.minutes, hours(week)],
    [words.mould, hours(week.filter(({ exposed }) => exposed))],
  ];
}

const roomsBlock = ({ rooms }: Plan, locale: string): Block => ({
  kind: "table",
  title: words.rooms,
  columns: [
    { name: words.roomColumns.room, width: "2fr" },
    { name: words.roomColumns.now, width: "1fr" },
    { name: words.roomColumns.toCome, width: "1fr" },
  ],
  rows: rooms.map(({ room, now, toCome }) => [room, sayNumber(now, locale), sayNumber(toCome, locale)]),
  blank: 0,
  tall: false,
});

function needsOf({ orders, planFrom }: Plan): string[] {
  const soon = orders.filter(({ orderBy }) => orderBy <= addDays(planFrom, 14));
  const names = [...new Set(soon.map(({ name }) => name))];
  return [words.orders(soon.length, soon.filter(({ late }) => late).length, names)];
}

function withoutOf({ left }: Plan): string[] {
  const count = (kind: (typeof left)[number]["kind"]): number =>
    left.filter((each) => each.kind === kind).length;
  return [words.aside(count("set aside")), words.door(count("at the Door")), words.noTime(count("no time"))];
}
