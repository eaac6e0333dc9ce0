import type { Limit } from "../items/campaign.ts";
import type { Band } from "./care.ts";

/** Working ranges of `data/norms.json` by id, and the people's limits that planning overhead comes from. */
export interface Norms {
  readonly band: (id: string) => Band;
  /** One of the people's limits that is a single figure, e.g. `p-block`. */
  readonly limit: (id: string) => Limit;
  readonly source: (id: string) => string;
  readonly unit: (id: string) => string;
  readonly what: (id: string) => string;
}

/** The norms ready to ask; an unknown id is a fault of ours and throws. */
export function loadNorms(tables: unknown): Norms {
  const entries = new Map<string, Record<string, unknown>>();
  const groups = tables as Record<string, Record<string, unknown>[]>;
  for (const group of ["times", "waits", "people", "consumables"])
    for (const entry of groups[group] ?? []) entries.set(String(entry.id), entry);
  const entry = (id: string): Record<string, unknown> => {
    const found = entries.get(id);
    if (!found) throw new Error(`No norm "${id}" in data/norms.json.`);
    return found;
  };
  return {
    band: (id) => {
      const { low, typical, high } = entry(id);
      return { low: Number(low), typical: Number(typical), high: Number(high ?? typical) };
    },
    limit: (id) => ({ value: Number(entry(id).value), source: String(entry(id).source) }),
    source: (id) => String(entry(id).source),
    unit: (id) => String(entry(id).unit),
    what: (id) => String(entry(id).what ?? entry(id).step),
  };
}

export const times = (band: Band, factor: number): Band => ({
  low: band.low * factor,
  typical: band.typical * factor,
  high: band.high * factor,
});
export const plus = (...bands: readonly Band[]): Band =>
  bands.reduce(
    (sum, each) => ({
      low: sum.low + each.low,
      typical: sum.typical + each.typical,
      high: sum.high + each.high,
    }),
    {
      low: 0,
      typical: 0,
      high: 0,
    },
  );
