import { type Outcome, refused } from "../outcome/problem.ts";
import type { Filed } from "./kinds.ts";
import { kindOf } from "./kinds.ts";
import {
  type CampaignState,
  type Frontier,
  filedText,
  isStored,
  type Stored,
  type Subject,
} from "./state.ts";

const VERSION = 1;

interface Head {
  readonly snapshot: number;
  readonly subjects: number;
  /** Length of all that follows the first line. */
  readonly letters: number;
  readonly frontier: readonly (readonly [
    device: string,
    number: number,
    hash: string,
    beyond: readonly (readonly [number, string])[],
  ])[];
}

/** The state as text, the same for the same state: a first line with how far each device is here, then one line for each subject. */
export function snapshotOf({ filed, frontier }: CampaignState): string {
  const lines = [...filed.keys()].sort().map((subject) => lineOf(subject, filed.get(subject) ?? []));
  const body = lines.join("");
  const head: Head = {
    snapshot: VERSION,
    subjects: lines.length,
    letters: body.length,
    frontier: [...frontier.keys()].sort().flatMap((device) => {
      const reached = frontier.get(device);
      return reached
        ? [[device, reached.number, reached.hash, [...reached.beyond].sort(([a], [b]) => a - b)] as const]
        : [];
    }),
  };
  return `${JSON.stringify(head)}\n${body}`;
}

/** Subject, place of its last event, its events; in each of them a tab or an end of line is written as an escape. */
function lineOf(subject: Subject, found: readonly Filed[] | Stored): string {
  const since = isStored(found) ? found.since : found;
  const last = since.at(-1) ?? (isStored(found) ? found.last : undefined);
  const place = [last?.clock.wall, last?.clock.counter, last?.id];
  const added = filedText(since);
  const text = !isStored(found)
    ? added
    : since.length === 0
      ? found.text
      : `${found.text.slice(0, -1)},${added.slice(1)}`;
  return `${JSON.stringify(subject)}\t${JSON.stringify(place)}\t${text}\n`;
}

/** The state of a snapshot; fold into it whatever the log holds beyond its frontier. What stands under a subject is read when it is asked for. */
export function resume(text: string): Outcome<CampaignState> {
  const end = text.indexOf("\n");
  const head = headFrom(text.slice(0, Math.max(0, end)));
  if (head === null || text.length !== end + 1 + head.letters)
    return unfit("it is not whole, or of another version");
  const filed = new Map<Subject, Stored>();
  for (let at = end + 1; at < text.length; ) {
    const subject = text.indexOf("\t", at);
    const place = text.indexOf("\t", subject + 1);
    const stop = text.indexOf("\n", place);
    const [wall, counter, id] = JSON.parse(text.slice(subject + 1, place)) as [number, number, string]; // written by lineOf
    const last = { clock: { wall, counter }, id };
    filed.set(JSON.parse(text.slice(at, subject)) as Subject, {
      text: text.slice(place + 1, stop),
      last,
      since: [],
    });
    at = stop + 1;
  }
  if (filed.size !== head.subjects) return unfit("it is not whole");
  const learned = [...filed.keys()].find(isUnderstoodNow);
  if (learned !== undefined) return unfit(`${learned.slice("strange:".length)} is understood now`);
  const frontier: Frontier = new Map(
    head.frontier.map(([device, number, hash, beyond]) => [
      device,
      { number, hash, beyond: new Map(beyond) },
    ]),
  );
  return { ok: true, value: { filed, frontier } };
}

function headFrom(line: string): Head | null {
  try {
    const head = JSON.parse(line) as Head; // its version tells its shape
    return head.snapshot === VERSION ? head : null;
  } catch {
    return null;
  }
}

function isUnderstoodNow(subject: Subject): boolean {
  const [, kind = "", version = ""] = /^strange:(\S+) (\d+)$/.exec(subject) ?? [];
  return kindOf(kind, Number(version)) !== null;
}

const unfit = (expected: string): Outcome<never> =>
  refused({
    code: "snapshot-unfit",
    severity: "note",
    expected,
    remedy: "Nothing is lost: the state is made again from the log.",
  });
