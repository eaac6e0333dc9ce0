import type { PlanProblem } from "../problem.ts";
import { type Prices, workedDays } from "./day-model.ts";

/** Dearer than any item can pay, per minute. */
const TOO_DEAR = 1e6;

/** The prices with every place too dear on days it is shut: nothing is there to be sold, so it costs the bound nothing, and nobody buys there. */
export function dearWhereShut(problem: PlanProblem, prices: Prices): Prices {
  const { days } = workedDays(problem);
  const places = new Map(
    [...prices.places].map(([station, series]) => {
      const open = problem.stations.get(station);
      return [station, series.map((price, i) => ((open?.[days[i] as number] ?? 0) > 0 ? price : TOO_DEAR))];
    }),
  );
  return { ...prices, places };
}
