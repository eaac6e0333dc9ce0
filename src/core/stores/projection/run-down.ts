import type { Store } from "../../items/campaign.ts";
import { type Day, daysBetween } from "../../units/day.ts";
import { ROUNDING } from "./need.ts";

/** What comes in of a store on a day of the plan; 0 is the first morning. */
export interface Arrival {
  readonly at: number;
  readonly quantity: number;
}

export interface RunDown {
  /** What is there on each evening; below 0: so much is short. */
  readonly level: Float64Array;
  /** Most that was short up to each evening: what has to be here besides. */
  readonly short: Float64Array;
  /** First day on which something is short; null: lasts. */
  readonly outOn: number | null;
  /** Units that go past their date unused. */
  readonly lost: number;
}

/** A store along one line of use. What has a date is used first, and what is left of it after its last day is gone.
 *  @param need what will have been used by each evening */
export function runDown(
  store: Pick<Store, "onHand" | "expires">,
  arrivals: readonly Arrival[],
  need: Float64Array,
  planFrom: Day,
): RunDown {
  const lastDay = store.expires ? daysBetween(planFrom, store.expires) : Number.POSITIVE_INFINITY;
  const comes = new Map<number, number>();
  for (const { at, quantity } of arrivals) comes.set(at, (comes.get(at) ?? 0) + quantity);
  const [level, short] = [need.slice(), need.slice()];
  let [dated, fresh, before, worst, lost] = [store.onHand, 0, 0, 0, 0];
  let outOn: number | null = null;
  need.forEach((sum, d) => {
    fresh += comes.get(d) ?? 0;
    if (d > lastDay) {
      lost += dated;
      dated = 0;
    }
    const fromDated = Math.min(dated, sum - before);
    dated -= fromDated;
    fresh -= sum - before - fromDated;
    before = sum;
    level[d] = dated + fresh;
    worst = Math.max(worst, -(dated + fresh));
    short[d] = worst;
    if (worst > ROUNDING && outOn === null) outOn = d;
  });
  return { level, short, outOn, lost };
}
