import type { Act } from "../../../core/items/campaign.ts";
import { sayAct, sayDirt } from "../../../core/say/conditions.ts";
import type { Now } from "../log/now.ts";

/** An item whose next act is done in this room. */
export interface ReadyItem {
  readonly id: string;
  readonly title: string;
  readonly act: string;
  readonly dirt: string;
  readonly isMust: boolean;
}

export interface ReadyItems {
  readonly first: readonly ReadyItem[];
  readonly all: number;
}

const MOST_SHOWN = 30;

/** What is ready for some acts: by the order of the acts, clean to dirty, must before want, the sooner due first. */
export function readyItems(now: Now, acts: readonly Act[]): ReadyItems {
  const ready = now.rows
    .flatMap((row) => (row.destiny === "route" && row.next !== null && acts.includes(row.next) ? [row] : []))
    .map((row) => ({ row, act: row.next as Act, dirt: dirtOf(row.conditions) })) // just looked at
    .sort(
      (a, b) =>
        acts.indexOf(a.act) - acts.indexOf(b.act) ||
        a.dirt - b.dirt ||
        Number(b.row.priority === "must") - Number(a.row.priority === "must") ||
        (a.row.due ?? "9").localeCompare(b.row.due ?? "9") ||
        a.row.id.localeCompare(b.row.id),
    );
  return {
    all: ready.length,
    first: ready.slice(0, MOST_SHOWN).map(({ row, act, dirt }) => ({
      ...{ id: row.id, title: row.title, act: sayAct(act), dirt: sayDirt(dirt) },
      isMust: row.priority === "must",
    })),
  };
}

/** By its conditions, as the route has it: poison, growth and flood dirt, red rot, dust. */
function dirtOf(conditions: readonly string[]): 1 | 2 | 3 | 4 {
  const has = (word: string): boolean => conditions.some((each) => each.includes(word));
  if (has("arsenic")) return 4;
  if (has("mould") || has("flood_dirt")) return 3;
  return has("red_rot") ? 2 : 1;
}
