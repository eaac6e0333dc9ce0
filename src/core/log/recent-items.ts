import { type Standing, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout, isStored, namesOn } from "./state.ts";

/** Items, each with what stands about it. */
export type RecentItems = readonly (readonly [item: string, standing: Standing])[];

/** Items about which something was written since a moment, with what stands about each. What lies longer is not even read: of a long log most.
 *  @param since milliseconds since 1970; 0: all items */
export function recentItems(state: CampaignState, since: number): RecentItems {
  return namesOn(state, "item").flatMap((item) => {
    const subject = `item:${item}` as const;
    const found = state.filed.get(subject) ?? [];
    const last = isStored(found) ? (found.since.at(-1) ?? found.last) : found.at(-1);
    return last === undefined || last.clock.wall < since
      ? []
      : [[item, standingOf(eventsAbout(state, subject))] as const];
  });
}
