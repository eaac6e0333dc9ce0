import type { Draft } from "../log/own-entries.ts";
import type { PutInView } from "./put-in-view.ts";
import { spellNear } from "./spell.ts";

/** What somebody has chosen to put in, and where. */
export interface PutInDraft {
  readonly items: readonly string[];
  readonly bag: string;
  readonly shelf: string;
  readonly litres: string;
  readonly isFrozen: boolean;
}
/** What is written when items are put into a bag: where each is, that it was admitted if it was not yet, the bag opened if it was shut, and closed
 *  over everything in it; the minutes on the person's account. */
export function putInDrafts(
  view: PutInView,
  { bag, shelf, litres, isFrozen }: PutInDraft,
  person: string,
  minutes: number,
): readonly Draft[] {
  const { day, minute, items, inside, near } = view;
  const board = shelf.trim() || view.shelf;
  const volume = Number(litres.replace(",", "."));
  const place = { room: "Ward", bag, ...(board === "" ? {} : { shelf: board }) } as const;
  const each = Math.round((10 * minutes) / Math.max(1, items.length)) / 10;
  const ids = items.map(({ id }) => id);
  return [
    ...(view.isClosed
      ? [{ kind: "bagOpened" as const, payload: { bag, items: [...inside], day, minute } }]
      : []),
    ...ids.map((item) => ({
      kind: "itemMoved" as const,
      payload: { item, ...place, ...(isFrozen ? { freezer: true } : {}), day, minute },
    })),
    ...items
      .filter(({ isAdmitted }) => !isAdmitted)
      .map(({ id }) => ({
        kind: "actDone" as const,
        payload: {
          ...{ item: id, part: "", act: "admit" as const, day, person },
          ...{ minutes: each, exposed: near.isExposed },
        },
      })),
    {
      kind: "bagClosed",
      payload: {
        ...{ bag, items: [...new Set([...inside, ...ids])], day, minute },
        ...(litres !== "" && volume > 0 ? { litres: volume } : {}),
      },
    },
    ...spellNear(near, person, view, minutes, "admit"),
  ];
}
