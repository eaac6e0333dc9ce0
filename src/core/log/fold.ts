import { inOrder, type LogEvent } from "./event.ts";
import type { Filed } from "./kinds.ts";
import { type CampaignState, EMPTY_STATE, eventsAbout, type Frontier, type Subject } from "./state.ts";
import { subjectsOf } from "./subjects.ts";

/**
 * Files events under what they speak of, on top of an earlier state, which stays as it is. The same events give the same state in whatever
 * order and however often they come; an event that comes late takes its place in the order of the log. Which of several answers stands is
 * decided when it is asked for. Entries that share an id and differ must be set aside before, as `mergeLogs` does.
 */
export function fold(events: Iterable<LogEvent>, from: CampaignState = EMPTY_STATE): CampaignState {
  const touched = new Map<Subject, Filed[]>();
  const reached = new Map<string, Progress>();
  for (const event of events) {
    const filed = filedOf(event);
    for (const subject of subjectsOf(event)) {
      let list = touched.get(subject);
      if (list === undefined) {
        list = [...eventsAbout(from, subject)];
        touched.set(subject, list);
      }
      insert(list, filed);
    }
    advance(progressOf(reached, from.frontier, event.device), event);
  }
  const filed = new Map(from.filed);
  for (const [subject, list] of touched) filed.set(subject, list);
  const frontier = new Map(from.frontier);
  for (const [device, progress] of reached) frontier.set(device, progress);
  return { filed, frontier };
}

const filedOf = ({ id, device, number, clock, who, kind, version, payload, seen }: LogEvent): Filed =>
  ({ id, device, number, clock, who, kind, version, payload, seen }) as unknown as Filed; // what is strange is filed as such

/** Puts an event where it belongs in the order; one that is there already stays once. */
function insert(list: Filed[], event: Filed): void {
  const last = list.at(-1);
  if (last === undefined || inOrder(last, event) < 0) {
    list.push(event);
    return;
  }
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
  const known = progress.beyond.get(number);
  if (known === undefined || hash < known) progress.beyond.set(number, hash);
  for (let next = progress.beyond.get(progress.number + 1); next !== undefined; ) {
    progress.number++;
    progress.hash = next;
    progress.beyond.delete(progress.number);
    next = progress.beyond.get(progress.number + 1);
  }
}
