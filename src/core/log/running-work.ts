import type { Act } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import type { Filed } from "./kinds.ts";
import type { RecentItems } from "./recent-items.ts";
import { isOf, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout } from "./state.ts";

/** A spell of work that somebody began. */
export interface Begun {
  readonly person: string;
  readonly day: Day;
  /** Minutes after midnight. */
  readonly minute: number;
  readonly acts: readonly Act[];
  readonly exposed: boolean;
  /** The item taken in hand for it: its move is written with the beginning. Null: none was. */
  readonly item: string | null;
  /** Minutes it took; null: it runs. A spell that another followed without an end took none that are known. */
  readonly minutes: number | null;
}

/** The work somebody is in the middle of; null: none. */
export function runningWork(begun: readonly Begun[]): Begun | null {
  const last = begun.at(-1);
  return last?.minutes === null ? last : null;
}

/** Minutes somebody has worked at one act on one item on one day, in the sittings that are over. */
export const satAt = (begun: readonly Begun[], item: string, act: Act, day: Day): number =>
  begun.reduce(
    (sum, each) =>
      each.item === item && each.day === day && each.acts.includes(act) ? sum + (each.minutes ?? 0) : sum,
    0,
  );

/** What somebody began, in the order of the log.   @param items those of the days that are asked about */
export function begunBy(state: CampaignState, person: string, items: RecentItems): Begun[] {
  const spells = spellsOf(state, person);
  const taken = takenWith(
    spells.map(({ started }) => started),
    items,
  );
  return spells.map(({ started, minutes }) => ({
    ...started.payload,
    item: taken.get(placeAfter(started)) ?? null,
    minutes,
  }));
}

/** Each beginning with the end that follows it. */
function spellsOf(state: CampaignState, person: string) {
  const spells: { readonly started: Filed<"sessionStarted">; minutes: number | null }[] = [];
  for (const event of standingOf(eventsAbout(state, `person:${person}`)).counted) {
    const last = spells.at(-1);
    if (isOf(event, "sessionStarted")) {
      if (last) last.minutes ??= 0;
      spells.push({ started: event, minutes: null });
    } else if (isOf(event, "sessionWorked") && last) last.minutes ??= event.payload.minutes;
  }
  return spells;
}

const placeAfter = ({ device, number }: Filed): string => `${device} ${number + 1}`;

/** Device and number of a move → the item moved, of those written right after a beginning. */
function takenWith(starts: readonly Filed[], items: RecentItems): ReadonlyMap<string, string> {
  const wanted = new Set(starts.map(placeAfter));
  const taken = new Map<string, string>();
  for (const [item, { counted }] of wanted.size > 0 ? items : [])
    for (const event of counted)
      if (isOf(event, "itemMoved") && wanted.has(`${event.device} ${event.number}`))
        taken.set(`${event.device} ${event.number}`, item);
  return taken;
}
