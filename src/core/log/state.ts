import type { Shelf, Subject } from "./_internals/kind.ts";
import type { Filed } from "./kinds.ts";

export type { Shelf, Subject } from "./_internals/kind.ts";

/** How far one device's events are here without a gap. */
export interface Reached {
  readonly number: number;
  /** Hash of the event with that number; two logs that differ in it have parted ways. */
  readonly hash: string;
}

/** A device's events beyond its gap: number → hash. */
export type Beyond = ReadonlyMap<number, string>;

/** Device → how far its events are here. What another log holds beyond it is what is missing here. */
export type Frontier = ReadonlyMap<string, Reached & { readonly beyond: Beyond }>;

/** Events of one subject as a snapshot keeps them, not read yet, and those that came since. */
export interface Stored {
  readonly text: () => string;
  /** Place of the last event of the text. */
  readonly last: Pick<Filed, "clock" | "id">;
  readonly since: readonly Filed[];
}

/** The log filed under what it speaks of. Never changed: a fold gives a new one. */
export interface CampaignState {
  /** Subject → its events in the order of the log. */
  readonly filed: ReadonlyMap<Subject, readonly Filed[] | Stored>;
  readonly frontier: Frontier;
}

export const EMPTY_STATE: CampaignState = { filed: new Map(), frontier: new Map() };

/** Everything filed under one subject, in the order of the log. */
export function eventsAbout({ filed }: CampaignState, subject: Subject): readonly Filed[] {
  const found = filed.get(subject) ?? [];
  if (!isStored(found)) return found;
  const events = readStored(found);
  (filed as Map<Subject, readonly Filed[] | Stored>).set(subject, events); // the same events, read once
  return events;
}

export const isStored = (found: readonly Filed[] | Stored): found is Stored => "text" in found;
export const readStored = ({ text, since }: Stored): Filed[] => [...filedFrom(text()), ...since];

/** The names filed on one shelf, sorted. */
export function namesOn({ filed }: CampaignState, shelf: Shelf): string[] {
  const names: string[] = [];
  const start = `${shelf}:`;
  for (const subject of filed.keys()) if (subject.startsWith(start)) names.push(subject.slice(start.length));
  return names.sort();
}

type Row = readonly [
  id: string,
  device: string,
  number: number,
  wall: number,
  counter: number,
  role: string,
  person: string,
  kind: string,
  version: number,
  payload: unknown,
  seen?: readonly string[],
];

/** Filed events as text. What a newer version wrote into `who` or `clock` stays in the log alone. */
export const filedText = (events: readonly Filed[]): string =>
  JSON.stringify(
    events.map(({ id, device, number, clock, who, kind, version, payload, seen }): Row => {
      const row: Row = [
        id,
        device,
        number,
        clock.wall,
        clock.counter,
        who.role,
        who.person ?? "",
        kind,
        version,
        payload,
      ];
      return seen.length === 0 ? row : ([...row.slice(0, 10), seen] as unknown as Row); // the ten and the one
    }),
  );

const filedFrom = (text: string): Filed[] =>
  (JSON.parse(text) as Row[]).map(
    ([id, device, number, wall, counter, role, person, kind, version, payload, seen = []]) =>
      ({
        id,
        device,
        number,
        clock: { wall, counter },
        who: person === "" ? { role } : { role, person },
        kind,
        version,
        payload,
        seen,
      }) as Filed, // written by filedText
  );
