import type { Prices } from "../bound/day-model.ts";
import type { PlanProblem } from "../problem.ts";
import type { Trial } from "./best-manner.ts";

/** Shares of what is in the store that are kept back at once. From trials. */
const SHARES = [0.02, 0.05, 0.15];
/** Share of the changes that give everything out again. */
const GIVEN_OUT = 0.1;

/** Stores that bind: those whose units have a price. */
export const bindingStores = (prices: Prices): number[] =>
  [...prices.stores.keys()].filter((s) => prices.stores[s]?.some((price) => price > 1e-6));

/**
 * The trial's problem with some of a store kept back to a later day: whoever comes first takes the last box, though it is worth more to who
 * comes later. A plan of the stricter problem is a plan of the problem as it is.
 */
export function keepSomeBack(
  problem: PlanProblem,
  binding: readonly number[],
  { problem: at }: Trial,
  draw: () => number,
): PlanProblem {
  const chosen = binding[Math.floor(draw() * binding.length)] ?? -1;
  const store = at.stores[chosen];
  if (!store) return at;
  const until = 1 + Math.floor(draw() * (Math.min(store.reorderFrom, problem.days.length) - 1));
  const quantity = store.onHand * (SHARES[Math.floor(draw() * SHARES.length)] as number);
  const less = {
    ...store,
    onHand: store.onHand - quantity,
    arrivals: store.arrivals.map((each, d) => (d === until ? each + quantity : each)),
  };
  const changed = draw() < GIVEN_OUT ? problem.stores[chosen] : less;
  return { ...at, stores: at.stores.map((each, s) => (s === chosen && changed ? changed : each)) };
}
