import type { ItemCare } from "../../care/item-care.ts";
import type { Act } from "../../items/campaign.ts";

/* What an item carries, and what that makes of each act done with it. */

const GROWTH = ["mould_active", "mould_dormant", "mould_suspected"];

/** Conditions of body and parts; an unsure one counts, as the protective rules take it. */
export function conditionsOf(care: ItemCare): ReadonlySet<string> {
  const all = [care.whole, ...care.parts.map((part) => part.care)];
  return new Set(all.flatMap((each) => [...each.conditions, ...each.unsureConditions]));
}

export const hasGrowth = (conditions: ReadonlySet<string>): boolean =>
  GROWTH.some((each) => conditions.has(each));

/** Whether the act's minutes are mould minutes (P01: any touch of an item with growth that has not been cleaned off). */
export const isNearMould = (conditions: ReadonlySet<string>, act: Act, done: ReadonlySet<Act>): boolean =>
  hasGrowth(conditions) && act !== "survey" && !done.has("clean");

/** Whether the station must be wiped down after the act (S01): growth and flood dirt until cleaned, red rot until wrapped, green always. */
export function leavesDirt(conditions: ReadonlySet<string>, act: Act, done: ReadonlySet<Act>): boolean {
  if (isNearMould(conditions, act, done)) return true;
  if (conditions.has("red_rot") && (act === "covers" || act === "wrap") && !done.has("wrap")) return true;
  if (conditions.has("flood_dirt") && act === "clean") return true;
  return conditions.has("arsenic_suspected") && (act === "covers" || act === "clean" || act === "image");
}
