import type { Campaign } from "../../core/items/campaign.ts";
import { isOf, standingOf } from "../../core/log/standing.ts";
import { type CampaignState, eventsAbout } from "../../core/log/state.ts";
import { byTime, type HistoryLine, historyInSheets, sayHistory } from "../../core/say/papers/history.ts";

/** What was done to an item, in the order of days: as the log tells it, else as the sheets do. */
export function itemHistory(campaign: Campaign, state: CampaignState | null, item: string): HistoryLine[] {
  if (state === null) return historyInSheets(campaign, item);
  const { counted } = standingOf(eventsAbout(state, `item:${item}`));
  return counted.flatMap((event) => sayHistory(event) ?? []).sort(byTime);
}

/** SHA-256 of each picture the log names for an item → what it shows. */
export function pictureHashes(state: CampaignState | null, item: string): ReadonlyMap<string, string> {
  if (state === null) return new Map();
  const { counted } = standingOf(eventsAbout(state, `item:${item}`));
  return new Map(
    counted.flatMap((event) => {
      if (!isOf(event, "pictureTaken")) return [];
      const { picture, shot, part, day } = event.payload;
      return [[picture, [day, shot, part].filter((each) => each !== "").join(", ")] as const];
    }),
  );
}
