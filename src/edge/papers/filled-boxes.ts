import { isOf, standingOf } from "../../core/log/standing.ts";
import { type CampaignState, eventsAbout, namesOn } from "../../core/log/state.ts";
import type { FilledBox } from "./box-label-view.ts";

/** The boxes that the log says were filled, with what lies in each; none without a log. */
export function filledBoxes(state: CampaignState | null): FilledBox[] {
  if (state === null) return [];
  const boxes = new Map<string, FilledBox>();
  for (const item of namesOn(state, "item")) {
    const { counted } = standingOf(eventsAbout(state, `item:${item}`));
    const boxed = counted.findLast((event) => isOf(event, "itemBoxed"));
    if (!boxed) continue;
    const { box, shelf, day } = boxed.payload;
    const known = boxes.get(box);
    boxes.set(box, {
      box,
      items: [...(known?.items ?? []), item],
      day: known?.day && known.day > day ? known.day : day,
      ...(shelf === undefined ? (known?.shelf ? { shelf: known.shelf } : {}) : { shelf }),
    });
  }
  return [...boxes.values()].sort((a, b) => a.box.localeCompare(b.box));
}
