import { z } from "zod";
import { code, day, dryBulb, grams, minute, minutes, relHum, role } from "../_internals/fields.ts";
import { first, item, type Subject } from "../_internals/kind.ts";

/** A bag event says what lies in the bag, so that it can be read without those before it. */
const inBag = { bag: code, items: z.array(code).min(1).max(200).readonly(), day, minute } as const;
const bag = (p: { readonly bag: string; readonly items: readonly string[] }): Subject[] => [
  `bag:${p.bag}`,
  ...[...new Set(p.items)].map((each): Subject => `item:${each}`),
];
const beside = dryBulb.exactOptional();
const signature = z.strictObject({ person: code, role });

/** Bags, what their readers showed, and the way out of the Ward. */
export const wardKinds = {
  bagClosed: first(
    z.strictObject({ ...inBag, litres: z.number().min(0).max(100_000).exactOptional(), dryBulb: beside }),
    {
      about: bag,
    },
  ),
  bagOpened: first(z.strictObject({ ...inBag, dryBulb: beside }), { about: bag }),
  bagRead: first(z.strictObject({ ...inBag, relHum, dryBulb: beside }), { about: bag }),
  gelChanged: first(
    z.strictObject({ ...inBag, way: z.enum(["in", "out"]), grams: grams.exactOptional(), dryBulb: beside }),
    { about: bag },
  ),
  /** The item on a scale, bag, gel and box off. */
  bagWeighed: first(z.strictObject({ item: code, day, minute, grams, dryBulb: beside }), { about: item }),
  /** Earned by readings, signed by two. */
  itemReleased: first(
    z.strictObject({
      item: code,
      day,
      person: code,
      minutes,
      exposed: z.boolean(),
      signed: z
        .array(signature)
        .min(2)
        .max(4)
        .readonly()
        .refine((signed) => new Set(signed.map(({ person }) => person)).size > 1, "two different people"),
    }),
    { about: item },
  ),
} as const;
