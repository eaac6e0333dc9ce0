import type { SheetRow } from "../plan/plan.ts";
import { sayAct } from "./conditions.ts";
import { sayMinutes } from "./dates.ts";

/** Minutes after midnight as a clock shows them: `08:30`. */
export const sayClock = (minutes: number, locale: string): string =>
  new Intl.DateTimeFormat(locale, {
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
    timeZone: "UTC",
  }).format(new Date(minutes * 60_000));

export const sayClockRange = ({ from, to }: Pick<SheetRow, "from" | "to">, locale: string): string =>
  `${sayClock(from, locale)}–${sayClock(to, locale)}`;

/** What a row of work is: the act, and whether a break cuts it. */
export const sayWork = ({ act, goesOn }: SheetRow): string =>
  `${act ? sayAct(act) : ""}${goesOn ? ", goes on after the break" : ""}`;

export const sayItems = (count: number): string => `${count} items`;

/** After every contaminated item (S01); its minutes are among the work's. */
export const CHANGE_OVER = "after each: sheet off, wipe, fresh gloves";

/** A row in which no item is worked on. */
export function sayPause(row: SheetRow): string {
  switch (row.kind) {
    case "briefing":
      return "Briefing and writing up.";
    case "change in":
      return "Change: put protection on, lay out the station in the dirty zone.";
    case "mask break":
      return `Mask off, outside the zone: drink water.${row.limit ? ` (${row.limit.source})` : ""}`;
    case "lunch":
      return "Take off what is worn at work, wash hands and face, eat away from the work.";
    case "end of session":
      return "Still in protection: wipe the station down, wash tools, seal the waste and carry it out.";
    case "change out":
      return "Take protection off, wash.";
    case "wipe-down":
      return `Wipe down${row.station ? ` ${row.station}` : ""}: sheet off, wipe, dry, fresh gloves.`;
    case "change-over":
      return `Change over from ${row.items.join(", ")}: sheet off, wipe, fresh gloves.`;
    case "wait":
      return row.act === "box"
        ? `Wait until ${row.items.join(", ")} is photographed and ${row.station || "a table"} is free; ask the lead what to help with.`
        : `Wait until ${row.station} is free; ask the lead what to help with.`;
    case "work":
      return sayWork(row);
  }
}

/** Rows summed under one name on the sheet. */
const SUMS: readonly (readonly [name: string, kinds: readonly SheetRow["kind"][]])[] = [
  ["work", ["work", "change-over"]],
  ["wipe-downs", ["wipe-down"]],
  ["changing and clearing", ["change in", "end of session", "change out"]],
  ["mask breaks", ["mask break"]],
  ["waiting", ["wait"]],
  ["lunch", ["lunch"]],
  ["briefing", ["briefing"]],
];

export function saySums(rows: readonly SheetRow[], locale: string): string {
  return SUMS.flatMap(([name, kinds]) => {
    const minutes = rows.reduce(
      (sum, { kind, from, to }) => (kinds.includes(kind) ? sum + to - from : sum),
      0,
    );
    return minutes > 0 ? [`${name} ${sayMinutes(minutes, locale)}`] : [];
  }).join(" · ");
}

export const sayLonger = (minutes: number, locale: string): string =>
  `${sayMinutes(minutes, locale)} longer than this person’s hours: breaks, waiting and wipe-downs come on top of the work. Ask the lead what to leave.`;

export const sayAssumedHours = (opens: number, lunch: { from: number; by: number }, locale: string): string =>
  `Clock times are a proposal: the day is taken to begin at ${sayClock(opens, locale)}, lunch between ${sayClock(lunch.from, locale)} and ${sayClock(lunch.by, locale)} (later for who begins later). The order and the limits hold whatever the clock says.`;

/** Nobody works near mould alone in the building (P13). */
export const sayCompany = (until: number, locale: string): string =>
  `Somebody stays in the building until ${sayClock(until, locale)}: nobody works near mould alone.`;
