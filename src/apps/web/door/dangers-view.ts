import type { ItemCare } from "../../../core/care/item-care.ts";
import { HAZARDS } from "../../../core/say/papers/hazards.ts";

/** What of an item can hurt somebody. */
export interface Danger {
  readonly holds: string;
  /** Only an unsure answer says so; handled as if it were certain. */
  readonly unsure: boolean;
  /** ISO 7010 and GHS codes. */
  readonly signs: readonly string[];
}

/** Dangers of the item and all its parts, worst first. */
export function dangersOf(care: ItemCare): Danger[] {
  const all = [care.whole, ...care.parts.map((part) => part.care)];
  const certain = new Set(all.flatMap(({ conditions }) => conditions));
  const doubted = new Set(all.flatMap(({ unsureConditions }) => unsureConditions));
  return Object.entries(HAZARDS).flatMap(([condition, { holds, signs }]) =>
    certain.has(condition) || doubted.has(condition)
      ? [{ holds, signs, unsure: !certain.has(condition) }]
      : [],
  );
}
