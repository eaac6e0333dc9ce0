import type { Band } from "../../../core/care/care.ts";
import { dayNumber } from "../../../core/units/day.ts";
import { forecastOf, wardRoomOf } from "../../../core/ward/forecast.ts";
import { wardCaseOf } from "../../../core/ward/item-in-ward.ts";
import { type ReadyDate, readyDate } from "../../../core/ward/ready-date.ts";
import type { ItemNow } from "../log/item-now.ts";
import type { Now } from "../log/now.ts";
import { byUrgency, hoursNow, type WardDue, type WardItem, type When, wardItems } from "./ward-items.ts";

/** A bag as it stands on its shelf. */
export interface BagTile {
  readonly bag: string;
  readonly shelf: string;
  readonly items: readonly string[];
  readonly latest: (When & { readonly relHum: number; readonly isBesideGel: boolean }) | null;
  readonly isOpen: boolean;
  readonly isInFreezer: boolean;
  readonly due: WardDue;
  /** How many of its items have earned their release. */
  readonly earned: number;
}

export interface WardShelf {
  /** By what is due; the shelf of the most urgent bag first. */
  readonly shelves: readonly { readonly shelf: string; readonly bags: readonly BagTile[] }[];
  /** In the Ward, and in no bag as far as was written. */
  readonly loose: readonly { readonly id: string; readonly title: string; readonly due: WardDue }[];
  /** Whose next step is to be put in: those planned for today first. */
  readonly toCome: readonly { readonly id: string; readonly title: string; readonly isToday: boolean }[];
  readonly toComeCount: number;
  readonly dueCount: number;
  /** Bags that fall due later today. */
  readonly laterToday: number;
}

/** More than a morning's work is not listed. */
const MOST_TO_COME = 24;

export const wardShelf = (now: Now): WardShelf => {
  const all = wardItems(now);
  const bags = [
    ...Map.groupBy(
      all.filter(({ stay }) => stay.bag !== ""),
      ({ stay }) => stay.bag,
    ),
  ].map(([bag, items]) => tileOf(bag, items));
  bags.sort((a, b) => byUrgency(a.due, b.due) || (a.bag < b.bag ? -1 : 1));
  const loose = all.filter(({ stay }) => stay.bag === "").sort((a, b) => byUrgency(a.due, b.due));
  const inside = new Set(all.map(({ found }) => found.item.id));
  return {
    shelves: [...Map.groupBy(bags, ({ shelf }) => shelf)].map(([shelf, on]) => ({ shelf, bags: on })),
    loose: loose.map(({ found: { item }, due }) => ({ id: item.id, title: item.title, due })),
    ...comingIn(now, inside),
    dueCount: [...bags, ...loose].filter(({ due }) => due.isDue).length,
    laterToday: [...bags, ...loose].filter(({ due }) => !due.isDue && due.from.day === now.today).length,
  };
};

function tileOf(bag: string, items: readonly WardItem[]): BagTile {
  const inOrder = [...items].sort((a, b) => byUrgency(a.due, b.due));
  const [first] = inOrder as [WardItem, ...WardItem[]]; // a group has one at least
  const { stay, state, due, notes } = first;
  const read = [...notes].sort((a, b) => dayNumber(a.day) - dayNumber(b.day) || a.minute - b.minute);
  const last = read.findLast(({ what }) => what === "read");
  return {
    bag,
    shelf: items.find((each) => each.stay.shelf !== "")?.stay.shelf ?? "",
    items: items.map(({ found }) => found.item.id),
    latest: last
      ? {
          day: last.day,
          minute: last.minute,
          relHum: last.value ?? 0,
          isBesideGel: state?.gelInside ?? false,
        }
      : null,
    isOpen: state !== null && state.closedSince === null,
    isInFreezer: stay.freezer !== null && stay.freezer.out === null,
    due,
    earned: items.filter(({ leave }) => leave.isEarned).length,
  };
}

function comingIn(now: Now, inside: ReadonlySet<string>): Pick<WardShelf, "toCome" | "toComeCount"> {
  const today = new Set(
    (now.work?.assignments ?? []).flatMap(({ act, day, item }) =>
      act === "admit" && day === now.today ? [item] : [],
    ),
  );
  const rows = now.rows
    .filter(({ id, next, destiny }) => next === "admit" && destiny === "route" && !inside.has(id))
    .map(({ id, title }) => ({ id, title, isToday: today.has(id) }))
    .sort((a, b) => Number(b.isToday) - Number(a.isToday));
  return { toCome: rows.slice(0, MOST_TO_COME), toComeCount: rows.length };
}

/** When a bag may be ready: days from today, as the plan would reckon. */
export interface ReadyBand extends Band {
  readonly from: ReturnType<typeof forecastOf>["from"];
}

const A_LITTLE_MS = 120;

/** Ready bands of the bags that dry, as far as they can be reckoned in a moment; `toCome` says for how many it has to be asked again. */
export function wardBands(now: Now, _round: number): { bands: Record<string, ReadyBand>; toCome: number } {
  const end = performance.now() + A_LITTLE_MS;
  const bands: Record<string, ReadyBand> = {};
  let toCome = 0;
  for (const [bag, items] of Map.groupBy(wardItems(now), ({ stay }) => stay.bag)) {
    const slowest = slowestOf(items);
    if (bag === "" || slowest === null) continue;
    const isLate = performance.now() > end;
    const ready = isLate ? knownReady(now, slowest.found) : readyOf(now, slowest);
    if (ready === null) toCome++;
    else bands[bag] = bandOf(now, slowest, ready);
  }
  return { bands, toCome };
}

/** The thickest item of those still drying: the bag is ready when it is. */
const slowestOf = (items: readonly WardItem[]): WardItem | null =>
  items
    .filter(({ found, state }) => state !== null && !state.release.earned && found.route.wardDays !== null)
    .toSorted((a, b) => (b.found.item.thicknessMm ?? 40) - (a.found.item.thicknessMm ?? 40))[0] ?? null;

export function bandOf(now: Now, { found, stay, state }: WardItem, ready: ReadyDate): ReadyBand {
  const bag = state && { item: found.item.id, state, ready };
  const { days, from } = forecastOf(found.route, stay.since, now.today, bag, hoursNow(now));
  return { ...days, from };
}

const known = new WeakMap<ItemNow, { readonly hour: number; readonly ready: ReadyDate }>();

const knownReady = (now: Now, found: ItemNow): ReadyDate | null => {
  const kept = known.get(found);
  return kept && kept.hour === Math.floor(hoursNow(now)) ? kept.ready : null;
};

/** The drying model takes a tenth of a second an item: it is asked once an hour, and whenever something was written. */
export function readyOf(now: Now, { found, notes }: WardItem): ReadyDate {
  const kept = knownReady(now, found);
  if (kept !== null) return kept;
  const ready = readyDate(wardCaseOf(found.item, notes, wardRoomOf(now.house), hoursNow(now)));
  known.set(found, { hour: Math.floor(hoursNow(now)), ready });
  return ready;
}
