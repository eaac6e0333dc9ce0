import type { CampaignProgramme } from "../campaign-programme.ts";
import { type Period, periodAt } from "../periods.ts";
import type { PlanProblem } from "../problem.ts";
import { KINDS } from "../work.ts";
import { noPrices, type Prices, workedDays } from "./day-model.ts";
import { dearWhereShut } from "./shut-places.ts";

/** Prices of the relaxed programme's periods as prices of days: the same on every day of a period, stock and Ward at its end. */
export function startPrices(
  problem: PlanProblem,
  periods: readonly Period[],
  parts: CampaignProgramme,
  duals: Float64Array,
): Prices {
  const { days } = workedDays(problem);
  const prices = noPrices(problem, days.length);
  const knots = new Map<Float64Array, Float64Array>();
  const placeOf = new Map(
    KINDS.map(({ station }, k) => [prices.work[k], station && problem.stations.get(station)]),
  );
  for (const { row, period, what } of parts.sharedRows) {
    const series =
      what === "ward"
        ? prices.ward
        : "kind" in what
          ? prices.work[what.kind]
          : "station" in what
            ? prices.places.get(what.station)
            : prices.stores[what.store];
    if (!series) continue;
    const known = knots.get(series) ?? new Float64Array(periods.length);
    known[period] = Math.abs(duals[row] ?? 0);
    knots.set(series, known);
  }
  for (const [series, values] of knots) {
    const store = prices.stores.indexOf(series);
    if (store >= 0) spread(periods, days, fallOf(values), series, 1, problem.stores[store]?.reorderFrom);
    else if (series === prices.ward) spread(periods, days, values, series, 7);
    else {
      const open = placeOf.get(series);
      days.forEach((d, i) => {
        // Where the place is shut nobody can sell the work, so it must not be worth anything.
        if (!open || (open[d] ?? 0) > 0) series[i] = values[periodAt(periods, d)] ?? 0;
      });
    }
  }
  return dearWhereShut(problem, prices);
}

/** A stock row's price is what a unit is worth from then on; what an evening adds is its fall to the next period. */
const fallOf = (values: Float64Array): Float64Array =>
  values.map((value, t) => Math.max(0, value - (values[t + 1] ?? 0)));

/** Shares a period's price among its last worked days, at most so many, all of them before `end`. */
function spread(
  periods: readonly Period[],
  days: Int32Array,
  values: Float64Array,
  series: Float64Array,
  most: number,
  end = Number.POSITIVE_INFINITY,
): void {
  periods.forEach(({ from, to }, t) => {
    const inside = [...days.keys()].filter((i) => {
      const d = days[i] as number;
      return from <= d && d <= to && d < end;
    });
    const last = inside.slice(-most);
    for (const i of last) series[i] = (values[t] as number) / last.length;
  });
}
