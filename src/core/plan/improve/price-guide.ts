import type { DayModel, Prices } from "../bound/day-model.ts";
import type { PriceSearch } from "../bound/price-search.ts";
import { type Guide, USUAL_MANNER } from "../guide.ts";
import type { Job } from "../problem.ts";
import { KINDS } from "../work.ts";

/** A guide from the search for prices: the mean day on which each item bought each task, and how often each person was exposed. */
export function guideFromPrices(model: DayModel, found: PriceSearch): Guide {
  const { problem, worked } = model;
  const last = problem.days.length;
  const exposedBy = found.exposed.map((share) => {
    const series = new Float64Array(last);
    let sum = 0;
    for (let d = 0, i = 0; d < last; d++) {
      if (worked.days[i] === d) sum += share[i++] as number;
      series[d] = sum;
    }
    return series;
  });
  return {
    wanted: wantedDays(model, found.meanDay),
    exposedBy,
    worth: worthAt(model, found.prices),
    manner: USUAL_MANNER,
  };
}

/** Numbers of worked days, whole or between two, as days of the plan. @param numbers [task]; past the last: not before the end */
export function wantedDays(
  { problem, worked, firstTask, alike }: DayModel,
  numbers: Float64Array,
): Map<Job, Float64Array> {
  const count = worked.days.length;
  const dayAt = (at: number): number => {
    const low = Math.min(count - 1, Math.floor(at));
    const from = worked.days[low] as number;
    const to = worked.days[Math.min(count - 1, low + 1)] as number;
    return at >= count ? problem.days.length + 1 : from + (at - low) * (to - from);
  };
  const wanted = new Map<Job, Float64Array>();
  alike.forEach((jobs, j) => {
    const days = numbers.slice(firstTask[j], firstTask[j + 1]).map(dayAt);
    for (const job of jobs) wanted.set(job, days);
  });
  return wanted;
}

/** [kind][day] → what a minute of a kind of work is worth at the prices, its place with it. */
export const worthAt = (model: DayModel, prices: Prices): Float64Array[] =>
  prices.work.map((series, k) => onDays(model, withPlace(prices, k, series)));

/** A minute of a kind of work and of the place it is done at. */
function withPlace({ places }: Prices, k: number, work: Float64Array): Float64Array {
  const station = KINDS[k]?.station;
  const place = station ? places.get(station) : undefined;
  return place ? work.map((price, i) => price + (place[i] as number)) : work;
}

/** A series of worked days as one of all days; other days have the next worked day's value. */
const onDays = ({ problem, worked }: DayModel, series: Float64Array): Float64Array =>
  Float64Array.from(problem.days, (_, d) => series[worked.numberFrom[d] as number] ?? 0);
