import type { z } from "zod";
import type { KindOf } from "./_internals/kind.ts";
import type { LogEvent } from "./event.ts";
import { collectionKinds } from "./kinds/collection.ts";
import { correctionKinds } from "./kinds/correction.ts";
import { houseKinds } from "./kinds/house.ts";
import { peopleKinds } from "./kinds/people.ts";
import { storeKinds } from "./kinds/stores.ts";
import { wardKinds } from "./kinds/ward.ts";
import { workKinds } from "./kinds/work.ts";

/** Everything that can be written down, each kind in its newest version. */
export const KINDS = {
  ...houseKinds,
  ...peopleKinds,
  ...collectionKinds,
  ...wardKinds,
  ...workKinds,
  ...storeKinds,
  ...correctionKinds,
} as const;

export type Kind = keyof typeof KINDS;
export type Payload<K extends Kind> = z.infer<(typeof KINDS)[K]["payload"]>;

/** What the campaign's state keeps of an event: all but its hashes. */
export type Filed<K extends Kind = Kind> = {
  readonly [Each in K]: Pick<LogEvent, "id" | "device" | "number" | "clock" | "who" | "version" | "seen"> & {
    readonly kind: Each;
    readonly payload: Payload<Each>;
  };
}[K];

/** The definition of a kind, for any payload it accepts; null: this Leafward does not know it, or not in this version. */
export function kindOf(kind: string, version: number): KindOf<z.ZodType> | null {
  const known = Object.hasOwn(KINDS, kind) ? (KINDS[kind as Kind] as unknown as KindOf<z.ZodType>) : null; // just looked up
  return known?.version === version ? known : null;
}
