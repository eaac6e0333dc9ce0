import type { z } from "zod";

/** What an event is filed under: everything about one item, one person, one store … stands together. */
export type Subject = `${Shelf}:${string}`;
export type Shelf =
  | "campaign"
  | "item"
  | "bag"
  | "person"
  | "station"
  | "store"
  | "reader"
  | "question"
  /** Kinds and versions this Leafward does not know: kept, counted, passed on. */
  | "strange";

/** One kind of event in one version: what its payload must be, and where it belongs. */
export interface KindOf<S extends z.ZodType> {
  readonly version: number;
  readonly payload: S;
  readonly about: (payload: z.infer<S>) => readonly Subject[];
  /** What the event sets, within its subject: a later one on the same matter replaces those it saw. Absent: it adds and replaces nothing. */
  readonly matters?: (payload: z.infer<S>) => readonly string[];
  /** The texts of it that people write in their own words. */
  readonly said?: (payload: z.infer<S>) => readonly (string | undefined)[];
}

/** Version 1 of a kind. */
export const first = <S extends z.ZodType>(
  payload: S,
  rest: Omit<KindOf<S>, "version" | "payload">,
): KindOf<S> => ({ version: 1, payload, ...rest });

export const item = (payload: { readonly item: string }): Subject[] => [`item:${payload.item}`];
export const campaign = (): Subject[] => ["campaign:"];
