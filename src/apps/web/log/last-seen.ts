import { factOf, putFact, type TabletDatabase } from "./database.ts";

/** What the screens a day begins with showed last: it is there while a large log is still being opened. */
export interface LastSeen {
  of<T>(view: string, args: readonly unknown[]): T | null;
  note(view: string, args: readonly unknown[], shown: unknown): void;
}

const KEPT: ReadonlySet<string> = new Set(["walls", "today"]);
const SAVED_AFTER_MS = 1000;

export async function openLastSeen(database: TabletDatabase): Promise<LastSeen> {
  const seen = new Map<string, unknown>(Object.entries((await factOf<object>(database, "last seen")) ?? {}));
  let soon: ReturnType<typeof setTimeout> | undefined;
  return {
    of: <T>(view: string, args: readonly unknown[]) =>
      args.length === 0 ? ((seen.get(view) as T | undefined) ?? null) : null, // noted below under the same name
    note: (view, args, shown) => {
      if (!KEPT.has(view) || args.length > 0) return;
      seen.set(view, shown);
      clearTimeout(soon);
      soon = setTimeout(() => void putFact(database, "last seen", Object.fromEntries(seen)), SAVED_AFTER_MS);
    },
  };
}
