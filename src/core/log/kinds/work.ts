import { z } from "zod";
import { act, code, day, hash, minute, minutes, part, word, yesNo } from "../_internals/fields.ts";
import { first, item, type Subject } from "../_internals/kind.ts";

const person = (p: { readonly person: string }): Subject[] => [`person:${p.person}`];
const acts = z.array(act).min(1).max(8).readonly();
/** One person's work on one item. */
const work = { item: code, day, person: code, minutes, exposed: z.boolean() } as const;

/** Work: by whom, how long, near mould or not; and what came of it. */
export const workKinds = {
  sessionStarted: first(z.strictObject({ person: code, day, minute, acts, exposed: z.boolean() }), {
    about: person,
  }),
  /** One spell of a person: minutes near mould and minutes in the mask. */
  sessionWorked: first(
    z.strictObject({
      person: code,
      day,
      minute: minute.exactOptional(),
      acts,
      minutes,
      exposedMinutes: minutes,
      maskMinutes: minutes.exactOptional(),
    }),
    { about: person },
  ),
  /** Covers, wrapping, boxing and release have kinds of their own, which say more. */
  actDone: first(
    z.strictObject({
      ...work,
      part,
      act: z.enum(["survey", "admit", "clean", "image"]),
      station: code.exactOptional(),
    }),
    { about: item },
  ),
  /** Any act of the time before the log began, copied from the sessions table. */
  actCopied: first(z.strictObject({ ...work, act }), { about: item }),
  coversPictured: first(z.strictObject({ ...work, station: code.exactOptional() }), { about: item }),
  itemWrapped: first(z.strictObject({ ...work, wrapper: word }), { about: item }),
  itemBoxed: first(z.strictObject({ ...work, box: code, shelf: code.exactOptional() }), { about: item }),
  /** A look at a boxed item after some time on its shelf. */
  itemLookedBack: first(z.strictObject({ item: code, day, person: code, sound: yesNo }), { about: item }),
  /** SHA-256 of the picture's file, and which shot of the list it is. */
  pictureTaken: first(z.strictObject({ item: code, part, day, shot: code, picture: hash }), { about: item }),
  stationWiped: first(
    z.strictObject({ station: code, day, minute: minute.exactOptional(), person: code, minutes }),
    {
      about: (p) => [`station:${p.station}`],
    },
  ),
} as const;
