import type { Now } from "../log/now.ts";
import { type Danger, dangersOf } from "./dangers-view.ts";

/** A tag as it is printed. */
export interface TagView {
  readonly id: string;
  readonly title: string;
  readonly dangers: readonly Danger[];
}

/** Tags of these items, in their order; a number nobody has listed is left out. */
export const tagsView = (now: Now, ids: readonly string[]): readonly TagView[] =>
  ids.flatMap((id) => {
    const found = now.item(id);
    return found === null ? [] : [{ id, title: found.item.title, dangers: dangersOf(found.care) }];
  });
