import type { DayModel } from "../bound/day-model.ts";
import type { PriceSearch } from "../bound/price-search.ts";
import { type Guide, USUAL_MANNER } from "../guide.ts";
import type { Job } from "../problem.ts";

/** A guide from the search for prices: the mean day on which each item bought each task, and how often each person was exposed. */
export function guideFromPrices(model: DayModel, found: PriceSearch): Guide {
  const { problem, worked, firstTask } = model;
  const last = problem.days.length;
  const count = worked.days.length;
  const dayAt = (at: number): number => {
    const low = Math.min(count - 1, Math.floor(at));
    const from = worked.days[low] as number;
    const to = worked.days[Math.min(count - 1, low + 1)] as number;
    return at >= count ? last + 1 : from + (at - low) * (to - from);
  };
  const wanted = new Map<Job, Float64Array>();
  model.alike.forEach((jobs, j) => {
    const days = found.meanDay.slice(firstTask[j], firstTask[j + 1]).map(dayAt);
    for (const job of jobs) wanted.set(job, days);
  });
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
    wanted,
    exposedBy,
    worth: found.prices.work.map((series) => onDays(model, series)),
    manner: USUAL_MANNER,
  };
}

/** A series of worked days as one of all days; other days have the next worked day's value. */
const onDays = ({ problem, worked }: DayModel, series: Float64Array): Float64Array =>
  Float64Array.from(problem.days, (_, d) => series[worked.numberFrom[d] as number] ?? 0);
