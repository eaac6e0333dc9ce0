import { z } from "zod";
import { code, day, freeText, hash, label, minute, stretch } from "../_internals/fields.ts";
import { campaign, first } from "../_internals/kind.ts";

const place = z.strictObject({
  name: label(200),
  climate: z.enum(["hot_humid", "warm_wet_season", "hot_dry", "temperate"]),
  freezer: z.boolean(),
  fineFilterVacuum: z.boolean(),
});
const limit = z.strictObject({ value: z.number().min(0).max(1440), source: label(500) });
const limits = z.strictObject({
  exposedMinutesADay: limit,
  exposedDaysAWeek: limit,
  exposedDaysInARow: limit,
  maskMinutes: limit,
  maskBreakMinutes: limit,
});
const station = z.strictObject({
  id: code,
  kind: z.enum(["mould bench", "clean bench", "cover stand", "camera", "boxing table"]),
  places: z.number().int().min(1).max(100),
  minutesADay: z.number().min(1).max(1440),
});
const stations = z.array(station).max(200).readonly();
const settings = z.strictObject({
  name: label(200),
  start: day,
  end: day,
  wardLitres: z.number().min(0).max(1_000_000),
});

/** The campaign as a whole: its place, limits, stations, days, and the plans it works by. */
export const houseKinds = {
  campaignFounded: first(settings.extend({ place, limits, stations }), {
    about: campaign,
    matters: () => ["settings", "place", "limits", "stations"],
  }),
  settingsChanged: first(settings, { about: campaign, matters: () => ["settings"] }),
  placeChanged: first(z.strictObject({ place }), { about: campaign, matters: () => ["place"] }),
  limitsChanged: first(z.strictObject({ limits }), { about: campaign, matters: () => ["limits"] }),
  stationsChanged: first(z.strictObject({ stations }), { about: campaign, matters: () => ["stations"] }),
  /** Days of the house or of a station that differ from the ordinary; a person's have kinds of their own, without a note. */
  calendarChanged: first(
    z
      .strictObject({
        ...stretch,
        /** A station's id, or `everyone`. */
        who: code,
        what: z.enum(["away", "clean work", "closed", "open", "hours"]),
        hours: z.number().min(0).max(24).exactOptional(),
        note: freeText.exactOptional(),
      })
      .refine(({ what, note }) => what !== "clean work" || note === undefined, {
        path: ["note"],
        error: "none: of clean work the days are all that is kept",
      }),
    { about: campaign, said: ({ note }) => [note] },
  ),
  /** The freezer stood without power. */
  powerCut: first(
    z.strictObject({ day, minute: minute.exactOptional(), hours: z.number().min(0).max(10_000) }),
    {
      about: campaign,
    },
  ),
  planAccepted: first(
    z.strictObject({
      /** Hash of the plan as it was written out. */
      plan: hash,
      from: day,
      finish: day.exactOptional(),
      boxed: z.number().int().min(0),
      left: z.number().int().min(0),
    }),
    { about: campaign, matters: () => ["plan"] },
  ),
} as const;
