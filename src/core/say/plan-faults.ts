import type { Act } from "../items/campaign.ts";
import type { Fault } from "../plan/checker/fault.ts";
import { sayDay, sayNumber } from "./dates.ts";

/* What is wrong with a plan, one plain sentence for each broken limit. */

/** What is known of a fault, already written for the reader. */
interface Written {
  readonly day: string;
  readonly person: string;
  readonly item: string;
  readonly station: string;
  readonly store: string;
  readonly act: string;
  readonly figure: string;
  readonly got: string;
  readonly limit: string;
  readonly source: string;
}

const DOING: Readonly<Record<Act, string>> = {
  survey: "the survey",
  admit: "the admission to the Ward",
  release: "the release from the Ward",
  covers: "the cover pictures",
  wrap: "the wrapping",
  clean: "the cleaning",
  image: "the imaging",
  box: "the boxing",
};

const ABSENT: Readonly<Record<string, string>> = {
  "not yet here": "before the first day of",
  "no longer here": "after the last day of",
  "free weekday": "on a free weekday of",
  away: "while away:",
  closed: "while the place is closed:",
};

const SENTENCES = {
  // People
  "person-unknown": (f) => `${f.day}: work is given to ${f.person}, who is not in the people table.`,
  "not-present": (f) => `${f.day}: work is planned ${ABSENT[f.got] ?? f.got} ${f.person}.`,
  "over-hours": (f) =>
    `${f.day}: ${f.person} has ${f.got} min of work and changing, and is there for ${f.limit} min.`,
  "skill-missing": (f) =>
    `${f.day}: ${f.person} is given ${f.act} of ${f.item}; that needs the skill ${f.limit}.`,
  "sheet-order": (f) =>
    `${f.day}: on the sheet of ${f.person}, the line of ${f.item} has place ${f.got}, expected ${f.limit}.`,
  "boxed-first": (f) =>
    `${f.day}: on the sheet of ${f.person}, ${f.item} is boxed (place ${f.got}) before ${f.act} (place ${f.limit}).`,

  // Near mould
  "not-booked": (f) =>
    `${f.day}: ${f.person} does ${f.act} of ${f.item}, which has growth on it, and the minutes are on no mould account (${f.source}).`,
  "clean-work": (f) => `${f.day}: ${f.person} is on clean work and is planned near mould (${f.source}).`,
  "mould-minutes": (f) =>
    `${f.day}: ${f.person} has ${f.got} mould minutes; at most ${f.limit} (${f.source}).`,
  "mould-week": (f) =>
    `${f.day}: ${f.person} is near mould on ${f.got} days of one week; at most ${f.limit} (${f.source}).`,
  "mould-row": (f) =>
    `${f.day}: ${f.person} is near mould on ${f.got} days in a row; at most ${f.limit} (${f.source}).`,
  alone: (f) =>
    `${f.day}: ${f.person} is near mould for ${f.limit} min, and others are in the building for ${f.got} min only (${f.source}).`,
  "mask-breaks": (f) =>
    `${f.day}: ${f.person} has ${f.got} min free of mask and work; the breaks need ${f.limit} min (${f.source}).`,
  "clean-after-mould": (f) =>
    `${f.day}: on the sheet of ${f.person}, clean work on ${f.item} comes after work near mould (${f.source}).`,

  // Stations
  "station-unknown": (f) =>
    `${f.day}: ${f.act} of ${f.item} is planned at ${f.got === "" ? "no station" : f.got}; expected a ${f.limit}.`,
  "station-kind": (f) =>
    `${f.day}: ${f.act} of ${f.item} is planned at ${f.station}, a ${f.got}; expected a ${f.limit || "place for clean work"}.`,
  "station-closed": (f) =>
    `${f.day}: work is planned at ${f.station}, which is not there or closed that day.`,
  "station-minutes": (f) =>
    `${f.day}: ${f.station} is used for ${f.got} min, and has ${f.limit} min, all places counted.`,
  "station-hours": (f) =>
    `${f.day}: ${f.person} works ${f.got} min at ${f.station}, which is open for ${f.limit} min.`,
  "not-wiped": (f) =>
    `${f.day}: no wipe-down follows ${f.act} of ${f.item} by ${f.person}; what it leaves, the next item picks up (${f.source}).`,

  // Items and their acts
  "item-unknown": (f) => `${f.day}: ${f.person} is given ${f.item}, which is not in the items table.`,
  "day-outside": (f) => `${f.day}: ${f.act} of ${f.item} is planned, outside the plan (${f.limit}).`,
  "before-arrival": (f) => `${f.day}: ${f.act} of ${f.item} is planned, which arrives on ${f.limit}.`,
  "no-minutes": (f) =>
    `${f.day}: ${f.person} has a line for ${f.act} of ${f.item} without minutes (${f.got}).`,
  "done-before": (f) => `${f.day}: ${f.act} of ${f.item} is planned again; it was done before.`,
  "act-order": (f) =>
    `${f.day}: ${f.act} of ${f.item} comes too soon (${f.limit}; the next act is for the next working day, ${f.source}).`,
  forbidden: (f) => `${f.day}: ${f.act} of ${f.item} is forbidden by rule ${f.source}: ${f.limit}`,
  held: (f) => `${f.day}: ${f.act} of ${f.item} is planned while rule ${f.source} holds it: ${f.limit}`,
  "tests-missing": (f) =>
    `${f.day}: ${f.act} of ${f.item} is planned, and it still waits for its tests: ${f.got} (${f.source}).`,
  "not-pictured": (f) => `${f.day}: ${f.item} is boxed without having been at the camera.`,

  // The Ward
  "ward-litres": (f) => `${f.day}: the Ward would hold ${f.got} litres; it has ${f.limit}.`,
  "ward-wait": (f) =>
    `${f.item} would leave the Ward on ${f.day}; not to be counted on before ${f.limit} (${f.source}).`,

  // Stores
  "store-short": (f) =>
    `${f.day}: ${f.store} would be used up (${f.got}) before an order sent today could be here.`,
  "store-line": (f) => `The stores' page says ${f.got} of ${f.store} are used; the work uses ${f.limit}.`,
  "order-missing": (f) =>
    `${f.day}: ${f.store} runs out; ${f.limit} are wanted and ${f.got} are on the order list in time.`,
  "order-wrong": (f) => `The order of ${f.store}: ${f.figure} is ${f.got}, expected ${f.limit}.`,

  // What the plan says of itself
  "item-days": (f) => `${f.item}: the plan says ${f.act} ends on ${f.got}; its work says ${f.limit}.`,
  "person-day": (f) =>
    `${f.day}: the day's ${f.figure} of ${f.person} is given as ${f.got}; the work makes it ${f.limit}.`,
  figure: (f) =>
    `The plan gives ${f.figure}${f.person === "" ? "" : ` of ${f.person}`} as ${f.got}; it is ${f.limit}.`,
  finish: (f) =>
    `The range of the finish does not hold together: ${f.figure} is ${f.got}, expected ${f.limit}.`,
  chance: (f) =>
    `What chance does${f.item === "" ? "" : ` to ${f.item}`} does not hold together: ${f.figure} is ${f.got}, expected ${f.limit}.`,
  "left-missing": (f) => `${f.item} is neither boxed nor named among the items left.`,
  "left-twice": (f) => `${f.item} is named ${f.got} times among the items left.`,
  "left-wrong": (f) => `${f.item}, named among the items left: ${f.figure} is ${f.got}, expected ${f.limit}.`,
  "left-no-reason": (f) => `${f.item} is left out (${f.source}) without a reason.`,

  // The certificate
  "plan-value": (f) => `The plan gives its cost as ${f.got} weighted item-days; its days make it ${f.limit}.`,
  gap: (f) => `The plan gives the distance from its bound (${f.figure}) as ${f.got}; it is ${f.limit}.`,
  bound: (f) => `The bound, ${f.got}, lies above a plan of ${f.limit} weighted item-days; it proves nothing.`,
} satisfies Record<Fault["code"], (fault: Written) => string>;

/** Every code with a sentence here. */
export const planFaultCodes = (): readonly Fault["code"][] => Object.keys(SENTENCES) as Fault["code"][];

/** The fault as a sentence: when, who or what, what the plan has and what it may have. */
export function sayPlanFault(fault: Fault, locale = "en-GB"): string {
  const value = (it: number | string): string => {
    if (typeof it === "number") return sayNumber(it, locale, Math.abs(it) < 1 ? 4 : 1);
    return it.replace(DAYS, (day) => sayDay(day as NonNullable<Fault["day"]>, locale));
  };
  return SENTENCES[fault.code]({
    day: fault.day ? sayDay(fault.day, locale, "full") : "No day",
    person: fault.person ?? "",
    item: fault.item ?? "",
    station: fault.station ?? "",
    store: fault.store ?? "",
    act: fault.act ? DOING[fault.act] : "work",
    figure: fault.figure ?? "",
    got: value(fault.got),
    limit: value(fault.limit),
    source: fault.source,
  });
}

/** What is said instead of a plan that breaks limits: the first dozen faults, and how many more there are. */
export function sayBrokenPlan(faults: readonly Fault[], locale = "en-GB"): string {
  const shown = faults.slice(0, SHOWN).map((fault) => `  ${sayPlanFault(fault, locale)}`);
  const more = faults.length - shown.length;
  const count = faults.length === 1 ? "1 limit" : `${sayNumber(faults.length, locale)} limits`;
  return [
    `The plan that was made breaks ${count}, so it is not shown:`,
    ...shown,
    ...(more > 0 ? [`  … and ${sayNumber(more, locale)} more.`] : []),
  ].join("\n");
}
const SHOWN = 12;

const DAYS = /\b\d{4}-\d{2}-\d{2}\b/g;
