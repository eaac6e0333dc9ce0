import type { Draft } from "../log/own-entries.ts";
import type { BagView } from "./bag-view.ts";
import type { NearPerson } from "./near-people.ts";
import { spellNear } from "./spell.ts";

/** What is written when items leave a bag: it is opened, they are released and carried on, what stays is closed in again, and the minutes of
 *  both who signed go on their accounts. */
export function releaseDrafts(
  view: BagView,
  leaves: readonly string[],
  [first, second]: readonly [NearPerson, NearPerson],
  minutes: number,
): readonly Draft[] {
  const { bag, day, minute, near } = view;
  const stays = view.items.flatMap(({ id }) => (leaves.includes(id) ? [] : [id]));
  const each = Math.round((10 * minutes) / leaves.length) / 10;
  const signed = [first, second].map(({ code, role }) => ({ person: code, role }));
  const released = leaves.map((item) => ({
    kind: "itemReleased" as const,
    payload: { item, day, person: first.code, minutes: each, exposed: near.isExposed, signed },
  }));
  const moved = view.items
    .filter(({ id }) => leaves.includes(id))
    .map(({ id, nextRoom }) => ({
      kind: "itemMoved" as const,
      payload: { item: id, room: nextRoom, day, minute },
    }));
  return [
    { kind: "bagOpened", payload: { bag, items: view.items.map(({ id }) => id), day, minute } },
    ...released,
    ...moved,
    ...(stays.length > 0
      ? [{ kind: "bagClosed" as const, payload: { bag, items: stays, day, minute } }]
      : []),
    ...spellNear(near, first.code, view, minutes, "release"),
    ...spellNear(near, second.code, view, minutes, "release"),
  ];
}
