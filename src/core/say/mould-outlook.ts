import type { Plan } from "../plan/plan.ts";
import { addDays, type Day } from "../units/day.ts";
import { type MouldOutlook, mouldFactor } from "../ward/mould-outlook.ts";
import { sayDay } from "./dates.ts";

/* When mould could begin on what waits in a store: the line of the plan's answer, and what is said of one item. */

type Known = Extract<MouldOutlook, { known: true }>;
const LOCALE = "en-GB";
const NO_ALL_CLEAR =
  "That is no all-clear: below about 75 % the models are silent, and moulds of sized paper, leather and dirt grow from 65 %.";

const percent = (fraction: number): string => `${Math.round(100 * fraction)} %`;
const air = ({ air: { recent } }: Known): string =>
  `${Math.round(recent.dryBulb)} °C and ${percent(recent.relHum)}`;

/** What the climate where it waits means for one item. */
export function sayMouldOutlook(outlook: MouldOutlook, planFrom: Day): string[] {
  if (!outlook.known) return [sayUnread(outlook)];
  const { days, reader } = outlook;
  if (days.low === null)
    return [
      `In '${reader}' (${air(outlook)}) neither model sees mould begin on it within the campaign. ${NO_ALL_CLEAR}`,
    ];
  const on = (day: number | null): string =>
    day === null ? "not within the campaign" : day === 0 ? "already" : sayDay(addDays(planFrom, day), LOCALE);
  return [
    sayStart(outlook, days.low, planFrom),
    `That is the early end, which counts. As read: ${on(days.typical)}; drier than read, by the slower model: ${on(days.high)}. First growth is seen with a microscope only.`,
    sayBasis(outlook),
  ];
}

/** What the plan makes of it. */
export function sayMouldInPlan(outlook: MouldOutlook): string {
  const factor = mouldFactor(outlook);
  const due = outlook.known && outlook.isSure ? " It is sure enough to be a due day." : "";
  return factor > 1
    ? `The plan counts a day of its waiting ${factor} times, of 1 to 2 (common practice, no source).${due}`
    : "The plan does not reckon with it.";
}

const sayUnread = ({ reader }: Extract<MouldOutlook, { known: false }>): string =>
  reader === null
    ? "No reader stands where it waits, so the climate there moves nothing in the plan. Not measured is not dry: lay a reader there."
    : `The reader '${reader}' gave too little of late, so it moves nothing in the plan. Not measured is not dry: look at the reader.`;

function sayStart(outlook: Known, low: number, planFrom: Day): string {
  if (low === 0) return `Mould may have begun on it in '${outlook.reader}' already: ${air(outlook)}.`;
  return `Mould could begin on it in '${outlook.reader}' from ${sayDay(addDays(planFrom, low), LOCALE)}: ${low} ${low === 1 ? "day" : "days"} at ${air(outlook)}.`;
}

const sayBasis = ({ air: { isSeasonal }, error }: Known): string =>
  `From the reader's last 28 days, repeated${isSeasonal ? " and moved with the months of the weather file" : "; a season that turns damper brings it sooner"}; each reading taken ${Math.round(100 * error)} % either way; the air, not the coldest wall.`;

/** Acts that take an item out of the store it was found in. */
const OUT = ["admit", "wrap", "clean", "image", "box"] as const;

/** Where mould could begin, a line for each such store, with how many of the plan's items still wait there by then; and how many no reader tells of. */
export function sayMouldAhead(
  outlooks: ReadonlyMap<string, MouldOutlook>,
  { itemDays, planFrom }: Pick<Plan, "itemDays" | "planFrom">,
): string[] {
  const waiting = new Map<string, { first: Known; items: number }>();
  let unread = 0;
  for (const { item, days } of itemDays) {
    const outlook = outlooks.get(item);
    if (outlook && !outlook.known) unread++;
    if (!outlook?.known || outlook.days.low === null) continue;
    const out = OUT.map((act) => days[act]).find((day) => day !== undefined && day !== null);
    const begins = addDays(planFrom, outlook.days.low);
    const store = waiting.get(outlook.reader) ?? { first: outlook, items: 0 };
    if (outlook.days.low < (store.first.days.low ?? Number.POSITIVE_INFINITY)) store.first = outlook;
    if (!out || out >= begins) store.items++;
    waiting.set(outlook.reader, store);
  }
  const stores = [...waiting.values()].map(
    ({ first, items }) =>
      `${sayStart(first, first.days.low ?? 0, planFrom).replace(" on it", "")} ${items} of the plan's items are not out of there before it could begin on them${items > 0 ? ": make the store drier too" : ""}.`,
  );
  const silent = `${unread} ${unread === 1 ? "item waits" : "items wait"} where no reader tells, which is not dry.`;
  return unread > 0 ? [...stores, silent] : stores;
}
