import { type Outcome, refused } from "../outcome/problem.ts";
import { type Filed, kindOf } from "./kinds.ts";
import {
  type CampaignState,
  type Frontier,
  filedText,
  isStored,
  type Stored,
  type Subject,
} from "./state.ts";

/** A state as it is stored: for each subject its events as text, and how far each device is here. The same for the same state. */
export interface StoredState {
  /** By name. */
  readonly subjects: readonly (readonly [Subject, Stored])[];
  /** By device. */
  readonly frontier: readonly (readonly [
    device: string,
    number: number,
    hash: string,
    beyond: readonly (readonly [number, string])[],
  ])[];
}

/** A state to be stored. What nothing was added to since it was read from a store is the same `Stored` again. */
export function storedFrom({ filed, frontier }: CampaignState): StoredState {
  return {
    subjects: byName(filed).flatMap(([subject, found]) => {
      const stored = storedOf(found);
      return stored ? [[subject, stored] as const] : [];
    }),
    frontier: byName(frontier).map(
      ([device, { number, hash, beyond }]) =>
        [device, number, hash, [...beyond].sort(([a], [b]) => a - b)] as const,
    ),
  };
}

const byName = <K extends string, V>(map: ReadonlyMap<K, V>): [K, V][] =>
  [...map].sort(([a], [b]) => (a < b ? -1 : 1));

function storedOf(found: readonly Filed[] | Stored): Stored | null {
  const since = isStored(found) ? found.since : found;
  const last = since.at(-1);
  if (last === undefined) return isStored(found) ? found : null;
  const text = (): string =>
    isStored(found) ? `${found.text().slice(0, -1)},${filedText(since).slice(1)}` : filedText(since);
  return { text, last, since: [] };
}

/** The state that was stored; refused where it holds what is understood only now and must be filed anew. */
export function stateFrom({ subjects, frontier }: StoredState): Outcome<CampaignState> {
  const learned = subjects.find(([subject]) => isUnderstoodNow(subject));
  if (learned !== undefined) return snapshotUnfit(`${learned[0].slice("strange:".length)} is understood now`);
  const reached: Frontier = new Map(
    frontier.map(([device, number, hash, beyond]) => [device, { number, hash, beyond: new Map(beyond) }]),
  );
  return { ok: true, value: { filed: new Map(subjects), frontier: reached } };
}

function isUnderstoodNow(subject: Subject): boolean {
  const [, kind = "", version = ""] = /^strange:(\S+) (\d+)$/.exec(subject) ?? [];
  return kindOf(kind, Number(version)) !== null;
}

export const snapshotUnfit = (expected: string): Outcome<never> =>
  refused({
    code: "snapshot-unfit",
    severity: "note",
    expected,
    remedy: "Nothing is lost: the state is made again from the log.",
  });
