import type { LogEvent } from "../../core/log/event.ts";
import type { Problem } from "../../core/outcome/problem.ts";

/** An event and its place in one keep: 1, 2, 3 … in the order in which they came there. */
export interface Placed {
  readonly place: number;
  readonly event: LogEvent;
}

/** What became of a batch. Where something is refused nothing of the batch was written. */
export interface Appended {
  readonly added: number;
  /** Events that were there already. */
  readonly known: number;
  readonly refused: readonly Problem[];
  /** Taken, but to be looked at: two ways on from one entry, or an entry that does not follow on the one before it. */
  readonly noted: readonly Problem[];
  /** The last place of the keep. */
  readonly place: number;
}

/** A state that can be made again from the events up to its place. */
export interface KeptSnapshot {
  readonly place: number;
  readonly bytes: Uint8Array;
}

/** A place that keeps events. What `append` has answered survives a power cut. Reading throws a `KeepFault` when the disk or the line fails. */
export interface Keep {
  /** Where it is, for people: a file, or the name of a database. */
  readonly where: string;
  /** Why nothing can be written; null when it can. */
  readonly shut: Problem | null;
  /** Adds events not yet there, all or none; answers when they are durable. The same event twice is no harm; the same id with other content is refused.
   *  @param last what was read before, up to this place: refused with `log-went-on` where more of that campaign has come since */
  append(events: readonly LogEvent[], last?: number): Promise<Appended>;
  /** Events of a campaign in the order of their place here, from after a place. */
  after(campaign: string, place: number, most: number): Promise<readonly Placed[]>;
  /** Sorted. */
  campaigns(): Promise<readonly string[]>;
  /** The last one saved: a cache, and nothing more. */
  snapshot(campaign: string): Promise<KeptSnapshot | null>;
  saveSnapshot(campaign: string, place: number, bytes: Uint8Array): Promise<void>;
  /** Waits for what is being written. */
  close(): Promise<void>;
}

/** A keep that could not be read or written, with what to do. */
export class KeepFault extends Error {
  override name = "KeepFault";
  readonly problem: Problem;

  constructor(problem: Problem, cause: unknown) {
    super(problem.code, { cause });
    this.problem = problem;
  }
}

const PAGE = 2000;

/** Every event of a campaign, by its place here. */
export async function* allEvents(keep: Keep, campaign: string, from = 0): AsyncGenerator<Placed> {
  let last = from;
  for (;;) {
    const page = await keep.after(campaign, last, PAGE);
    yield* page;
    const end = page.at(-1);
    if (end === undefined || page.length < PAGE) return;
    last = end.place;
  }
}
