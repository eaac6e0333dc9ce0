/** How far an entry is trusted. */
export type Trust = "seen" | "seen in part" | "from memory" | "common practice";

/** What to know of a store when it is carried to the place. */
export interface Carriage {
  readonly text: string;
  readonly source: string;
  readonly status: Trust;
}

/** What may stand in for a store that runs short, and what never. */
export interface Substitute {
  readonly wanted: string;
  readonly instead: readonly string[];
  readonly never: readonly string[];
  readonly caution?: string;
  readonly source: string;
  readonly status: Trust;
}

/** What `data/goods.json` and `data/substitutes.json` say of a consumable. */
export interface Goods {
  /** Days a fresh pack keeps, by the shorter figure; null: to the end of any campaign. */
  readonly keepsDays: (use: string) => number | null;
  readonly carriage: (use: string) => readonly Carriage[];
  readonly substitute: (use: string) => Substitute | null;
}

/** The tables ready to ask; their shape is held by a test. */
export function loadGoods(goods: unknown, substitutes: unknown): Goods {
  const { keeps, carriage } = goods as {
    readonly keeps: readonly { readonly uses: readonly string[]; readonly lowDays: number }[];
    readonly carriage: readonly (Carriage & { readonly uses: readonly string[] })[];
  };
  const stands = (
    substitutes as { readonly substitutes: readonly (Substitute & { uses: readonly string[] })[] }
  ).substitutes;
  return {
    keepsDays: (use) => keeps.find(({ uses }) => uses.includes(use))?.lowDays ?? null,
    carriage: (use) => carriage.filter(({ uses }) => uses.includes(use)),
    substitute: (use) => stands.find(({ uses }) => uses.includes(use)) ?? null,
  };
}

/** Nothing known: everything keeps, nothing stands in. */
export const NO_GOODS: Goods = { keepsDays: () => null, carriage: () => [], substitute: () => null };
