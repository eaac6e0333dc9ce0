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

/** An event is replaced by those about the same matter that saw it, itself never. Those that name each other in a circle all stand, and what
 *  they alone saw stands with them: a disagreement that people can settle. */
function split(group: readonly Filed[]): Matter {
  const byId = new Map(group.map((event) => [event.id, event]));
  const seen = new Set(group.flatMap((event) => event.seen.filter((id) => id !== event.id)));
  const replaced = new Set<string>();
  const heads = group.filter(({ id }) => !seen.has(id));
  for (const event of heads) // grows by those it reaches
    for (const id of event.seen) {
      const older = byId.get(id);
      if (older === undefined || id === event.id || replaced.has(id)) continue;
      replaced.add(id);
      heads.push(older);
    }
  return {
    standing: group.filter(({ id }) => !replaced.has(id)),
    replaced: group.filter(({ id }) => replaced.has(id)),
  };
}

/** Ids that no longer count. A correction counts unless it is corrected itself; corrections of each other in a circle reach nothing else. */
function correctedIn(events: readonly Filed[]): ReadonlySet<string> {
  const corrections = events.filter((event) => isOf(event, "eventCorrected"));
  const targets = new Map(corrections.map(({ id, payload }) => [id, payload.event]));
  const open = new Map<string, number>();
  for (const target of targets.values()) open.set(target, (open.get(target) ?? 0) + 1);
  const corrected = new Set<string>();
  const settled = [...targets.keys()].filter((id) => !open.has(id));
  for (const id of settled) {
    const target = targets.get(id);
    if (target === undefined) continue;
    if (!corrected.has(id)) corrected.add(target);
    const left = (open.get(target) ?? 0) - 1;
    open.set(target, left);
    if (left === 0) settled.push(target); // all that is said against it is known now
  }
  return corrected;
}

export const isOf = <K extends Kind>(
  event: Filed,
  ...kinds: readonly K[]
): event is Extract<Filed, { kind: K }> => (kinds as readonly string[]).includes(event.kind);
