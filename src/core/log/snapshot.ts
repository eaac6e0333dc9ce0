import { type Outcome, refused } from "../outcome/problem.ts";
import type { Filed } from "./kinds.ts";
import { kindOf } from "./kinds.ts";
import { type CampaignState, type Frontier, filedText, type Subject } from "./state.ts";

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
  const lines = [...filed.keys()].sort().map((subject) => {
    const events = filed.get(subject) ?? [];
    return `${JSON.stringify(subject)}\t${typeof events === "string" ? events : filedText(events)}\n`;
  });
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

/** The state of a snapshot; fold into it whatever the log holds beyond its frontier. What stands under a subject is read when it is asked for. */
export function resume(text: string): Outcome<CampaignState> {
  const end = text.indexOf("\n");
  const head = headFrom(text.slice(0, Math.max(0, end)));
  if (head === null || text.length !== end + 1 + head.letters)
    return unfit("it is not whole, or of another version");
  const filed = new Map<Subject, readonly Filed[] | string>();
  for (let at = end + 1; at < text.length; ) {
    const stop = text.indexOf("\n", at);
    const tab = text.indexOf("\t", at);
    filed.set(JSON.parse(text.slice(at, tab)) as Subject, text.slice(tab + 1, stop)); // written by snapshotOf
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
