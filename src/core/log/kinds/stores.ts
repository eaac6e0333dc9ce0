import { z } from "zod";
import { code, day, dryBulb, freeText, label, relHum } from "../_internals/fields.ts";
import { first, type Subject } from "../_internals/kind.ts";

const store = (p: { readonly store: string }): Subject[] => [`store:${p.store}`];
const quantity = z.number().min(0).max(10_000_000);
/** A delivery has a short name of its own, so that its arrival finds it. */
const delivery = { store: code, delivery: code, day, quantity, note: freeText.exactOptional() } as const;
const sent = (p: { readonly delivery: string }): string[] => [`delivery ${p.delivery}`];
const said = ({ note }: { readonly note?: string }) => [note];

/** The store room, and what readers say of the air. */
export const storeKinds = {
  storeListed: first(
    z.strictObject({
      store: code,
      name: label(200),
      /** A consumable of `data/norms.json`: `k-mask`. */
      use: z.string().regex(/^[a-z][a-z0-9-]{0,59}$/),
      unit: label(40),
      pack: quantity,
      packs: z
        .array(
          z.strictObject({ size: quantity.positive(), price: z.number().min(0).max(1e9).exactOptional() }),
        )
        .max(20)
        .readonly()
        .exactOptional(),
      leadDays: z.number().min(0).max(1000),
      route: label(40),
      expires: day.exactOptional(),
      orderBy: day.exactOptional(),
    }),
    { about: store, matters: () => ["listing"] },
  ),
  stockCounted: first(z.strictObject({ store: code, day, quantity }), {
    about: store,
    matters: () => ["stock"],
  }),
  deliveryExpected: first(z.strictObject(delivery), { about: store, matters: sent, said }),
  deliveryArrived: first(z.strictObject(delivery), { about: store, matters: sent, said }),
  /** Readings of one reader, in the order of time. */
  readerRead: first(
    z.strictObject({
      reader: code,
      readings: z
        .array(
          z.strictObject({
            at: z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/),
            dryBulb: dryBulb.exactOptional(),
            relHum: relHum.exactOptional(),
          }),
        )
        .min(1)
        .max(5000)
        .readonly(),
    }),
    { about: (p) => [`reader:${p.reader}`] },
  ),
} as const;
