import type { Subject } from "./_internals/kind.ts";
import type { LogEvent } from "./event.ts";
import { kindOf, type Payload } from "./kinds.ts";

type Said = Pick<LogEvent, "kind" | "version" | "payload">;

/** Where an event belongs; a kind or version this Leafward does not know goes to the strange ones. */
export const subjectsOf = ({ kind, version, payload }: Said): readonly Subject[] =>
  kindOf(kind, version)?.about(payload) ?? [`strange:${kind} ${version}`];

/** What to write so that an event no longer counts. */
export const correctionOf = (event: Said & { readonly id: string }): Payload<"eventCorrected"> => ({
  event: event.id,
  about: [...subjectsOf(event)],
});
