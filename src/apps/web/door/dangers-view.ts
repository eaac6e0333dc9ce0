import type { ItemCare } from "../../../core/care/item-care.ts";
import { HAZARDS } from "../../../core/say/papers/hazards.ts";
import { hazardsOf } from "../../../edge/papers/hazard-label-view.ts";

/** What of an item can hurt somebody. */
export interface Danger {
  readonly holds: string;
  /** Suspected, or an unsure answer says so; handled as if it were certain. */
  readonly isDoubtful: boolean;
  /** ISO 7010 and GHS codes. */
  readonly signs: readonly string[];
}

/** Dangers of the item and all its parts, as its hazard label names them, worst first. */
export function dangersOf(care: ItemCare): Danger[] {
  const { found, doubtful } = hazardsOf(care);
  return Object.entries(HAZARDS).flatMap(([name, { holds, signs }]) =>
    found.includes(name) || doubtful.includes(name)
      ? [{ holds, signs, isDoubtful: doubtful.includes(name) }]
      : [],
  );
}
