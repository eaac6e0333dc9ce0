import type { Campaign } from "../items/campaign.ts";
import type { Left } from "../plan/plan.ts";
import type { Change } from "../plan/what-if/change.ts";
import type { Difference, FirstOutlook, Outlook, Share } from "../plan/what-if/compare.ts";
import type { FreezerQueue } from "../plan/what-if/freezer-queue.ts";
import type { ReleaseQueue } from "../plan/what-if/release-queue.ts";
import { heatEffect } from "../plan/what-if/room-heat.ts";
import type { Day } from "../units/day.ts";
import { sayDay, sayDayRange, sayNumber, sayPercent } from "./dates.ts";
import { sayLimitName } from "./what-if-refusals.ts";

/**
 * A finish that moves by so few days has not moved: building a plan anew can move its last item as much. Measured: of 54 changes that can
 * only help, or are not felt, on six invented campaigns one moved the typical finish later by 4 days and one by 1; the others by none.
 */
export const NOISE_DAYS = 4;
/** Nor have so few items, as a share of all, gone or come. */
const NOISE_SHARE = 0.01;
const NAMED = 10;

const count = (n: number, word: string, locale: string): string =>
  `${sayNumber(n, locale)} ${word}${n === 1 ? "" : "s"}`;

/** What would be different, in one line; never why. */
export function sayChange(change: Change, campaign: Campaign, locale = "en-GB"): string {
  const day = (at: Day): string => sayDay(at, locale);
  const name = (code: string): string => {
    const person = campaign.people.find((each) => each.code === code);
    return person ? `${person.name} (${code})` : code;
  };
  const goods = (id: string): string => campaign.stores.find((each) => each.id === id)?.name ?? id;
  const n = (value: number): string => sayNumber(value, locale, 1);
  switch (change.change) {
    case "clean work":
      return `${name(change.person)} on clean work ${sayWhen(change, campaign, locale)}`;
    case "away":
      return `${name(change.person)} away ${sayWhen(change, campaign, locale)}`;
    case "hours":
      return `${change.who === "everyone" ? "everyone" : name(change.who)} ${n(change.hours)} hours a day ${sayWhen(change, campaign, locale)}`;
    case "more people":
      return `${count(change.count, `more ${change.role}`, locale)} ${sayWhen(change, campaign, locale)}, ${change.mouldWork ? "mould work among it" : "clean work only"}`;
    case "late":
      return `${change.stores.map(goods).join(", ")}: ${count(Math.abs(change.days), "day", locale)} ${change.days < 0 ? "earlier" : "later"}`;
    case "delivery":
      return `${n(change.quantity)} more of ${goods(change.store)} on ${day(change.day)}`;
    case "closed":
      return `${change.station} closed ${sayWhen(change, campaign, locale)}`;
    case "open":
      return `${change.station} there ${sayWhen(change, campaign, locale)} as well`;
    case "weekdays":
      return `${change.station} there every ${change.weekdays.map((at) => WEEKDAYS[at]).join(", ")}`;
    case "more stations":
      return `${count(change.count, `more ${change.kind}`, locale).replace(/benchs$/, "benches")} ${sayWhen(change, campaign, locale)}`;
    case "more items":
      return `${n(change.count)} more items like ${change.words.replaceAll("_", " ")}, arriving on ${day(change.day)}`;
    case "hold back":
      return `${count(change.items.length, "item", locale)} (${change.words}) not begun before ${day(change.until)}`;
    case "order":
      return `${count(change.items.length, "item", locale)} (${change.words.replaceAll("_", " ")}) ${change.place}, as far as limits and waits allow`;
    case "longer at":
      return `${change.station} there ${n(change.hours)} hours a day`;
    case "room heat":
      return `work rooms at ${n(change.dryBulb)} °C and ${sayPercent(change.relHum, locale)} ${sayWhen(change, campaign, locale)}: ${HEAT_WORDS[heatEffect(change)]}`;
    case "ward":
      return `Ward of ${n(change.litres)} litres instead of ${n(campaign.wardLitres)}`;
    case "end":
      return `the campaign ends on ${day(change.day)} instead of ${day(campaign.end)}`;
    case "tighter":
      return `${n(change.value)} ${sayLimitName(change.limit)} instead of ${n(campaign.limits[change.limit].value)}`;
  }
}

const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

function sayWhen({ from, to }: { from: Day; to: Day }, { planFrom, end }: Campaign, locale: string): string {
  if (from <= planFrom && to >= end) return "from today to the end";
  if (to >= end) return `from ${sayDay(from, locale)}`;
  return from === to ? `on ${sayDay(from, locale)}` : sayDayRange(from, to, locale);
}

const HEAT_WORDS: Readonly<Record<ReturnType<typeof heatEffect>, string>> = {
  none: "no hours are lost to heat",
  rests: "a quarter of each hour is rest",
  "no mould work": "no mould work there, and a quarter of each hour is rest",
  "no work": "too hot for any work there",
};

/** What to mind when a change is supposed; common practice, no source, unless said otherwise. */
export function sayChangeCaution(change: Change): string | null {
  switch (change.change) {
    case "more people":
      return change.mouldWork
        ? 'A new person counts in full from the first day. Before that stand half a day of training, two watched sessions and a clear yes to mould work; without that yes, ask again with "without mould work".'
        : "A new person counts in full from the first day; half a day of training comes before it.";
    case "more stations":
      return "A station is worth what the people at it are: only minutes with somebody to work there are counted.";
    case "late":
      return change.days > 0
        ? "Counted late: what is on its way, and whatever is ordered from today on."
        : "Counted early: what is on its way. An order sent today takes as long as before.";
    case "more items":
      return "Each new item is a copy of one surveyed here, with its findings. Test 30 of the new ones and count the leaves of all before you promise a date.";
    case "hold back":
      return "What waits is not counted as getting worse, but damp items held back can grow mould: only dry, bagged and watched ones may wait.";
    case "order":
      return "What waits is not counted as getting worse, but damp items held back can grow mould: only dry, bagged and watched ones may wait. Changing between dirty and clean work within a day is counted on the day sheets, not here.";
    case "longer at":
      return "The station is there longer; everybody's own hours stay. Only minutes with somebody to work there are counted.";
    case "room heat":
      return "Reckoned from air and humidity without a globe, the worse end counts, for people used to heat (NIOSH limits, WBGT by Bernard's form; rests of a quarter hour are common practice, no source). New people rest more, the mask stays on, drink outside. A dawn shift or a cooled room: ask again with its own air beside this one; wages and current are not in it. Follow local rules and licensed practice.";
    case "hours":
      return "Days already shorter stay as short as they are. Fewer hours do not lengthen what may be spent near mould in one.";
    case "end":
      return "Whoever is on clean work or on shorter hours at the end stays so until a later one; hired days do not grow.";
    default:
      return null;
  }
}

/** One line of the comparison: its name and what stands under each plan. */
export interface CompareRow {
  readonly label: string;
  readonly cell: (outlook: Outlook, difference: Difference | null) => string;
  /** Whether the line says nothing that another does not. */
  readonly idle?: (outlooks: readonly Outlook[]) => boolean;
}

const shortDay = (day: Day, locale: string): string =>
  new Intl.DateTimeFormat(locale, {
    day: "numeric",
    month: "short",
    year: "numeric",
    timeZone: "UTC",
  }).format(new Date(`${day}T12:00:00Z`));

const signed = (n: number, locale: string): string =>
  `${n > 0 ? "+" : n < 0 ? "−" : "±"}${sayNumber(Math.abs(n), locale)}`;

export function compareRows(locale = "en-GB"): CompareRow[] {
  const finishRow = (label: string, share: "p10" | "p50" | "p90"): CompareRow => ({
    label,
    ...(share === "p50"
      ? {}
      : { idle: (all) => all.every(({ finish }) => finish.p50 === null && finish.p10 === null) }),
    cell: ({ finish }, difference) => {
      const day = finish[share];
      const later = difference?.days[share] ?? null;
      if (!day) return "not by the end";
      return `${shortDay(day, locale)}${later === null ? "" : ` ${signed(later, locale)} d`}`;
    },
  });
  const n = (value: number): string => sayNumber(value, locale);
  const free = ({ used, there }: Share): string =>
    `${n(Math.max(0, Math.round((there - used) / 60)))} of ${n(Math.round(there / 60))} h`;
  return [
    finishRow("Finish 1 in 10 by", "p10"),
    finishRow("Finish half by", "p50"),
    finishRow("Finish 9 in 10 by", "p90"),
    {
      label: "Boxed by the end",
      cell: ({ finish, routed }, difference) =>
        `${n(finish.boxed.p50)} of ${n(routed)}${difference && difference.boxed !== 0 ? ` ${signed(difference.boxed, locale)}` : ""}`,
    },
    {
      label: "Plan leaves over",
      cell: ({ left }) =>
        left.length === 0
          ? "nothing"
          : `${n(left.length)} (${n(left.filter((each) => each.must).length)} must-do)`,
    },
    {
      label: "Held back most by",
      cell: ({ binds }) => (binds ? sayResource(binds.resource) : "nothing"),
    },
    {
      label: "Boxed at the very most",
      cell: ({ atBest }) => n(atBest.boxed),
    },
    {
      label: "Last picture",
      cell: ({ lastImage }) => (lastImage === null ? "none" : shortDay(lastImage, locale)),
    },
    {
      label: "Hours of work, 4 wk",
      cell: ({ workSoon }) => `${n(Math.round(workSoon.near))} near, ${n(Math.round(workSoon.clean))} clean`,
    },
    { label: "Mould time left, 4 wk", cell: ({ mouldSoon }) => free(mouldSoon) },
    { label: "  the same, to the end", cell: ({ mould }) => free(mould) },
    {
      label: "Camera in use",
      cell: ({ camera }) =>
        camera.there > 0 ? sayPercent(Math.min(1, camera.used / camera.there), locale) : "no camera",
    },
    {
      label: "Orders too late",
      cell: ({ lateOrders }) => (lateOrders.length === 0 ? "none" : n(lateOrders.length)),
    },
  ];
}

/** A resource by a name short enough for a column. */
export function sayResource(resource: string): string {
  if (resource === "ward") return "Ward space";
  if (resource.startsWith("hands:")) return `${resource.slice(6)} hours`;
  if (resource.startsWith("store:")) return `store: ${resource.slice(6)}`;
  return resource;
}

/** What the scenario does to the plan, the verdict first. */
export function sayDifference(
  base: FirstOutlook,
  other: FirstOutlook,
  difference: Difference,
  locale = "en-GB",
): string[] {
  const lines = [verdict(base, other, difference, locale)];
  if (difference.fallOut.length > 0) lines.push(`Falls out: ${itemNames(difference.fallOut, locale)}`);
  if (difference.comeIn.length > 0) lines.push(`Comes in: ${itemNames(difference.comeIn, locale)}`);
  if (difference.fallOut.length > 0 && difference.comeIn.length > 0)
    lines.push("Of items that matter alike, which ones change places is chance; how many is not.");
  if (difference.addedLeft.length > 0)
    lines.push(
      `Of the new items ${sayNumber(difference.addedLeft.length, locale)} are not boxed by the end.`,
    );
  if (difference.lateOrders.length > 0)
    lines.push(`Too late to order even today: ${difference.lateOrders.join(", ")}.`);
  return lines;
}

/** What holds the plan back most then, where that is something else than now. */
export function sayBindMoved(base: Outlook, other: Outlook): string[] {
  const [was, is] = [base.binds?.resource, other.binds?.resource];
  if (was === is) return [];
  return [
    `What holds the plan back most is then ${is ? sayResource(is) : "nothing"}, not ${was ? sayResource(was) : "nothing"}.`,
  ];
}

function verdict(base: FirstOutlook, other: FirstOutlook, difference: Difference, locale: string): string {
  const { p50 } = difference.days;
  const [was, is] = [base.finish.p50, other.finish.p50];
  const days = (n: number): string => count(Math.abs(n), "day", locale);
  const more = (n: number): string => count(Math.abs(n), n < 0 ? "fewer item" : "more item", locale);
  if (p50 !== null && is) {
    const moved =
      Math.abs(p50) <= NOISE_DAYS
        ? `Finishes about when it does now, ${sayDay(is, locale)}`
        : `Finishes ${days(p50)} ${p50 > 0 ? "later" : "earlier"}, on ${sayDay(is, locale)} instead of ${was ? sayDay(was, locale) : ""}`;
    return `${moved} (half of the simulated campaigns). ${endWords(other, locale)}`;
  }
  if (was && !is)
    return `No longer finishes: in half of the simulated campaigns something is left over on ${sayDay(other.end, locale)}. Typically ${other.finish.boxed.p50} of ${other.routed} are boxed, ${more(difference.boxed)} than now.`;
  if (!was && is)
    return `Then finishes by ${sayDay(is, locale)} in half of the simulated campaigns. ${endWords(other, locale)}`;
  return Math.abs(difference.boxed) <= NOISE_SHARE * other.routed
    ? "Something is left over at the end either way, and about as many items are boxed as now."
    : `Something is left over at the end either way: ${more(difference.boxed)} boxed by then.`;
}

function endWords({ finish, end }: FirstOutlook, locale: string): string {
  const by = sayDay(end, locale);
  if (finish.p90) return `The end, ${by}, is kept in 9 of 10 or more.`;
  return `The end, ${by}, is kept in half or more, but not in 9 of 10.`;
}

function itemNames(items: readonly Left[], locale: string): string {
  const must = items.filter((each) => each.must).length;
  const head = `${count(items.length, "item", locale)}${must > 0 ? `, ${sayNumber(must, locale)} must-do` : ""}: `;
  const names = items.slice(0, NAMED).map((each) => (each.must ? `${each.item} (must-do)` : each.item));
  return `${head}${names.join(", ")}${items.length > NAMED ? " …" : "."}`;
}

/** How long items would wait for the one who releases. */
export function sayReleaseQueue(queue: ReleaseQueue, locale = "en-GB"): string[] {
  const { person, releases, fromOthers, minutes, waits, unreached } = queue;
  if (releases === 0) return ["The plan has no releases from the Ward: nobody waits for one."];
  const n = (value: number): string => sayNumber(value, locale);
  return [
    `The plan has ${count(releases, "release", locale)}; ${fromOthers === releases ? "all of them are" : `${n(fromOthers)} of them are`} done by others and would become ${person}'s. Releases take ${n(Math.max(1, Math.round(minutes / 60)))} hours in all.`,
    `Releases done before all other work, ${waits.p50 === 0 ? `half of the items need not wait for ${person}` : `half of the items wait ${count(waits.p50, "day", locale)} or less for ${person}`}; 9 in 10 wait ${count(waits.p90, "day", locale)} or less, the longest ${n(waits.longest)}.`,
    ...(unreached > 0 ? [`${count(unreached, "release", locale)} would not be reached by the end.`] : []),
    `Counted on top of the plan, which does not yet plan who releases: what ${person} then leaves undone, and what follows from later releases, is not in it.`,
  ];
}

/** How long items with live insects would wait for the freezer. */
export function sayFreezerQueue(queue: FreezerQueue, locale = "en-GB"): string[] {
  const { items, cycleDays, toFreeze, cycles, waits, lastOut, tooLate } = queue;
  if (toFreeze === 0 || lastOut === null)
    return ["The plan has nothing with live insects to freeze: the freezer limits nothing."];
  const n = (value: number): string => sayNumber(value, locale);
  const limits =
    waits.p90 === 0
      ? "The freezer does not limit the plan: 9 in 10 need not wait for it"
      : `The freezer limits the plan: half wait ${count(waits.p50, "day", locale)} or less for it, 9 in 10 ${count(waits.p90, "day", locale)} or less`;
  return [
    `${count(toFreeze, "item", locale)} to freeze, ${n(items)} a batch of ${count(cycleDays, "day", locale)}: ${count(cycles, "batch", locale).replace(/batchs$/, "batches")}, the last out on ${sayDay(lastOut, locale)}. ${limits}; the longest wait is ${count(waits.longest, "day", locale)}.`,
    ...(tooLate > 0 ? [`${count(tooLate, "item", locale)} would be out only after the end.`] : []),
    "Counted on top of the plan, which waits for freezing but has no batches: what follows from later releases is not in it. A power cut starts a batch anew; photographs, glass and waxed or painted things are not for every freezer: their bench cards say, and those kept out of it are counted here all the same.",
  ];
}
