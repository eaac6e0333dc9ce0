import type { Json } from "./canonical-json.ts";
import { KINDS, type Kind, type Payload } from "./kinds.ts";
import { standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout } from "./state.ts";
import { subjectsOf } from "./subjects.ts";

/**
 * The ids a new event replaces when its writer had before their eyes all that stands about its matter here. Leave out what they had not:
 * a second look made without knowing the first is an answer of its own.
 */
export function seenOf<K extends Kind>(state: CampaignState, kind: K, payload: Payload<K>): string[] {
  const known = KINDS[kind] as unknown as {
    version: number;
    matters?: (payload: Payload<K>) => readonly string[];
  }; // one kind of many
  const [subject] = subjectsOf({ kind, version: known.version, payload: payload as { [key: string]: Json } });
  if (subject === undefined || known.matters === undefined) return [];
  const { matters } = standingOf(eventsAbout(state, subject));
  const ids = known
    .matters(payload)
    .flatMap((matter) => matters.get(matter)?.standing.map(({ id }) => id) ?? []);
  return [...new Set(ids)].sort();
}
