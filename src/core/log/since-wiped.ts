import type { Act } from "../items/campaign.ts";
import { grouped } from "./_internals/grouped.ts";
import { inOrder } from "./event.ts";
import { sessionsIn } from "./item-now.ts";
import type { Filed } from "./kinds.ts";
import type { RecentItems } from "./recent-items.ts";
import { isOf, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout } from "./state.ts";

/** What was done at a station and not wiped away since. */
export interface OnStation {
  readonly item: string;
  readonly act: Act;
  readonly exposed: boolean;
}

/**
 * What was done at each station since it was last wiped down, in the order of the log. Acts of the time before the log began are left out.
 * @param placesOf stations where an act may have been done whose entry names none; if there are several, it lies on each of them
 */
export function sinceWiped(
  state: CampaignState,
  items: RecentItems,
  placesOf: (on: OnStation) => readonly string[],
): ReadonlyMap<string, readonly OnStation[]> {
  const done: (OnStation & { readonly event: Filed; readonly station: string })[] = [];
  for (const [item, standing] of items)
    for (const { event, value } of sessionsIn(standing)) {
      if (!isOf(event, "actDone", "coversPictured", "itemWrapped")) continue;
      const on = { item, act: value.act, exposed: value.exposed };
      const named = "station" in event.payload ? event.payload.station : undefined;
      const places = named === undefined ? placesOf(on) : [named];
      done.push(...places.map((station) => ({ ...on, event, station })));
    }
  done.sort((a, b) => inOrder(a.event, b.event));
  const left = new Map<string, OnStation[]>();
  for (const [station, own] of grouped(done, (each) => each.station)) {
    const wiped = standingOf(eventsAbout(state, `station:${station}`)).counted.findLast((event) =>
      isOf(event, "stationWiped"),
    );
    const since = wiped ? own.filter(({ event }) => inOrder(event, wiped) > 0) : own;
    left.set(
      station,
      since.map(({ item, act, exposed }) => ({ item, act, exposed })),
    );
  }
  return left;
}
