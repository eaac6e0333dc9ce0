import { createHash } from "node:crypto";
import type { LogEvent } from "../../core/log/event.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { damaged } from "./failures.ts";
import { gathered } from "./gathered.ts";
import { chainNotes, faultsOf, idTaken, wentOn } from "./judge.ts";
import { type Appended, type Keep, KeepFault } from "./keep.ts";
import type { Base, KeepWork } from "./tables.ts";

/** Batches written in one transaction at most. */
const MOST_BATCHES = 500;
/** Events of one statement: a database takes no more than some ten thousand values. */
const MOST_ROWS = 500;

/** The keep over either database.   @param shut why nothing can be written, null when it can */
export function sqlKeep(base: Base, shut: Problem | null): Keep {
  const { db, where } = base;
  const writes = gathered((batches: readonly Batch[]) => write(base, batches), MOST_BATCHES);
  const told = async <T>(reading: Promise<T>): Promise<T> => {
    try {
      return await reading;
    } catch (error) {
      const problem = base.failureOf(error);
      throw problem ? new KeepFault(problem, error) : error;
    }
  };
  return {
    where,
    shut,
    append: (events, last) =>
      shut ? Promise.resolve(refusal([shut])) : writes.ask({ events, last: last ?? null }),
    after: async (campaign, place, most) => {
      const rows = await told(
        db
          .selectFrom("leafward_event")
          .select(["place", "body"])
          .where("campaign", "=", campaign)
          .where("place", ">", place)
          .orderBy("place")
          .limit(most)
          .execute(),
      );
      return rows.map(({ place, body }) => ({ place, event: eventIn(body, where, place) }));
    },
    campaigns: async () => {
      const rows = await told(
        db.selectFrom("leafward_event").select("campaign").distinct().orderBy("campaign").execute(),
      );
      return rows.map(({ campaign }) => campaign).sort();
    },
    snapshot: async (campaign) => {
      const row = await told(
        db
          .selectFrom("leafward_snapshot")
          .select(["place", "bytes"])
          .where("campaign", "=", campaign)
          .executeTakeFirst(),
      );
      const bytes = row && unsealed(row.bytes);
      return row && bytes ? { place: row.place, bytes } : null;
    },
    saveSnapshot: async (campaign, place, bytes) => {
      if (shut) return;
      const row = { place, bytes: sealed(bytes) };
      await told(
        db
          .insertInto("leafward_snapshot")
          .values({ campaign, ...row })
          .onConflict((conflict) => conflict.column("campaign").doUpdateSet(row))
          .execute(),
      );
    },
    close: async () => {
      await writes.idle();
      await base.close();
    },
  };
}

const SUM_BYTES = 32;
const sumOf = (bytes: Uint8Array): Buffer => createHash("sha256").update(bytes).digest();

/** Its SHA-256 before it: entries are held against their hashes, and what was made of them must not be worth less. */
const sealed = (bytes: Uint8Array): Uint8Array => Buffer.concat([sumOf(bytes), bytes]);

/** Null: it is not what was saved, and is made again from the log. */
function unsealed(row: Uint8Array): Uint8Array | null {
  const bytes = row.subarray(SUM_BYTES);
  return sumOf(bytes).equals(row.subarray(0, SUM_BYTES)) ? bytes : null;
}

/** An event was judged when it was taken; whether it is still as it was `verify` tells. */
function eventIn(body: string, where: string, place: number): LogEvent {
  try {
    return JSON.parse(body) as LogEvent;
  } catch (error) {
    throw new KeepFault(damaged(where, `the entry at place ${place}`), error);
  }
}

const refusal = (refused: readonly Problem[], place = 0): Appended => ({
  ...{ added: 0, known: 0, refused, noted: [], place },
});

interface Batch {
  readonly events: readonly LogEvent[];
  /** The place after which nothing may have come; null: whatever has come. */
  readonly last: number | null;
}

/** All batches in one transaction; each of them is taken whole or not at all. */
async function write(base: Base, batches: readonly Batch[]): Promise<Appended[]> {
  const faults = batches.map(({ events }) => events.flatMap(faultsOf));
  try {
    return await base.db.transaction().execute(async (work) => {
      await base.enter(work);
      let place = await lastPlace(work);
      const answers: Appended[] = [];
      for (const [at, batch] of batches.entries()) {
        const answer = (await hasGoneOn(work, batch))
          ? refusal([wentOn(base.where)], place)
          : await take(work, batch.events, faults[at] ?? [], place);
        place = answer.place;
        answers.push(answer);
      }
      return answers;
    });
  } catch (error) {
    const problem = base.failureOf(error);
    if (problem === null) throw error;
    return batches.map(() => refusal([problem]));
  }
}

async function lastPlace(work: KeepWork): Promise<number> {
  const row = await work
    .selectFrom("leafward_event")
    .select(({ fn }) => fn.max("place").as("place"))
    .executeTakeFirst();
  return row?.place ?? 0;
}

async function hasGoneOn(work: KeepWork, { events: [first], last }: Batch): Promise<boolean> {
  if (last === null || first === undefined) return false;
  const since = await work
    .selectFrom("leafward_event")
    .select("place")
    .where("campaign", "=", first.campaign)
    .where("place", ">", last)
    .limit(1)
    .executeTakeFirst();
  return since !== undefined;
}

async function take(
  work: KeepWork,
  batch: readonly LogEvent[],
  faults: readonly Problem[],
  place: number,
): Promise<Appended> {
  if (faults.length > 0) return refusal(faults, place);
  const { fresh, clashes } = await sifted(work, batch);
  if (clashes.length > 0) return refusal(clashes.map(idTaken), place);
  for (let at = 0; at < fresh.length; at += MOST_ROWS)
    await work
      .insertInto("leafward_event")
      .values(fresh.slice(at, at + MOST_ROWS).map((event, more) => rowOf(event, place + at + more + 1)))
      .execute();
  return {
    added: fresh.length,
    known: batch.length - fresh.length,
    refused: [],
    noted: await notesOn(work, fresh),
    place: place + fresh.length,
  };
}

const rowOf = (event: LogEvent, place: number) => {
  const { campaign, id, hash, device, number } = event;
  return { place, campaign, id, hash, device, number, body: JSON.stringify(event) };
};

/** Those not here yet, each once; and those whose id another event has. */
async function sifted(
  work: KeepWork,
  batch: readonly LogEvent[],
): Promise<{ readonly fresh: LogEvent[]; readonly clashes: LogEvent[] }> {
  const here = new Map<string, string>();
  for (const [campaign, events] of grouped(batch, ({ campaign }) => campaign))
    for (let at = 0; at < events.length; at += MOST_ROWS) {
      const ids = events.slice(at, at + MOST_ROWS).map(({ id }) => id);
      const rows = await work
        .selectFrom("leafward_event")
        .select(["id", "hash"])
        .where("campaign", "=", campaign)
        .where("id", "in", ids)
        .execute();
      for (const { id, hash } of rows) here.set(`${id} ${campaign}`, hash);
    }
  const fresh: LogEvent[] = [];
  const clashes: LogEvent[] = [];
  for (const event of batch) {
    const key = `${event.id} ${event.campaign}`;
    const known = here.get(key);
    if (known === undefined) fresh.push(event);
    else if (known !== event.hash) clashes.push(event);
    here.set(key, known ?? event.hash);
  }
  return { fresh, clashes };
}

/** For each device, what stands against its events together with those before them and beside them here. */
async function notesOn(work: KeepWork, fresh: readonly LogEvent[]): Promise<Problem[]> {
  const notes: Problem[] = [];
  for (const events of grouped(fresh, ({ campaign, device }) => `${device} ${campaign}`).values()) {
    const [{ campaign, device }] = events;
    const numbers = events.map(({ number }) => number);
    const rows = await work
      .selectFrom("leafward_event")
      .select(["number", "hash"])
      .where("campaign", "=", campaign)
      .where("device", "=", device)
      .where("number", ">=", numbers.reduce((a, b) => Math.min(a, b)) - 1)
      .where(
        "number",
        "<=",
        numbers.reduce((a, b) => Math.max(a, b)),
      )
      .execute();
    const here = new Map(
      [...grouped(rows, ({ number }) => number)].map(([number, all]) => [
        number,
        all.map(({ hash }) => hash),
      ]),
    );
    notes.push(...chainNotes(events, here));
  }
  return notes;
}

type Some<T> = readonly [T, ...T[]];

function grouped<T, K>(values: readonly T[], keyOf: (value: T) => K): Map<K, Some<T>> {
  const groups = new Map<K, [T, ...T[]]>();
  for (const value of values) {
    const group = groups.get(keyOf(value));
    if (group) group.push(value);
    else groups.set(keyOf(value), [value]);
  }
  return groups;
}
