import { z } from "zod";
import { ACTS } from "../../core/items/campaign.ts";
import type { AcceptedPlan } from "../../core/plan/replan/accepted.ts";
import { type Day, dayFrom } from "../../core/units/day.ts";

const day = z
  .string()
  .refine((written) => dayFrom(written) !== null)
  .transform((written) => written as Day); // dayFrom has just said so
const act = z.enum(ACTS);

/** The parts of a plan.json that say what was promised; the rest is left unread. */
const shape = z.object({
  campaign: z.string(),
  planFrom: day,
  assignments: z.array(
    z.object({
      day,
      person: z.string(),
      station: z.string(),
      item: z.string(),
      act,
      minutes: z.number().min(0),
      exposed: z.boolean(),
      dirt: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]),
      order: z.number(),
      wipeAfter: z.boolean(),
    }),
  ),
  itemDays: z.array(z.object({ item: z.string(), days: z.partialRecord(act, day) })),
  left: z.array(z.object({ item: z.string() })),
  people: z.array(z.object({ code: z.string() })),
});

/** The plan written in a plan.json; null when it is none. */
export function acceptedPlanFrom(text: string): (AcceptedPlan & { readonly campaign: string }) | null {
  try {
    const read = shape.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null; // no JSON at all
  }
}
