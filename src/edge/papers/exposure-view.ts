import type { Campaign, Session } from "../../core/items/campaign.ts";
import { sayAct } from "../../core/say/conditions.ts";
import { sayDay, sayNumber } from "../../core/say/dates.ts";
import { EXPOSURE as words } from "../../core/say/papers/exposure.ts";
import { type Day, mondayOf } from "../../core/units/day.ts";
import type { Block, SheetView } from "./sheet-view.ts";

/** Minutes near mould, a page or more for each person who had any: code, day, work, minutes. Nothing else of a person comes in. */
export function exposureViews(campaign: Campaign, locale = "en-GB"): SheetView[] {
  const near = campaign.sessions.filter(({ exposed }) => exposed);
  const codes = [...new Set(near.map(({ person }) => person))].sort();
  const until = sayDay(campaign.planFrom, locale);
  if (codes.length === 0) return [sheetOf(campaign, "", until, [{ kind: "lead", text: words.nobody }])];
  return codes.map((code) => {
    const own = near.filter(({ person }) => person === code);
    return sheetOf(campaign, code, until, personBlocks(campaign, own, locale));
  });
}

const sheetOf = ({ name }: Campaign, code: string, side: string, blocks: readonly Block[]): SheetView => ({
  kind: words.kind,
  campaign: name,
  title: code === "" ? words.kind : words.title(code),
  side,
  tail: code,
  wide: false,
  code: "",
  blocks,
});

function personBlocks({ limits }: Campaign, own: readonly Session[], locale: string): Block[] {
  const days = summed(own, ({ day }) => day);
  const { exposedMinutesADay, exposedDaysAWeek, exposedDaysInARow } = limits;
  const sources = [exposedMinutesADay, exposedDaysAWeek, exposedDaysInARow].map(({ source }) => source);
  const all = own.reduce((sum, { minutes }) => sum + minutes, 0);
  return [
    { kind: "lead", text: words.lead(sayNumber(all, locale), days.size) },
    {
      kind: "points",
      title: "",
      lines: [
        words.limits(exposedMinutesADay.value, exposedDaysAWeek.value, exposedDaysInARow.value),
        words.limitSource([...new Set(sources)].join("; ")),
        words.copy,
      ],
    },
    weekTable(days, exposedDaysAWeek.value, locale),
    {
      kind: "table",
      title: words.days,
      columns: [
        { name: words.dayColumns.day, width: 38 },
        { name: words.dayColumns.work, width: "1fr" },
        { name: words.dayColumns.minutes, width: 30 },
        { name: words.dayColumns.mask, width: 40 },
        { name: words.dayColumns.breaks, width: 30 },
      ],
      rows: [...days].map(([day, minutes]) => [
        sayDay(day, locale, "short"),
        workOf(own.filter((each) => each.day === day)),
        over(minutes, exposedMinutesADay.value, locale),
        "",
        "",
      ]),
      blank: 3,
      tall: false,
    },
    { kind: "facts", title: "", rows: [[words.sign, "……………………………………"]] },
  ];
}

function weekTable(days: ReadonlyMap<Day, number>, mostDays: number, locale: string): Block {
  const weeks = new Map<Day, Day[]>();
  for (const day of days.keys()) weeks.set(mondayOf(day), [...(weeks.get(mondayOf(day)) ?? []), day]);
  return {
    kind: "table",
    title: words.weeks,
    columns: [
      { name: words.weekColumns.week, width: "1fr" },
      { name: words.weekColumns.days, width: "1fr" },
      { name: words.weekColumns.minutes, width: "1fr" },
    ],
    rows: [...weeks].map(([monday, own]) => [
      sayDay(monday, locale, "short"),
      over(own.length, mostDays, locale),
      sayNumber(
        own.reduce((sum, day) => sum + (days.get(day) ?? 0), 0),
        locale,
      ),
    ]),
    blank: 0,
    tall: false,
  };
}

const over = (value: number, limit: number, locale: string) =>
  value > limit ? { strong: sayNumber(value, locale), note: words.over } : sayNumber(value, locale);

/** `Clean 120, Wrap 15`: acts of a day with their minutes. */
const workOf = (sessions: readonly Session[]): string =>
  [...summed(sessions, ({ act }) => act)].map(([act, minutes]) => `${sayAct(act)} ${minutes}`).join(", ");

/** Minutes by day or act, in order. */
function summed<K extends string>(sessions: readonly Session[], key: (each: Session) => K): Map<K, number> {
  const sums = new Map<K, number>();
  for (const each of [...sessions].sort((a, b) => a.day.localeCompare(b.day)))
    sums.set(key(each), (sums.get(key(each)) ?? 0) + each.minutes);
  return sums;
}
