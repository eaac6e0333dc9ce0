import { FEW_SESSIONS } from "../pace.ts";
import type { Job, PlanProblem } from "../problem.ts";
import { KINDS, kindOf } from "../work.ts";

/** The team's own pace against the norms before anything is measured, one draw a kind of work: minutes over the norm's. Common practice, no source. */
export const TEAM_PACE = { low: 0.85, typical: 1, high: 1.3 };

/**
 * How wide the team's pace still is for a job's work of a kind, 1: as wide as `TEAM_PACE`. The norm weighs as much as so many sessions; with n more of the
 * kind and format measured the spread shrinks to √(norm's weight / (norm's weight + n)), as the standard deviation of a normal mean does
 * (Gelman et al., Bayesian Data Analysis, section 2.5; from memory).
 */
export function paceWidths({ campaign }: PlanProblem): (job: Job, kind: number) => number {
  const formats = new Map(campaign.items.map((item) => [item.id, item.facts.format]));
  /** Format → sessions measured of each kind. */
  const measured = new Map<unknown, number[]>();
  for (const { item, act, exposed, minutes } of campaign.sessions) {
    if (minutes <= 0) continue;
    const format = formats.get(item);
    const counts = measured.get(format) ?? KINDS.map(() => 0);
    counts[kindOf({ act, exposed })] = (counts[kindOf({ act, exposed })] ?? 0) + 1;
    measured.set(format, counts);
  }
  return ({ item }, kind) => {
    const count = measured.get(item.facts.format)?.[kind] ?? 0;
    return Math.sqrt(FEW_SESSIONS / (FEW_SESSIONS + count));
  };
}
