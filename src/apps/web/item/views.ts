import { type Explanation, explain } from "../../../core/say/explain.ts";
import type { Now } from "../log/now.ts";

/** An item by its number. */
export interface ItemNear {
  readonly id: string;
  readonly title: string;
}

const MOST_NEAR = 8;

/** Items whose number holds what was typed, the nearest first. */
const itemsNear = (now: Now, typed: string): readonly ItemNear[] => {
  const wanted = typed.toLowerCase();
  if (wanted === "") return [];
  const ids = now.itemIds.filter((id) => id.toLowerCase().includes(wanted));
  ids.sort((a, b) => a.length - b.length || (a < b ? -1 : 1));
  return ids.slice(0, MOST_NEAR).flatMap((id) => {
    const found = now.item(id);
    return found ? [{ id, title: found.item.title }] : [];
  });
};

/** Why an item is treated as it is; null: nobody has listed it. */
const itemWhy = (now: Now, id: string): Explanation | null => {
  const found = now.item(id);
  return found && explain(now.tables.book, found.care, found.route);
};

export const itemViews = { itemsNear, itemWhy } as const;
