import { z } from "zod";
import { code, day, role, stretch } from "../_internals/fields.ts";
import { first, type Subject } from "../_internals/kind.ts";

const person = (payload: { readonly person: string }): Subject[] => [`person:${payload.person}`];
const hours = z.number().min(0).max(24);
/** Letters, and what joins them in a name: no room for a remark in brackets or after a comma. */
const name = z.string().regex(/^[\p{L}\p{M}][\p{L}\p{M} .'’-]{0,59}$/u);

/** Who works, and when. Nothing here can hold why: codes, fixed words, days and hours. */
export const peopleKinds = {
  personListed: first(
    z.strictObject({
      person: code.max(20),
      name,
      role,
      skills: z
        .array(z.enum(["lead", "clean", "image", "box", "write"]))
        .max(5)
        .readonly(),
      mouldWork: z.boolean(),
      /** 0 Monday … 6 Sunday. */
      weekdays: z.array(z.number().int().min(0).max(6)).max(7).readonly(),
      hoursADay: hours,
      from: day.exactOptional(),
      until: day.exactOptional(),
    }),
    { about: person, matters: () => ["listing"] },
  ),
  personAway: first(z.strictObject({ person: code.max(20), ...stretch }), { about: person }),
  personHours: first(z.strictObject({ person: code.max(20), ...stretch, hours }), { about: person }),
  /** Clean work for these days, whatever the cause. */
  cleanWorkThisWeek: first(z.strictObject({ person: code.max(20), ...stretch }), { about: person }),
} as const;
