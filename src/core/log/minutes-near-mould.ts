import type { Act, Station } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import { grouped } from "./_internals/grouped.ts";
import { inOrder } from "./event.ts";
import { sessionsIn } from "./item-now.ts";
import type { Filed } from "./kinds.ts";
import type { RecentItems } from "./recent-items.ts";
import { isOf, type Standing, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout, namesOn } from "./state.ts";

/** A stretch of one person's day in a mask. */
export interface Worn {
  readonly day: Day;
  /** Minutes after midnight when it began; null: nobody wrote the time. */
  readonly from: number | null;
  /** How long it took, and how much of that the mask was worn. */
  readonly minutes: number;
  readonly maskMinutes: number;
}

/** What one person has had of work near mould, as far as it was written down. */
export interface NearMould {
  /** Minutes near mould of each day that had any. */
  readonly days: ReadonlyMap<Day, number>;
  /** In the order in which they were worn; those without a time come after what had been written by then. */
  readonly worn: readonly Worn[];
}

/** One entry about somebody's work near mould. `key`: act and device. */
interface Entry extends Worn {
  readonly event: Filed;
  readonly person: string;
  readonly near: number;
  readonly key: string;
  readonly what: "spell" | "act" | "wipe";
}

/**
 * Everyone's minutes near mould. A spell of work and the acts written for it on the same device are the same minutes, and the larger sum counts;
 * acts without a spell count beside, and so do wipe-downs where mould is worked on. What two devices wrote is added up: too much rather than too little.
 * @param stations of the campaign; wiping one where mould is worked on is work near mould (norm s-change)
 * @param items those of the days that are asked about
 */
export const minutesNearMould = (
  state: CampaignState,
  stations: readonly Station[],
  items: RecentItems,
): ReadonlyMap<string, NearMould> =>
  new Map(
    [...grouped(entriesIn(state, stations, items), ({ person }) => person)].map(([who, own]) => [
      who,
      nearOf(own),
    ]),
  );

const entriesIn = (state: CampaignState, stations: readonly Station[], items: RecentItems): Entry[] => [
  ...namesOn(state, "person").flatMap((person) => spellsOf(state, person)),
  ...items.flatMap(([, standing]) => actsIn(standing)),
  ...stations.filter(({ kind }) => NEAR.has(kind)).flatMap(({ id }) => wipesOf(state, id)),
];

const NEAR: ReadonlySet<Station["kind"]> = new Set(["mould bench", "cover stand"]);

const keyOf = (act: Act | undefined, { device }: Filed): string => `${act ?? ""} ${device}`;

const spellsOf = (state: CampaignState, person: string): Entry[] =>
  standingOf(eventsAbout(state, `person:${person}`)).counted.flatMap((event) => {
    if (!isOf(event, "sessionWorked")) return [];
    const { day, minute, minutes, exposedMinutes: near, maskMinutes = near, acts } = event.payload;
    if (near === 0 && maskMinutes === 0 && minutes > 0) return [];
    const key = keyOf(acts[0], event);
    return [{ event, person, day, from: minute ?? null, minutes, maskMinutes, near, key, what: "spell" }];
  });

const actsIn = (standing: Standing): Entry[] =>
  sessionsIn(standing).flatMap(({ event, value }) => {
    const { day, person, minutes, exposed, act } = value;
    if (!exposed) return [];
    return [
      {
        event,
        person,
        day,
        from: null,
        minutes,
        maskMinutes: minutes,
        near: minutes,
        key: keyOf(act, event),
        what: "act",
      },
    ];
  });

const wipesOf = (state: CampaignState, station: string): Entry[] =>
  standingOf(eventsAbout(state, `station:${station}`)).counted.flatMap((event) => {
    if (!isOf(event, "stationWiped")) return [];
    const { day, minute, person, minutes } = event.payload;
    return [
      {
        event,
        person,
        day,
        from: minute ?? null,
        minutes,
        maskMinutes: minutes,
        near: minutes,
        key: "",
        what: "wipe",
      },
    ];
  });

function nearOf(entries: readonly Entry[]): NearMould {
  const days = new Map<Day, number>();
  const worn: (Worn & { readonly event: Filed })[] = [];
  for (const [day, own] of grouped(entries, (each) => each.day)) {
    let near = 0;
    for (const same of grouped(own, ({ key }) => key).values()) {
      const acts = same.filter(({ what }) => what === "act");
      const others = same.filter(({ what }) => what !== "act");
      const beyond = Math.max(0, sumOf(acts) - sumOf(others));
      near += sumOf(others) + beyond;
      worn.push(...others);
      const last = acts.at(-1);
      if (last && beyond > 0) worn.push({ ...last, minutes: beyond, maskMinutes: beyond });
    }
    if (near > 0) days.set(day, near);
  }
  return { days, worn: inTurn(worn) };
}

const sumOf = (entries: readonly Entry[]): number => entries.reduce((sum, { near }) => sum + near, 0);

/** By day and time; what has no time stands after whatever had been written by then. */
function inTurn(worn: readonly (Worn & { readonly event: Filed })[]): Worn[] {
  let last = { day: "", at: 0 };
  const placed = [...worn]
    .sort((a, b) => inOrder(a.event, b.event))
    .map((each) => {
      if (each.day !== last.day) last = { day: each.day, at: 0 };
      if (each.from !== null) last.at = Math.max(last.at, each.from + each.minutes);
      return { each, at: each.from ?? last.at };
    });
  placed.sort((a, b) => (a.each.day < b.each.day ? -1 : a.each.day > b.each.day ? 1 : a.at - b.at));
  return placed.map(({ each: { day, from, minutes, maskMinutes } }) => ({ day, from, minutes, maskMinutes }));
}
