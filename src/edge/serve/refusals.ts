import type { DatabaseSyncInstance } from "@photostructure/sqlite";

const MINUTE_MS = 60_000;
const MOST_ROWS = 10_000;

/** An act that was refused: who, what, when. Nothing of its content. */
export interface Refused {
  /** The device, or `nobody let in`. */
  readonly who: string;
  /** The route, and the kind of event. */
  readonly what: string;
  /** Code of the problem. */
  readonly code: string;
}

/** Refusals of one sort within one minute are one row. */
export interface RefusedRow extends Refused {
  /** Minutes since 1970. */
  readonly minute: number;
  readonly times: number;
}

export interface Refusals {
  note(refused: Refused, now: number): void;
  /** The newest first. */
  newest(most: number): readonly RefusedRow[];
}

/** The list of refused acts; the oldest go when it is long. */
export function refusals(file: DatabaseSyncInstance): Refusals {
  const note = file.prepare(
    "insert into refusal values (?, ?, ?, ?, 1) on conflict do update set times = times + 1",
  );
  const trim = file.prepare(
    "delete from refusal where rowid <= (select rowid from refusal order by rowid desc limit 1 offset ?)",
  );
  const newest = file.prepare("select * from refusal order by rowid desc limit ?");
  return {
    note: ({ who, what, code }, now) => {
      note.run(who, what, code, Math.floor(now / MINUTE_MS));
      trim.run(MOST_ROWS);
    },
    newest: (most) => newest.all(most) as RefusedRow[], // the columns of the table
  };
}
