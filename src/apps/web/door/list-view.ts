import type { ItemRow } from "../log/item-row.ts";
import type { Now } from "../log/now.ts";

export const FILTERS = ["all", "survey", "ready", "aside", "settle"] as const;
export type DoorFilter = (typeof FILTERS)[number];

/** An item in the Door's list: as little as a line shows. */
export type DoorRow = Pick<ItemRow, "id" | "title" | "format" | "destiny" | "priority"> & {
  readonly isDisagreed: boolean;
};

export interface DoorListView {
  readonly counts: Readonly<Record<DoorFilter, number>>;
  readonly rows: readonly DoorRow[];
  readonly toCome: number;
}

const FITS: Readonly<Record<DoorFilter, (row: ItemRow) => boolean>> = {
  all: () => true,
  survey: ({ destiny }) => destiny === "at the Door",
  ready: ({ destiny }) => destiny === "route",
  aside: ({ destiny }) => destiny === "set aside",
  settle: ({ disagreements }) => disagreements > 0,
};

/** Items that wait at the Door, and those anywhere whose answers contradict.   @param words what number or title must hold */
export function doorList(now: Now, filter: DoorFilter, words: string): DoorListView {
  const wanted = words.toLowerCase();
  const here = now.rows.filter(({ room, disagreements }) => room === "door" || disagreements > 0);
  const rows = here.filter(
    (row) => FITS[filter](row) && (wanted === "" || `${row.id} ${row.title}`.toLowerCase().includes(wanted)),
  );
  return {
    counts: { ...counted(here), all: here.length },
    rows: rows.map(({ id, title, format, destiny, priority, disagreements }) => ({
      ...{ id, title, format, destiny, priority },
      isDisagreed: disagreements > 0,
    })),
    toCome: now.rowsToCome,
  };
}

const counted = (rows: readonly ItemRow[]): Record<DoorFilter, number> => {
  const counts = { all: 0, survey: 0, ready: 0, aside: 0, settle: 0 };
  for (const row of rows) for (const each of FILTERS) if (FITS[each](row)) counts[each]++;
  return counts;
};
