import { CLOCK_START, type Clock } from "../../../core/log/clock.ts";
import type { LogEvent } from "../../../core/log/event.ts";
import { fold } from "../../../core/log/fold.ts";
import { resume, snapshotOf } from "../../../core/log/snapshot.ts";
import { type CampaignState, EMPTY_STATE } from "../../../core/log/state.ts";
import { factOf, type TabletDatabase } from "./database.ts";
import { latestClock, sendAllAgain } from "./own-entries.ts";
import { ask, type Me } from "./server-line.ts";

/** What the server keeps, as far as this device has heard. */
export interface KeptLog {
  state(): CampaignState;
  /** Place of the server's log up to which this tells. */
  cursor(): string;
  /** Entries after a place; null: they are not held one by one any more. */
  since(cursor: string): Promise<readonly LogEvent[] | null>;
  /** The latest clock of all that was heard. */
  heard(): Clock;
  /** Takes what the server has beyond what is known here, and goes on hearing what comes. Ends when the signal says so. */
  follow(signal: AbortSignal): Promise<void>;
}

/** The state up to a place of the server's log, as the server writes places: `123-0a1b2c…`. */
interface Saved {
  readonly text: string;
  readonly cursor: string;
}

/** Entries after which the state is saved again, so that opening reads little. */
const SAVED_EVERY = 500;
const SEES_ALL = new Set(["lead", "cleaner", "photographer", "scribe", "boxer", "store keeper"]);
/** Roles that see a part of the state are not sent single entries; they look again this often. */
const LOOK_AGAIN_MS = 30_000;

export async function openKeptLog(
  database: TabletDatabase,
  me: Me,
  changed: (events: readonly LogEvent[] | "everything") => void,
  line: (isOpen: boolean) => void,
): Promise<KeptLog> {
  const saved = await factOf<Saved>(database, "state");
  const resumed = saved === null ? null : resume(saved.text);
  let cursor = resumed?.ok ? ((await factOf<string>(database, "cursor")) ?? saved?.cursor ?? "0") : "0";
  const since = resumed?.ok ? await database.getAll("kept") : [];
  let state = fold(since, resumed?.ok ? resumed.value : EMPTY_STATE);
  let heard = latestClock(since, (await factOf<Clock>(database, "heard")) ?? CLOCK_START);
  let unsaved = since.length;

  async function takeWhole(): Promise<boolean> {
    const reached = await ask<string>("/api/state");
    if (reached.kind !== "answer") return false;
    const whole = resume(reached.value);
    if (!whole.ok) return false;
    cursor = reached.headers.get("leafward-place") ?? "0";
    state = whole.value;
    await save(reached.value);
    changed("everything");
    return true;
  }

  async function save(text: string): Promise<void> {
    const open = database.transaction(["kept", "facts"], "readwrite");
    await open.objectStore("kept").clear();
    await open.objectStore("facts").put({ text, cursor } satisfies Saved, "state");
    await open.objectStore("facts").put(cursor, "cursor");
    await open.objectStore("facts").put(heard, "heard");
    await open.done;
    unsaved = 0;
  }

  async function take(page: readonly { readonly id: string; readonly event: LogEvent }[]): Promise<void> {
    const events = page.map(({ event }) => event);
    const last = page.at(-1);
    if (last === undefined) return;
    const open = database.transaction(["kept", "facts"], "readwrite");
    for (const { id, event } of page) await open.objectStore("kept").put(event, Number.parseInt(id, 10));
    await open.objectStore("facts").put(last.id, "cursor");
    await open.done;
    cursor = last.id;
    heard = latestClock(events, heard);
    state = fold(events, state);
    unsaved += events.length;
    changed(events);
    if (unsaved >= SAVED_EVERY) await save(snapshotOf(state));
  }

  /** Whether to come back: false when the log there is another one now. */
  async function hearOn(signal: AbortSignal): Promise<void> {
    const waiting: { id: string; event: LogEvent }[] = [];
    const source = new EventSource(`/api/live?after=${cursor}`);
    signal.addEventListener("abort", () => source.close());
    await new Promise<void>((ended) => {
      let taking = Promise.resolve();
      const takeAll = (): void => {
        taking = taking.then(() => take(waiting.splice(0)));
      };
      let soon: ReturnType<typeof setTimeout> | undefined;
      source.onopen = () => line(true);
      source.onmessage = ({ lastEventId, data }: MessageEvent<string>) => {
        waiting.push({ id: lastEventId, event: JSON.parse(data) as LogEvent }); // kept by our server
        soon ??= setTimeout(() => {
          soon = undefined;
          takeAll();
        }, 30);
      };
      source.onerror = () => {
        line(false);
        source.close();
        clearTimeout(soon);
        takeAll();
        void taking.then(ended);
      };
      signal.addEventListener("abort", () => ended());
    });
  }

  return {
    state: () => state,
    cursor: () => cursor,
    since: async (from) => {
      const [first] = await database.getAllKeys("kept", null, 1);
      const place = Number.parseInt(from, 10);
      const isHeld = from === cursor || (first !== undefined && place >= first - 1);
      return isHeld ? database.getAll("kept", IDBKeyRange.lowerBound(place, true)) : null;
    },
    heard: () => heard,
    follow: async (signal) => {
      for (let wait = 500; !signal.aborted; ) {
        const isKnown = cursor !== "0" || (await takeWhole());
        const reached = isKnown ? await ask(`/api/events?after=${cursor}&most=1`) : { kind: "away" as const };
        if (reached.kind === "refused" && reached.status === 409) {
          await sendAllAgain(database);
          cursor = "0";
          continue;
        }
        if (!SEES_ALL.has(me.role)) {
          line(isKnown && reached.kind !== "away" ? await takeWhole() : false);
          await pause(LOOK_AGAIN_MS, signal);
          continue;
        }
        if (reached.kind === "answer") {
          wait = 500;
          await hearOn(signal);
        } else line(false);
        await pause(wait, signal);
        wait = Math.min(wait * 2, 8000);
      }
    },
  };
}

const pause = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener("abort", () => {
      clearTimeout(timer);
      resolve();
    });
  });
