import { z } from "zod";
import { first, type Subject } from "../_internals/kind.ts";
import { ULID } from "../ulid.ts";

/** On no other shelf: what this Leafward does not understand it cannot find wrong, and what is filed as strange moves once it is understood. */
const ON_A_SHELF = /^(?:campaign|item|bag|person|station|store|reader|question):/;
const subject = z.custom<Subject>(
  (value) => typeof value === "string" && ON_A_SHELF.test(value) && value.length < 200,
  "what an event is filed under",
);

export const correctionKinds = {
  /** The event named no longer counts; what is right is written as a new one. A correction can be corrected in turn. */
  eventCorrected: first(
    z.strictObject({
      event: z.string().regex(ULID),
      /** What that event is filed under, so that the correction is found beside it. */
      about: z.array(subject).min(1).max(201).readonly(),
    }),
    { about: (p) => p.about },
  ),
} as const;
