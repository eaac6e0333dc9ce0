import { hashOf, type LogEvent } from "../../core/log/event.ts";
import { foldingFrom } from "../../core/log/fold.ts";
import { type CampaignState, EMPTY_STATE } from "../../core/log/state.ts";
import { damaged } from "../keep/failures.ts";
import { type Appended, type Keep, KeepFault, type Placed } from "../keep/keep.ts";
import { packedState, unpackedState } from "../keep/packed-state.ts";

/** Events read at a time. */
const PAGE = 2000;
/** So many entries since the last saved state are held against their hashes; of the rest of a log that never had one `verify` and the backup of the day do so. */
const MOST_CHECKED = 20_000;
/** Places after which the state is saved again. */
const SAVED_EVERY = 5000;
/** How soon what another program wrote into the same keep is seen. */
const LOOK_EVERY_MS = 2000;

/** The state up to a place of the keep. */
export interface StateAt {
  readonly place: number;
  readonly state: CampaignState;
}

/** One campaign's log as a server works with it: it is written, followed, and folded once for all who ask. */
export interface LogDesk {
  readonly campaign: string;
  append(events: readonly LogEvent[]): Promise<Appended>;
  after(place: number, most: number): Promise<readonly Placed[]>;
  /** The state of everything that is kept now. */
  state(): Promise<StateAt>;
  /** What comes after a place, as it comes; an empty list when nothing came for a while. Ends when the signal says so. */
  follow(place: number, signal: AbortSignal): AsyncGenerator<readonly Placed[]>;
  /** Saves the state, if the log can still be reached. The keep stays open. */
  close(): Promise<void>;
}

export async function openDesk(keep: Keep, campaign: string): Promise<LogDesk> {
  const waiting = new Set<() => void>();
  const first = await firstState(keep, campaign);
  let at = Promise.resolve(first);
  let saved = first.place;
  let saving = Promise.resolve(); // nobody who asks for the state waits for it

  async function caughtUp(before: StateAt): Promise<StateAt> {
    const folding = foldingFrom(before.state);
    for (let place = before.place, read = 0; ; ) {
      const page = await keep.after(campaign, place, PAGE);
      const events = page.map(({ event }) => event);
      if (read < MOST_CHECKED) for (const event of events) refuseAltered(keep.where, event);
      folding.add(events);
      read += page.length;
      place = page.at(-1)?.place ?? place;
      if (page.length < PAGE) return read === 0 ? before : { place, state: folding.state() };
    }
  }

  /** A state that cannot be saved is made again from the log. */
  async function save({ place, state }: StateAt): Promise<void> {
    if (place === saved) return;
    saved = place;
    try {
      await keep.saveSnapshot(campaign, place, packedState(state));
    } catch (error) {
      if (!(error instanceof KeepFault)) throw error;
    }
  }

  /** One asker after the other, so that each page is folded once; who fails leaves the state as it was. */
  function state(): Promise<StateAt> {
    const before = at;
    const next = before.then(caughtUp);
    at = next.catch(() => before);
    return next;
  }

  return {
    campaign,
    append: async (events) => {
      const appended = await keep.append(events);
      if (appended.added > 0) for (const wake of [...waiting]) wake();
      return appended;
    },
    after: (place, most) => keep.after(campaign, place, most),
    state: async () => {
      const now = await state();
      if (now.place >= saved + SAVED_EVERY) saving = saving.then(() => soon(() => save(now)));
      return now;
    },
    follow: async function* (place, signal) {
      for (let last = place; !signal.aborted; ) {
        const woken = nextWake(waiting, signal);
        const page = await keep.after(campaign, last, PAGE);
        last = page.at(-1)?.place ?? last;
        yield page;
        if (page.length < PAGE) await woken;
      }
    },
    close: async () => {
      await saving;
      try {
        await save(await state());
      } catch (error) {
        if (!(error instanceof KeepFault)) throw error;
      }
    },
  };
}

/** Does something after what is answered now. */
const soon = async (work: () => Promise<void>): Promise<void> => {
  await new Promise((next) => setImmediate(next));
  await work();
};

function refuseAltered(where: string, event: LogEvent): void {
  if (hashOf(event) === event.hash) return;
  throw new KeepFault(damaged(where, `entry ${event.number} of ${event.device}`), null);
}

async function firstState(keep: Keep, campaign: string): Promise<StateAt> {
  const snapshot = await keep.snapshot(campaign);
  if (snapshot === null) return { place: 0, state: EMPTY_STATE };
  const resumed = unpackedState(snapshot.bytes);
  return resumed.ok ? { place: snapshot.place, state: resumed.value } : { place: 0, state: EMPTY_STATE }; // a cache of another version: made again from the log
}

/** Until something was written here, the time to look again has come, or the signal says to end. */
function nextWake(waiting: Set<() => void>, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const wake = (): void => {
      waiting.delete(wake);
      clearTimeout(timer);
      signal.removeEventListener("abort", wake);
      resolve();
    };
    const timer = setTimeout(wake, LOOK_EVERY_MS);
    waiting.add(wake);
    signal.addEventListener("abort", wake);
  });
}
