import type { Outcome } from "../outcome/problem.ts";
import type { CampaignState, Stored, Subject } from "./state.ts";
import { type StoredState, snapshotUnfit, stateFrom, storedFrom } from "./stored-state.ts";

const VERSION = 1;

interface Head extends Pick<StoredState, "frontier"> {
  readonly snapshot: number;
  readonly subjects: number;
  /** Length of all that follows the first line. */
  readonly letters: number;
}

/** The state as text, the same for the same state: a first line with how far each device is here, then one line for each subject. */
export function snapshotOf(state: CampaignState): string {
  const { subjects, frontier } = storedFrom(state);
  const body = subjects.map(([subject, stored]) => lineOf(subject, stored)).join("");
  const head: Head = { snapshot: VERSION, subjects: subjects.length, letters: body.length, frontier };
  return `${JSON.stringify(head)}\n${body}`;
}

/** Subject, place of its last event, its events; in each of them a tab or an end of line is written as an escape. */
const lineOf = (subject: Subject, { last: { clock, id }, text }: Stored): string =>
  `${JSON.stringify(subject)}\t${JSON.stringify([clock.wall, clock.counter, id])}\t${text()}\n`;

/** The state of a snapshot; fold into it whatever the log holds beyond its frontier. What stands under a subject is read when it is asked for. */
export function resume(text: string): Outcome<CampaignState> {
  const end = text.indexOf("\n");
  const head = headFrom(text.slice(0, Math.max(0, end)));
  if (head === null || text.length !== end + 1 + head.letters)
    return snapshotUnfit("it is not whole, or of another version");
  const subjects: [Subject, Stored][] = [];
  for (let at = end + 1; at < text.length; ) {
    const subject = text.indexOf("\t", at);
    const place = text.indexOf("\t", subject + 1);
    const stop = text.indexOf("\n", place);
    const [wall, counter, id] = JSON.parse(text.slice(subject + 1, place)) as [number, number, string]; // written by lineOf
    const stored = {
      text: () => text.slice(place + 1, stop),
      last: { clock: { wall, counter }, id },
      since: [],
    };
    subjects.push([JSON.parse(text.slice(at, subject)) as Subject, stored]);
    at = stop + 1;
  }
  if (subjects.length !== head.subjects) return snapshotUnfit("it is not whole");
  return stateFrom({ subjects, frontier: head.frontier });
}

function headFrom(line: string): Head | null {
  try {
    const head = JSON.parse(line) as Head; // its version tells its shape
    return head.snapshot === VERSION ? head : null;
  } catch {
    return null;
  }
}
