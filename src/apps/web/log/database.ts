import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { LogEvent } from "../../../core/log/event.ts";
import type { Problem } from "../../../core/outcome/problem.ts";

/** An entry this device wrote, and what became of it. */
export interface OwnEntry {
  readonly event: LogEvent;
  /** `waiting`: the server has not yet said that it keeps it. */
  readonly standing: "waiting" | "kept" | "refused" | "given up";
  readonly problem?: Problem;
}

/** What a tablet keeps of the campaign's log, so that it works without the server. */
export interface TabletTables extends DBSchema {
  /** Every entry of this device, by its id. */
  own: { key: string; value: OwnEntry; indexes: { standing: string } };
  /** Entries that the server keeps and that came after the saved state, by their place there. */
  kept: { key: number; value: LogEvent };
  /** Pictures not yet sent, by SHA-256. */
  pictures: { key: string; value: Blob };
  /** One value each. */
  facts: { key: string; value: unknown };
}

export type TabletDatabase = IDBPDatabase<TabletTables>;

const VERSION = 1;

export const openDatabase = (): Promise<TabletDatabase> =>
  openDB<TabletTables>("leafward", VERSION, {
    upgrade(database) {
      database.createObjectStore("own").createIndex("standing", "standing");
      for (const store of ["kept", "pictures", "facts"] as const) database.createObjectStore(store);
    },
    blocking: (_from, _to, event) => {
      (event.target as IDBDatabase).close(); // a newer Leafward in another window waits for this one
    },
  });

/** A value under the name it was put under. */
export const factOf = async <T>(database: TabletDatabase, name: string): Promise<T | null> =>
  ((await database.get("facts", name)) as T | undefined) ?? null;

export const putFact = (database: TabletDatabase, name: string, value: unknown): Promise<string> =>
  database.put("facts", value, name);
