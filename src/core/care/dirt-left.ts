import type { Act } from "../items/campaign.ts";
import type { Step } from "./care.ts";
import type { ItemCare } from "./item-care.ts";
import type { Norms } from "./norms.ts";
import { routeOf } from "./route.ts";

/** What an act on an item leaves on its station, done already or not; null: the item has no way now, and nobody can say. */
export function dirtLeft(norms: Norms, care: ItemCare, act: Act): Step["dirt"] | null {
  const { destiny, steps } = routeOf(norms, { ...care, done: new Set() });
  return destiny === "route" ? (steps.find((step) => step.act === act)?.dirt ?? 0) : null;
}
