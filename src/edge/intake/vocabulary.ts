import { z } from "zod";
import { readPublished } from "../published.ts";

const names = z.array(z.string());

/** The words of `data/vocabulary.json` that tables are written with. A fault in it is a fault of ours, so it throws. */
export const vocabulary = z
  .object({
    formats: z.record(z.string(), z.string()),
    supports: names,
    media: names,
    covers: names,
    photoProcesses: names,
    has: names,
    tests: z.record(z.string(), z.object({ question: z.string(), answers: z.string() })),
  })
  .parse(readPublished("vocabulary.json"));

const norms = z
  .object({
    consumables: z.array(z.object({ id: z.string() })),
    people: z.array(z.object({ id: z.string(), value: z.unknown(), source: z.string() })),
  })
  .parse(readPublished("norms.json"));

/** Consumables of `data/norms.json` that a store may serve, `k-…`. */
export const consumables: readonly string[] = norms.consumables.map(({ id }) => id);

/** One figure about people of `data/norms.json` with its source. */
export function peopleNorm(id: string): { readonly value: unknown; readonly source: string } {
  const found = norms.people.find((each) => each.id === id);
  if (!found) throw new Error(`data/norms.json has no entry ${id} under people.`);
  return found;
}
