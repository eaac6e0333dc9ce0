import type { LogEvent } from "../../../core/log/event.ts";
import { subjectsOf } from "../../../core/log/subjects.ts";
import type { Day } from "../../../core/units/day.ts";
import { factOf, putFact, type TabletDatabase } from "./database.ts";
import type { ItemNow } from "./item-now.ts";
import { type ItemRow, rowOf } from "./item-row.ts";

/** A row for each item, kept up to date: what changed is made again at once, the whole list in small pieces so that nobody waits for it. */
export interface ItemRows {
  /** By number. */
  list(): readonly ItemRow[];
  /** Items whose row is not made yet, or may be of yesterday. */
  toCome(): number;
  /** Entries came: their items' rows are made again. */
  touch(events: readonly LogEvent[]): void;
  /** The day, the rules or the whole log are other ones: every row is made again. */
  touchAll(ids: Iterable<string>): void;
  /** Makes rows for a few hundredths of a second. @returns whether some are still to come */
  work(item: (id: string) => ItemNow | null): boolean;
  /** Keeps the rows for the next opening. */
  save(cursor: string, day: Day): Promise<void>;
}

interface Saved {
  /** Place of the server's log up to which they tell. */
  readonly cursor: string;
  readonly day: Day;
  readonly rows: readonly ItemRow[];
}

const PIECE_MS = 24;

export async function openItemRows(
  database: TabletDatabase,
): Promise<ItemRows & { readonly cursor: string; readonly day: Day | null }> {
  const saved = await factOf<Saved>(database, "rows");
  const rows = new Map(saved?.rows.map((row) => [row.id, row]));
  const dirty = new Set<string>();
  let list: readonly ItemRow[] | null = null;
  return {
    cursor: saved?.cursor ?? "0",
    day: saved?.day ?? null,
    list: () => {
      list ??= [...rows.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
      return list;
    },
    toCome: () => dirty.size,
    touch: (events) => {
      for (const event of events)
        for (const subject of subjectsOf(event))
          if (subject.startsWith("item:")) dirty.add(subject.slice("item:".length));
    },
    touchAll: (ids) => {
      const all = new Set(ids);
      for (const id of all) dirty.add(id);
      for (const id of rows.keys()) if (!all.has(id)) rows.delete(id);
      list = null;
    },
    work: (item) => {
      const end = performance.now() + PIECE_MS;
      for (const id of dirty) {
        if (performance.now() > end) break;
        dirty.delete(id);
        const found = item(id);
        if (found === null) rows.delete(id);
        else rows.set(id, rowOf(found));
        list = null;
      }
      return dirty.size > 0;
    },
    save: async (cursor, day) => {
      if (dirty.size > 0) return;
      await putFact(database, "rows", { cursor, day, rows: [...rows.values()] } satisfies Saved);
    },
  };
}
