import type { PlanStep, PlanStepName } from "../plan/improve/course.ts";

const STEPS: Readonly<Record<PlanStepName, string>> = {
  programme: "first plan",
  prices: "what everything is worth",
  manners: "ways of working",
  changes: "small changes",
  exact: "item by item",
};

/** Where planning stands, in one short line. */
export function sayPlanStep({ step, done, gap }: PlanStep): string {
  const share = done > 0 && done < 1 ? ` ${Math.floor(done * 100)} %` : "";
  // Until the first prices are known nothing can be said of how good a plan is.
  const known = gap < 0.9 ? `; at most ${(gap * 100).toFixed(1)} % could still be gained` : "";
  return `Planning: ${STEPS[step]}${share}${known}`;
}

/** What the planner is at, in a few words. */
export const sayPlanStepName = (step: PlanStepName): string => STEPS[step];
