import type { Problem } from "../outcome/problem.ts";
import { inOrder, type LogEvent } from "./event.ts";

/** Events that belong together, each once, in the order of the log. */
export interface Log {
  readonly events: readonly LogEvent[];
  /** Entries that share an id and differ: all are kept, none counts. By id, then hash. */
  readonly aside: readonly LogEvent[];
}

export const EMPTY_LOG: Log = { events: [], aside: [] };

/** A log of loose events, in any order and any number of times. */
export const logOf = (events: Iterable<LogEvent>): Log =>
  mergeLogs({ events: [...events], aside: [] }, EMPTY_LOG);

/** Everything either log holds. The order of merging makes no difference, nor does merging twice. */
export function mergeLogs(a: Log, b: Log): Log {
  const byId = new Map<string, LogEvent[]>();
  for (const list of [a.events, a.aside, b.events, b.aside])
    for (const event of list) {
      const known = byId.get(event.id);
      if (!known) byId.set(event.id, [event]);
      else if (!known.some(({ hash }) => hash === event.hash)) known.push(event);
    }
  const all = [...byId.values()];
  const events = all.flatMap((each) => (each.length === 1 ? each : [])).sort(inOrder);
  const aside = all.filter((each) => each.length > 1).flat();
  return { events, aside: aside.sort((x, y) => (x.id + x.hash < y.id + y.hash ? -1 : 1)) };
}

/** What is said of entries that share an id and differ: one problem for each id. */
export function damageIn({ aside }: Log): Problem[] {
  const devices = new Map(aside.map(({ id, device }) => [id, device]));
  return [...devices].map(([id, device]) => ({
    code: "event-twice",
    severity: "ask",
    got: id,
    expected: device,
    remedy:
      "Both were set aside and nothing was lost. Look on that device what was written, and write it again as a new entry.",
  }));
}
