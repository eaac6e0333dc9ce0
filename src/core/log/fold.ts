import { inOrder, type LogEvent } from "./event.ts";
import type { Filed } from "./kinds.ts";
import {
  type CampaignState,
  EMPTY_STATE,
  type Frontier,
  isStored,
  readStored,
  type Stored,
  type Subject,
} from "./state.ts";
import { subjectsOf } from "./subjects.ts";

/**
 * Files events under what they speak of, on top of an earlier state, which stays as it is. The same events give the same state in whatever
 * order and however often they come; an event that comes late takes its place in the order of the log. Which of several answers stands is
 * decided when it is asked for. The events were read by `readEvent` or written by `writeEvent`; entries that share an id and differ must be set aside before, as `mergeLogs` does.
 */
export const fold = (events: Iterable<LogEvent>, from: CampaignState = EMPTY_STATE): CampaignState => {
  const folding = foldingFrom(from);
  folding.add(events);
  return folding.state();
};

/** A fold in several goes, for a log that is read page by page. */
interface Folding {
  add(events: Iterable<LogEvent>): void;
  /** The state of all that was added; nothing is added afterwards. */
  state(): CampaignState;
}

export function foldingFrom(from: CampaignState): Folding {
  const touched = new Map<Subject, Pile>();
  const reached = new Map<string, Progress>();
  return {
    add: (events) => {
      for (const event of events) {
        const filed = filedOf(event);
        for (const subject of subjectsOf(event)) insert(pileIn(touched, subject, from), filed);
        advance(progressOf(reached, from.frontier, event.device), event);
      }
    },
    state: () => {
      const filed = new Map(from.filed);
      for (const [subject, { stored, list }] of touched)
        filed.set(subject, stored ? { ...stored, since: list } : list);
      return { filed, frontier: new Map([...from.frontier, ...reached]) };
    },
  };
}

const filedOf = ({ id, device, number, clock, who, kind, version, payload, seen }: LogEvent): Filed =>
  ({ id, device, number, clock, who, kind, version, payload, seen }) as unknown as Filed; // what is strange is filed as such

/** The events of one subject while they are added to; what a snapshot stored stays unread as long as all that comes is later. */
interface Pile {
  stored: Stored | null;
  list: Filed[];
}

function pileIn(touched: Map<Subject, Pile>, subject: Subject, from: CampaignState): Pile {
  const found = touched.get(subject);
  if (found !== undefined) return found;
  const pile = pileOf(from.filed.get(subject) ?? []);
  touched.set(subject, pile);
  return pile;
}

const pileOf = (found: readonly Filed[] | Stored): Pile =>
  isStored(found) ? { stored: found, list: [...found.since] } : { stored: null, list: [...found] };

/** Puts an event where it belongs in the order; one that is there already stays once. */
function insert(pile: Pile, event: Filed): void {
  const last = pile.list.at(-1) ?? pile.stored?.last;
  if (last === undefined || inOrder(last, event) < 0) {
    pile.list.push(event);
    return;
  }
  if (pile.stored) {
    pile.list = readStored({ ...pile.stored, since: pile.list });
    pile.stored = null;
  }
  const { list } = pile;
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (inOrder(list[middle] as Filed, event) < 0)
      low = middle + 1; // the middle lies inside the list
    else high = middle;
  }
  if (list[low]?.id !== event.id) list.splice(low, 0, event);
}

interface Progress {
  number: number;
  hash: string;
  readonly beyond: Map<number, string>;
}

function progressOf(reached: Map<string, Progress>, from: Frontier, device: string): Progress {
  let progress = reached.get(device);
  if (progress === undefined) {
    const before = from.get(device);
    progress = { number: before?.number ?? 0, hash: before?.hash ?? "", beyond: new Map(before?.beyond) };
    reached.set(device, progress);
  }
  return progress;
}

/** Of two events of one device under one number the lesser hash counts here, so that the order of arrival does not. */
function advance(progress: Progress, { number, hash }: LogEvent): void {
  if (number === progress.number && hash < progress.hash) progress.hash = hash;
  if (number <= progress.number) return;
  if (number === progress.number + 1 && progress.beyond.size === 0) {
    progress.number = number;
    progress.hash = hash;
    return;
  }
  const known = progress.beyond.get(number);
  if (known === undefined || hash < known) progress.beyond.set(number, hash);
  for (let next = progress.beyond.get(progress.number + 1); next !== undefined; ) {
    progress.number++;
    progress.hash = next;
    progress.beyond.delete(progress.number);
    next = progress.beyond.get(progress.number + 1);
  }
}
