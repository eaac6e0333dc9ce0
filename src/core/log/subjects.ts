import type { Subject } from "./_internals/kind.ts";
import type { LogEvent } from "./event.ts";
import { kindOf, type Payload } from "./kinds.ts";

type Said = Pick<LogEvent, "kind" | "version" | "payload">;

/** Where an event belongs; a kind, version or payload that is not understood goes to the strange ones. */
export function subjectsOf({ kind, version, payload }: Said): readonly Subject[] {
  const known = kindOf(kind, version);
  if (known === null) return [`strange:${kind} ${version}`];
  const parsed = known.payload.safeParse(payload);
  return parsed.success ? known.about(parsed.data) : [`strange:${kind} ${version} unfit`];
}

/** What to write so that an event no longer counts. */
export const correctionOf = (event: Said & { readonly id: string }): Payload<"eventCorrected"> => ({
  event: event.id,
  about: [...subjectsOf(event)],
});
