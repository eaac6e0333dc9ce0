import type { Band } from "../../care/care.ts";
import { FEW_SESSIONS } from "../../plan/pace.ts";
import type { Finish } from "../../plan/plan.ts";
import { type Day, daysBetween } from "../../units/day.ts";

/** How far the use of a store may lie off what the plan expects, as standard deviations over the expected use. */
export interface UseSpread {
  /** Of all days alike: what this team needs against the norm, and how fast the plan goes. */
  readonly all: number;
  /** Of each day by itself. */
  readonly each: number;
}

export const NO_SPREAD: UseSpread = { all: 0, each: 0 };

/**
 * The spread of a norm's band, taken whole for the team while nothing was measured: nobody knows whether a band is of teams or of days.
 * Measured sessions narrow it as they move the norm, with the weight of 15. House.
 */
export function useSpread(band: Band, sessions: number, ofPlan: number): UseSpread {
  const each = band.typical > 0 ? deviationOf(band) / band.typical : 0;
  const ofTeam = each * Math.sqrt(FEW_SESSIONS / (FEW_SESSIONS + sessions));
  return { all: Math.hypot(ofTeam, ofPlan), each };
}

/** Standard deviation of a triangular distribution. Source: the variance of low, typical, high in any table of distributions. */
const deviationOf = ({ low, typical, high }: Band): number =>
  Math.sqrt((low ** 2 + typical ** 2 + high ** 2 - low * typical - low * high - typical * high) / 18);

/** One in ten lies beyond so many standard deviations of a normal distribution, at either end. */
export const ONE_IN_TEN = 1.2816;

/** The plan's own spread, from its simulated campaigns: by days to the finish, or by items boxed where it is not reached. */
export function planSpread({ p10, p50, p90, boxed }: Finish, planFrom: Day): number {
  if (p10 && p50 && p90 && p50 > planFrom)
    return daysBetween(p10, p90) / (2 * ONE_IN_TEN * daysBetween(planFrom, p50));
  return boxed.p50 > 0 ? (boxed.p90 - boxed.p10) / (2 * ONE_IN_TEN * boxed.p50) : 0;
}
