import { CLOCK_START, type Clock, compareClocks } from "../../../core/log/clock.ts";
import type { LogEvent, Who } from "../../../core/log/event.ts";
import type { Kind, Payload } from "../../../core/log/kinds.ts";
import { newPen, type Pen } from "../../../core/log/pen.ts";
import { type Entry, type Tests, writeEvent } from "../../../core/log/write-event.ts";
import { done, type Outcome } from "../../../core/outcome/problem.ts";
import type { OwnEntry, TabletDatabase } from "./database.ts";
import type { EntryAnswer, Me } from "./server-line.ts";

/** Something to be written down; who writes it is added here. */
export type Draft = {
  readonly [K in Kind]: {
    readonly kind: K;
    readonly payload: Payload<K>;
    /** What it replaces; left out: what stands about the same matter here. */
    readonly seen?: readonly string[];
  };
}[Kind];

/**
 * Writes drafts into this device's part of the log, all or none; resolved when they are on its disk.
 * The pen is read and moved in the transaction that keeps the entries, so that two windows never write one number.
 * @param heard the latest clock seen in entries of others
 */
export async function writeOwn(
  database: TabletDatabase,
  drafts: readonly Required<Draft>[],
  me: Me,
  person: string | null,
  heard: Clock,
  tests: Tests,
): Promise<Outcome<readonly LogEvent[]>> {
  const who: Who = person === null ? { role: me.role } : { role: me.role, person };
  const name = penName(me);
  const open = database.transaction(["own", "facts"], "readwrite", { durability: "strict" });
  const facts = open.objectStore("facts");
  const before = ((await facts.get(name)) as Pen | undefined) ?? newPen(me.campaign, me.device); // put there below
  let pen = compareClocks(heard, before.clock) > 0 ? { ...before, clock: heard } : before;
  const events: LogEvent[] = [];
  for (const draft of drafts) {
    const moment = { now: Date.now(), random: crypto.getRandomValues(new Uint8Array(10)) };
    const written = writeEvent(pen, { ...draft, who } as Entry, moment, tests); // a draft and its writer are an entry
    if (!written.ok) {
      open.abort();
      await open.done.catch(() => {});
      return written;
    }
    pen = written.value.pen;
    events.push(written.value.event);
  }
  const own = open.objectStore("own");
  for (const event of events) await own.put({ event, standing: "waiting" }, event.id);
  await facts.put(pen, name);
  await open.done;
  return done(events);
}

/** A device that was let in under another name goes on with a pen of its own. */
const penName = ({ campaign, device }: Me): string => `pen ${campaign} ${device}`;

/** Entries of one standing, in the order in which they were written. */
export const ownEntries = (
  database: TabletDatabase,
  standing: OwnEntry["standing"],
): Promise<readonly OwnEntry[]> => database.getAllFromIndex("own", "standing", standing); // keys are ULIDs, which rise

/** Those of them that the device may send under the name it is let in by now. */
export const entriesToSend = async (
  database: TabletDatabase,
  { device, campaign }: Me,
): Promise<LogEvent[]> =>
  (await ownEntries(database, "waiting")).flatMap(({ event }) =>
    event.device === device && event.campaign === campaign ? [event] : [],
  );

export async function markAnswered(
  database: TabletDatabase,
  answers: readonly EntryAnswer[],
): Promise<{ readonly kept: number; readonly refused: number }> {
  const open = database.transaction("own", "readwrite", { durability: "strict" });
  let [kept, refused] = [0, 0];
  for (const { id, answer, problem } of answers) {
    const entry = id === null ? undefined : await open.store.get(id);
    if (entry === undefined || id === null || answer === "waits") continue;
    if (answer === "kept") kept++;
    else refused++;
    const { event } = entry;
    await open.store.put({ event, standing: answer, ...(problem ? { problem } : {}) }, id);
  }
  await open.done;
  return { kept, refused };
}

/** After a backup was put back on the server every own entry is sent again: what it has already does no harm. */
export async function sendAllAgain(database: TabletDatabase): Promise<void> {
  const open = database.transaction("own", "readwrite", { durability: "strict" });
  for await (const cursor of open.store)
    if (cursor.value.standing === "kept") await cursor.update({ ...cursor.value, standing: "waiting" });
  await open.done;
}

export const latestClock = (
  events: Iterable<{ readonly clock: Clock }>,
  from: Clock = CLOCK_START,
): Clock => {
  let latest = from;
  for (const { clock } of events) if (compareClocks(clock, latest) > 0) latest = clock;
  return latest;
};
