import { isOf, standingOf } from "../../../core/log/standing.ts";
import { eventsAbout } from "../../../core/log/state.ts";
import { sayDo } from "../../../core/say/actions.ts";
import { CAUTIONS, NO_DATE } from "../../../core/say/cautions/ward.ts";
import { sayCondition } from "../../../core/say/conditions.ts";
import { type CheckSaid, sayCheck, sayHold, sayWait } from "../../../core/say/rooms/ward-holds.ts";
import type { Day } from "../../../core/units/day.ts";
import type { Now } from "../log/now.ts";
import { bandOf, type ReadyBand, readyOf } from "./shelf-view.ts";
import { byUrgency, type WardDue, type WardItem, type When, wardItems } from "./ward-items.ts";

/** Something written about a bag. */
export interface BagEntry extends When {
  readonly what: "read" | "closed" | "opened" | "gel in" | "gel out";
  /** Fraction for a reading, grams of gel. */
  readonly value: number | null;
  readonly dryBulb: number | null;
}

export interface BagItem {
  readonly id: string;
  readonly title: string;
  readonly conditions: readonly string[];
  readonly since: Day;
  readonly isEarned: boolean;
  /** What else keeps it, beside the readings of the bag; each as a sentence. */
  readonly holds: readonly string[];
  readonly waits: readonly string[];
  readonly weighings: readonly (When & { readonly grams: number })[];
  /** Where it goes from here. */
  readonly nextRoom: "Bench" | "Camera" | "Shelf";
}

export interface BagView extends When {
  readonly bag: string;
  readonly shelf: string;
  readonly items: readonly BagItem[];
  /** In the order of time. */
  readonly entries: readonly BagEntry[];
  readonly due: WardDue;
  readonly isOpen: boolean;
  readonly hasGel: boolean;
  readonly isInFreezer: boolean;
  readonly placeHasFreezer: boolean;
  /** What the release of the least ready item asks of the readings; empty: nothing is asked of them. */
  readonly checks: readonly CheckSaid[];
  readonly band: ReadyBand | null;
  readonly noDate: readonly string[];
  readonly cautions: readonly string[];
  readonly near: NearView;
}

/** What opening asks of people. */
export interface NearView {
  readonly isExposed: boolean;
  readonly protection: readonly string[];
  /** Minutes an opening, a release and a putting in usually take. */
  readonly minutes: { readonly open: number; readonly release: number; readonly admit: number };
}

/** Null: nothing lies in a bag of this number. */
export function wardBag(now: Now, bag: string): BagView | null {
  const items = wardItems(now)
    .filter(({ stay }) => stay.bag === bag)
    .toSorted((a, b) => byUrgency(a.due, b.due));
  const [first] = items;
  if (first === undefined) return null;
  const { stay, state, due } = first;
  const dries = items.find((each) => each.state !== null && asksToDry(each));
  const ready = dries && !dries.state?.release.earned ? readyOf(now, dries) : null;
  return {
    ...{ bag, due, day: now.today, minute: now.minute },
    shelf: items.find((each) => each.stay.shelf !== "")?.stay.shelf ?? "",
    items: items.map(itemOf),
    entries: entriesOf(now, bag, items.map((each) => each.stay.since).sort()[0] ?? now.today),
    isOpen: state !== null && state.closedSince === null,
    hasGel: state?.gelInside ?? false,
    isInFreezer: stay.freezer !== null && stay.freezer.out === null,
    placeHasFreezer: now.house.place.freezer,
    checks: dries?.state?.release.checks.map((check) => sayCheck(check, dries.state?.gelInside)) ?? [],
    band: dries && ready ? bandOf(now, dries, ready) : null,
    noDate: ready && !ready.ok ? ready.because.map((code) => NO_DATE[code]) : [],
    cautions: [
      ...new Set([...(state?.cautions ?? []), ...(ready?.cautions ?? [])].map((code) => CAUTIONS[code])),
    ],
    near: nearOf(now, items),
  };
}

const asksToDry = ({ leave, state, found }: WardItem): boolean =>
  leave.holds.some(({ kind }) => kind === "reading") ||
  (state?.release.earned === true && found.route.wardDays !== null);

const itemOf = ({ found, stay, leave, waits, notes }: WardItem): BagItem => ({
  id: found.item.id,
  title: found.item.title,
  conditions: found.route.conditions.map(sayCondition),
  since: stay.since,
  isEarned: leave.isEarned,
  holds: leave.holds.filter(({ kind }) => kind !== "reading").map(sayHold),
  waits: waits.map(sayWait),
  weighings: notes.flatMap(({ day, minute, what, value }) =>
    what === "weighed" && value !== undefined ? [{ day, minute, grams: value }] : [],
  ),
  nextRoom: nextRoomOf(found.route.steps),
});

function nextRoomOf(steps: WardItem["found"]["route"]["steps"]): BagItem["nextRoom"] {
  const room = steps.find(({ act }) => act !== "survey" && act !== "admit" && act !== "release")?.room;
  return room === "Camera" || room === "Shelf" ? room : "Bench";
}

function entriesOf({ state }: Now, bag: string, since: Day): BagEntry[] {
  const found = standingOf(eventsAbout(state, `bag:${bag}`)).counted.flatMap((event): BagEntry[] => {
    if (!isOf(event, "bagRead", "bagClosed", "bagOpened", "gelChanged") || event.payload.day < since)
      return [];
    const { day, minute, dryBulb = null } = event.payload;
    const at = { day, minute, dryBulb };
    if (isOf(event, "bagRead")) return [{ ...at, what: "read", value: event.payload.relHum }];
    if (isOf(event, "gelChanged"))
      return [
        {
          ...at,
          what: event.payload.way === "in" ? "gel in" : "gel out",
          value: event.payload.grams ?? null,
        },
      ];
    return [{ ...at, what: isOf(event, "bagClosed") ? "closed" : "opened", value: null }];
  });
  return found.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.minute - b.minute));
}

/** A gel change, a weighing or a look takes 3 to 5 minutes near mould: norm t-quarantine-check; the longer is the safer. */
const OPEN_MINUTES = 5;

/** @param items that will be opened; where one may be mouldy, it is work near mould */
export function nearOf(now: Now, items: readonly { readonly found: WardItem["found"] }[]): NearView {
  const steps = items.flatMap(({ found }) =>
    found.route.steps.filter(({ act }) => act === "admit" || act === "release"),
  );
  const { norms } = now.tables;
  return {
    isExposed:
      steps.some(({ exposed }) => exposed) ||
      items.some(({ found }) => found.route.conditions.some((each) => each.startsWith("mould"))),
    protection: [...new Set(steps.flatMap(({ protection }) => protection))].map(sayDo),
    minutes: {
      open: OPEN_MINUTES,
      release: norms.band("t-release").typical,
      admit: norms.band("t-quarantine-in").typical,
    },
  };
}
