import type { Order, Packing } from "../plan/plan.ts";
import type { Substitute } from "../stores/goods/goods.ts";
import type { OnTheWay } from "../stores/projection/on-the-way.ts";
import type { StoreOutlook } from "../stores/projection/store-outlook.ts";
import { addDays, type Day, daysBetween } from "../units/day.ts";
import { sayDay } from "./dates.ts";

/* What is said of the store room. */

export const STORES_HELP = `leafward stores <folder>: what each store has, when it runs out, what to send for and by when

  --item <store>         one store: how it runs down week by week, what is on its way, orders, what may stand in for it
  --all                  every store, also those that last
  --today yyyy-mm-dd     the morning to reckon from (default: planFrom of campaign.json, or its start)
  --json                 the same answer as JSON

On hand is the last count less what the work since has used. Use is the norm's, moved by the team's own counts.
Exit codes: 0 well; 1 an order is due this week or comes too late; 2 it could not be done.`;

const LOCALE = "en-GB";
const tiny = (day: Day): string => sayDay(day, LOCALE, "tiny");
export const sayDays = tiny;
/** A day, with its year where it is not the campaign's present one. */
const day = (on: Day, today: Day): string =>
  on.slice(0, 4) === today.slice(0, 4) ? tiny(on) : `${tiny(on)} ${on.slice(0, 4)}`;

/** As exactly as anybody counts: whole above ten, else one digit after the point. */
export const quantity = (n: number): string =>
  n >= 10 ? Math.round(n).toLocaleString("en-GB") : `${Number(n.toFixed(1))}`;
const packSize = (n: number): string => n.toLocaleString("en-GB", { maximumFractionDigits: 3 });

/** `1 × 100 + 2 × 20`. */
export const sayPacks = ({ packs }: Packing): string =>
  packs.map(({ size, count }) => `${count} × ${packSize(size)}`).join(" + ");

/** `6 Nov (12 Oct to 20 Dec)`, the days by which one campaign in ten, half and nine in ten have none left. */
export function sayRunsOut({ runsOut: { p10, p50, p90 } }: StoreOutlook, today: Day): string {
  if (p50)
    return `${day(p50, today)} (${p10 ? day(p10, today) : ""} to ${p90 ? day(p90, today) : "the end"})`;
  return p10 ? `lasts; 1 in 10 by ${day(p10, today)}` : "lasts";
}

export const STORES_WORDS = {
  heads: ["Store", "On hand", "A week", "Runs out (1 in 10 – 9 in 10)", "Order by", "Packs"],
  arguments: "leafward stores needs one campaign folder, for example: npx leafward stores demo/saltmere",
  day: (got: string): string => `--today ${got}: expected a day such as 2026-06-01.`,
  none: "No store is listed, so nothing can be said of what runs out.",
  noneTodo:
    "Write what is in the store room into stores.csv: one row a thing, with what it is used as, how many are here and how long more takes. An example: npx leafward new <folder>.",
  unknown: (got: string, known: readonly string[]): string =>
    `There is no store "${got}". There are: ${known.join(", ")}.`,
  understood: (name: string, planFrom: Day, end: Day): string =>
    `${name}: stores on ${sayDay(planFrom, LOCALE, "short")} ${planFrom.slice(0, 4)}, along the plan to ${sayDay(end, LOCALE)}`,
  verdict: (short: number, due: number, late: number): string =>
    short === 0
      ? "Every store lasts to the end as the plan expects; nothing has to be ordered."
      : [
          `${short === 1 ? "One store runs" : `${short} stores run`} out before the end with nothing more ordered`,
          due === 0
            ? "; no order is due this week."
            : `; ${due === 1 ? "one order is" : `${due} orders are`} due this week.`,
          late === 0
            ? ""
            : ` ${late === 1 ? "One comes" : `${late} come`} too late, and the plan waits for it.`,
        ].join(""),
  send: (order: Order, today: Day): string =>
    `${order.orderBy <= today ? "Send today" : `Send by ${sayDay(order.orderBy, LOCALE, "short")}`} (${order.route}): ${order.name}, ${order.packing ? sayPacks(order.packing) : order.packs} ${order.unit}${sayCost(order)}, needed by ${day(order.neededBy, today)}${order.late ? ": too late, it is here after that day" : ""}${sayKeeps(order, today)}.`,
  lasting: (names: readonly string[]): string =>
    `Lasts, also where one in ten uses more: ${names.join("; ")}.`,
  untouched: (names: readonly string[]): string => `The plan takes none of: ${names.join("; ")}.`,
  later: (n: number): string => `… and ${n} more that run out later: --all`,
  ranges: "The ranges are as wide as the norms of use, until two counts with work between them narrow them.",
  more: "One store week by week, and what may stand in for it: --item <store>. Every store: --all.",
} as const;

const sayCost = ({ packing }: Order): string =>
  packing?.cost === null || packing === undefined ? "" : ` for ${packing.cost.toFixed(2)}`;
const sayKeeps = ({ keepsUntil }: Order, today: Day): string =>
  keepsUntil ? `; keeps to ${day(keepsUntil, today)}, the rest comes later` : "";

/** Where no substitute is published nothing is made up. */
export const saySubstitute = (name: string, found: Substitute | null): string =>
  found === null
    ? `Until there is more of ${name}: no substitute is listed; ask before anything takes its place.`
    : `Until there is more of ${name}: ${found.instead.join(", or ")}. Never ${found.never.join(", ")}.${found.caution ? ` ${found.caution}` : ""} (${found.status})`;

export const STORE_WORDS = {
  verdict: (outlook: StoreOutlook, today: Day): string =>
    `${outlook.store.name}: ${quantity(outlook.store.onHand)} ${outlook.store.unit} on hand, about ${quantity(outlook.aWeek)} a week over the next four weeks. ${sayEnd(outlook, today)}`,
  counted: (on: Day, counted: number, usedSince: number, unit: string, today: Day): string =>
    `Counted ${quantity(counted)} ${unit} on the morning of ${day(on, today)}; work since used about ${quantity(usedSince)}.`,
  uncounted:
    "Taken as written in the stores table; a day in its column `counted` lets the work since be taken off.",
  measured: (factor: number, sessions: number): string =>
    `${factor.toFixed(2)} times the norm, from ${sessions} ${sessions === 1 ? "piece" : "pieces"} of work between counts${sessions < 15 ? "; few, so the norm still speaks" : ""}.`,
  unmeasured: "not measured yet; two counts with work between them tell it.",
  reorder: (units: number, unit: string, leadDays: number): string =>
    `Order when ${quantity(units)} ${unit} are left: use of its lead of ${leadDays} days and three weeks more (common practice).`,
  onTheWay: ({ day: comes, quantity: n, outWithout, least }: OnTheWay, unit: string, today: Day): string =>
    `${quantity(n)} ${unit} on ${day(comes, today)}: ${sayWithout(comes, outWithout, today)}${least > 0 ? ` At least ${quantity(least)} of it must come until an order sent today could be here.` : ""}`,
  lost: (units: number, unit: string, expires: Day, today: Day): string =>
    `${quantity(units)} ${unit} go past their date of ${day(expires, today)} unused: use these first.`,
  why: ({ packing }: Order): string =>
    packing === undefined
      ? ""
      : packing.cost === null
        ? `The fewest packs; a price for each would give the least cost. ${quantity(packing.leftover)} over beside the tenth for spoilage.`
        : `The least cost of all packs there are. ${quantity(packing.leftover)} over beside the tenth for spoilage.`,
  chart: (unit: string): string =>
    `What is left, ${unit}, with nothing more ordered: █ also if more is used, ▒ as expected, ░ if less is used`,
  labels: {
    stock: "Stock",
    use: "Own use",
    reorder: "Re-order point",
    coming: "On its way",
    packs: "Packs",
    dates: "Dates",
  },
} as const;

function sayEnd(outlook: StoreOutlook, today: Day): string {
  const { p10, p50 } = outlook.runsOut;
  if (p50) return `It runs out on ${sayRunsOut(outlook, today)} with nothing more ordered.`;
  return p10
    ? `It lasts to the end as expected; where more is used, in one campaign of ten, it is gone by ${day(p10, today)}.`
    : "It lasts to the end, also where more is used.";
}

function sayWithout(comes: Day, out: Day | null, today: Day): string {
  if (out === null) return "the store lasts without it, also where more is used.";
  const late = daysBetween(comes, out);
  if (late < 0)
    return `where more is used the store is empty on ${day(out, today)} already, before it comes.`;
  return `may come ${late} ${late === 1 ? "day" : "days"} late; without it the store is short on ${day(out, today)} where more is used.`;
}

/** `today by sea`, `Tue 9 Jun by air`; for what lasts only as expected the day to count it again. */
export function sayOrderBy({ orders: [first], runsOut, store }: StoreOutlook, today: Day): string {
  if (first)
    return `${first.orderBy <= today ? "today" : sayDay(first.orderBy, LOCALE, "short")} ${byRoute(first.route)}`;
  if (!runsOut.p10) return "";
  const by = addDays(runsOut.p10, -store.leadDays - 21);
  return `count again ${by <= today ? "today" : tiny(by)}`;
}
const byRoute = (route: string): string => (route === "local" ? "local" : `by ${route}`);

/** On the order list. */
export const ORDER_NOTES = {
  late: (neededBy: string): string => `Late: ordered today it still comes after ${neededBy}.`,
  keeps: (until: string): string => `Keeps to ${until}: what is needed later is ordered later.`,
  buffer:
    "Quantities carry one tenth for spoilage and learning; each order goes off three weeks before it must, sooner where use may be higher.",
  unpriced:
    "Where packs have no price the fewest are taken, and of those the least left over; prices in stores.csv give the least cost.",
  carriage: (days: number): string =>
    `From now to the end of the campaign are ${days} days. Alcohol, lithium cells and aerosols travel under dangerous-goods rules: buy them locally where you can, and follow local rules.`,
} as const;

export const STORES_CAUTIONS = {
  estimate:
    "Norms of use are common practice without a source until the team's own counts move them; the ranges are as wide.",
  "dangerous-goods":
    "Alcohol, lithium cells and aerosols travel under dangerous-goods rules: follow local rules and licensed practice.",
} as const;
