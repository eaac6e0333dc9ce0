import type { Filed, Kind } from "./kinds.ts";
import { kindOf } from "./kinds.ts";

/** What stands about one matter of a subject, and what it replaced. */
export interface Matter {
  /** In the order of the log; more than one where neither writer saw the other's. */
  readonly standing: readonly Filed[];
  readonly replaced: readonly Filed[];
}

export interface Standing {
  /** Events that count, in the order of the log: all but those corrected. */
  readonly counted: readonly Filed[];
  readonly matters: ReadonlyMap<string, Matter>;
}

const known = new WeakMap<readonly Filed[], Standing>();

/** What stands among the events of one subject. */
export function standingOf(events: readonly Filed[]): Standing {
  const found = known.get(events) ?? settle(events);
  known.set(events, found);
  return found;
}

function settle(events: readonly Filed[]): Standing {
  const corrected = correctedIn(events);
  const counted = events.filter(({ id, kind }) => kind !== "eventCorrected" && !corrected.has(id));
  const groups = new Map<string, Filed[]>();
  for (const event of counted)
    for (const matter of mattersOf(event)) {
      const group = groups.get(matter);
      if (group) group.push(event);
      else groups.set(matter, [event]);
    }
  const matters = new Map<string, Matter>();
  for (const [matter, group] of groups) matters.set(matter, split(group));
  return { counted, matters };
}

const mattersOf = ({ kind, version, payload }: Filed): readonly string[] =>
  kindOf(kind, version)?.matters?.(payload) ?? [];

/** An event is replaced by those about the same matter that saw it. Were they to name each other in a circle, all would stand. */
function split(group: readonly Filed[]): Matter {
  const seen = new Set(group.flatMap((event) => event.seen));
  const standing = group.filter(({ id }) => !seen.has(id));
  if (standing.length === 0) return { standing: group, replaced: [] };
  return { standing, replaced: group.filter(({ id }) => seen.has(id)) };
}

/** Ids that no longer count. A correction counts unless it is corrected itself. */
function correctedIn(events: readonly Filed[]): ReadonlySet<string> {
  const correctedBy = new Map<string, string[]>();
  for (const event of events)
    if (isOf(event, "eventCorrected")) {
      const { event: target } = event.payload;
      correctedBy.set(target, [...(correctedBy.get(target) ?? []), event.id]);
    }
  const counts = (id: string, above: readonly string[]): boolean =>
    !(correctedBy.get(id) ?? []).some((by) => !above.includes(by) && counts(by, [...above, id]));
  return new Set([...correctedBy.keys()].filter((id) => !counts(id, [])));
}

export const isOf = <K extends Kind>(
  event: Filed,
  ...kinds: readonly K[]
): event is Extract<Filed, { kind: K }> => (kinds as readonly string[]).includes(event.kind);
