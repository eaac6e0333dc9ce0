import { deflateRawSync, inflateRawSync } from "node:zlib";
import type { CampaignState, Stored, Subject } from "../../core/log/state.ts";
import { type StoredState, snapshotUnfit, stateFrom, storedFrom } from "../../core/log/stored-state.ts";
import type { Outcome } from "../../core/outcome/problem.ts";

const FORM = "leafward packed state 1\n";
/** The quickest; a stronger one gains a tenth. */
const LEVEL = 1;

interface Head extends Pick<StoredState, "frontier"> {
  /** Place of its last event, and how many bytes its packed events have: they lie one after the other in this order. */
  readonly subjects: readonly (readonly [
    Subject,
    wall: number,
    counter: number,
    id: string,
    bytes: number,
  ])[];
}

const pieces = new WeakMap<Stored, Uint8Array>();

/** A state in few bytes, each subject packed by itself, so that opening unpacks nothing and saving packs only what is new. */
export function packedState(state: CampaignState): Uint8Array {
  const { subjects, frontier } = storedFrom(state);
  const packed = subjects.map(
    ([, stored]) => pieces.get(stored) ?? deflateRawSync(stored.text(), { level: LEVEL }),
  );
  const head: Head = {
    frontier,
    subjects: subjects.map(([subject, { last }], at) => [
      subject,
      last.clock.wall,
      last.clock.counter,
      last.id,
      packed[at]?.length ?? 0,
    ]),
  };
  return Buffer.concat([Buffer.from(`${FORM}${JSON.stringify(head)}\n`), ...packed]);
}

/** The state that was packed. Its bytes are those that were saved: the keep holds them against their sum. */
export function unpackedState(given: Uint8Array): Outcome<CampaignState> {
  const bytes = Buffer.from(given.buffer, given.byteOffset, given.length);
  const start = FORM.length;
  if (bytes.toString("utf8", 0, start) !== FORM) return snapshotUnfit("it is of another version");
  const end = bytes.indexOf("\n", start);
  const { frontier, subjects } = JSON.parse(bytes.toString("utf8", start, end)) as Head; // its form tells its shape
  let at = end + 1;
  const stored = subjects.map(([subject, wall, counter, id, length]) => {
    const piece = bytes.subarray(at, at + length);
    at += length;
    return [subject, storedIn(piece, { clock: { wall, counter }, id })] as const;
  });
  return stateFrom({ frontier, subjects: stored });
}

function storedIn(piece: Uint8Array, last: Stored["last"]): Stored {
  const stored: Stored = { text: () => inflateRawSync(piece).toString(), last, since: [] };
  pieces.set(stored, piece);
  return stored;
}
