import type { CampaignProgramme } from "../campaign-programme.ts";
import type { Period } from "../periods.ts";
import type { PlanProblem } from "../problem.ts";
import { noPrices, type Prices, workedDays } from "./day-model.ts";

/** Prices of the relaxed programme's periods as prices of days, drawn straight from the middle of a period to the middle of the next. */
export function startPrices(
  problem: PlanProblem,
  periods: readonly Period[],
  parts: CampaignProgramme,
  duals: Float64Array,
): Prices {
  const { days } = workedDays(problem);
  const prices = noPrices(problem, days.length);
  const knots = new Map<Float64Array, Float64Array>();
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
  const middles = periods.map(({ from, to }) => (from + Math.min(to, from + 4)) / 2);
  for (const [series, values] of knots) {
    if (prices.stores.includes(series)) spread(periods, days, fallOf(values), series, 1);
    else if (series === prices.ward) spread(periods, days, values, series, 7);
    else
      days.forEach((d, i) => {
        series[i] = between(middles, values, d);
      });
  }
  return prices;
}

/** A stock row's price is what a unit is worth from then on; what an evening adds is its fall to the next period. */
const fallOf = (values: Float64Array): Float64Array =>
  values.map((value, t) => Math.max(0, value - (values[t + 1] ?? 0)));

/** Shares a period's price among its last worked days, at most so many. */
function spread(
  periods: readonly Period[],
  days: Int32Array,
  values: Float64Array,
  series: Float64Array,
  most: number,
): void {
  periods.forEach(({ from, to }, t) => {
    const inside = [...days.keys()].filter((i) => from <= (days[i] as number) && (days[i] as number) <= to);
    const last = inside.slice(-most);
    for (const i of last) series[i] = (values[t] as number) / last.length;
  });
}

function between(middles: readonly number[], values: Float64Array, d: number): number {
  const t = middles.findIndex((middle) => middle >= d);
  if (t < 0) return values[values.length - 1] ?? 0;
  if (t === 0) return values[0] ?? 0;
  const [low, high] = [middles[t - 1] as number, middles[t] as number];
  const share = high > low ? (d - low) / (high - low) : 1;
  return (1 - share) * (values[t - 1] ?? 0) + share * (values[t] ?? 0);
}
