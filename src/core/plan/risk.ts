import type { Guide } from "./guide.ts";
import type { Finish, Risk } from "./plan.ts";
import type { PlanProblem } from "./problem.ts";
import { driversOf } from "./risk/drivers.ts";
import { EVERY_LUCK, fortunesOf } from "./risk/fortunes.ts";
import { ItemDraws, watchOf } from "./risk/item-chances.ts";
import { finishFrom, simulate } from "./risk/simulate.ts";
import type { Walk } from "./walk.ts";

/** Simulated campaigns: so many item-walks in all, and never fewer than this. */
const ITEM_WALKS = 300_000;
const FEWEST_DRAWS = 50;
/** The same for each driver. */
const DRIVER_ITEM_WALKS = 40_000;
const FEWEST_DRIVER_DRAWS = 20;

const drawsFor = (items: number, itemWalks: number, fewest: number, most: number): number =>
  Math.min(most, Math.max(fewest, Math.round(itemWalks / Math.max(1, items))));

/** Simulated campaigns, each walked day by day with its own luck: when the last item is boxed, and how many are by the end. */
export const finishOf = (problem: PlanProblem, guide: Guide, draws: number, seed: number): Finish =>
  finishFrom(problem, simulate(problem, guide, fortunesOf(problem, seed), EVERY_LUCK, draws));

/**
 * The finish, what makes it uncertain, and every item's chances, from the plan walked as a policy: the people go on taking the work it
 * wants soonest, whatever luck brings.
 * @param most campaigns simulated; a large collection has fewer, as the answer says
 */
export function riskOf(
  problem: PlanProblem,
  guide: Guide,
  planned: Walk,
  most: number,
  seed: number,
): { readonly finish: Finish; readonly risk: Risk } {
  const items = problem.jobs.length;
  const draws = drawsFor(items, ITEM_WALKS, FEWEST_DRAWS, most);
  const driverDraws = drawsFor(items, DRIVER_ITEM_WALKS, FEWEST_DRIVER_DRAWS, draws);
  const fortunes = fortunesOf(problem, seed);
  const itemDraws = new ItemDraws(problem, draws);
  const endings = simulate(problem, guide, fortunes, EVERY_LUCK, draws, (outcome, draw) =>
    itemDraws.note(outcome, draw),
  );
  const chances = itemDraws.chances();
  const left = new Set(
    problem.jobs.filter((job) => (planned.ends.get(job)?.at(-1) ?? -1) < 0).map((job) => job.item.id),
  );
  return {
    finish: finishFrom(problem, endings),
    risk: {
      drivers: driversOf(problem, guide, fortunes, driverDraws),
      driverDraws,
      items: chances,
      watch: watchOf(chances, (item) => left.has(item)),
    },
  };
}
