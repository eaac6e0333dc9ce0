import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { PlanStep } from "../../core/plan/improve/course.ts";
import type { Planned } from "../../core/plan/make-plan.ts";

/** To the planner: what to plan, with a flag in shared memory that says stop; or that the flag was raised while it waits for the solver. */
export type ToPlanner =
  | { readonly campaign: Campaign; readonly routes: readonly Route[]; readonly flag: SharedArrayBuffer }
  | { readonly stop: true };

export type FromPlanner =
  | { readonly step: PlanStep }
  | { readonly planned: Planned }
  | { readonly failure: string };
