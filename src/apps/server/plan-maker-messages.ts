import type { Problem } from "../../core/outcome/problem.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { AcceptedPlan } from "../../core/plan/replan/accepted.ts";
import type { Day } from "../../core/units/day.ts";
import type { ReplanTold } from "./replan-told.ts";

/** What a lead compares of two plans. */
export interface PlanGist extends Pick<Plan, "planFrom" | "end" | "finish" | "routed" | "proof"> {
  readonly left: readonly Pick<Plan["left"][number], "must" | "kind">[];
  readonly orders: readonly Pick<Plan["orders"][number], "late">[];
}

/** Where the making of a plan stands. */
export type PlanLine =
  | { readonly step: "reading" }
  | { readonly step: "care"; readonly items: number }
  /** `done`: share of what is being done, 0 to 1.   `gap`: share of the waits that may still be saved; null: not known yet. */
  | { readonly step: "planning"; readonly at: string; readonly done: number; readonly gap: number | null }
  /** A plan nobody works by yet, by the hash of its plan.json; `told` says what became of the plan before it, null: there was none. */
  | {
      readonly step: "ready";
      readonly plan: string;
      readonly gist: PlanGist;
      readonly told: ReplanTold | null;
    }
  | { readonly step: "writing"; readonly plan: string }
  /** What the log is told of it. */
  | { readonly step: "accepted"; readonly accepted: AcceptedPayload }
  | { readonly step: "problem"; readonly problem: Problem };

export interface AcceptedPayload {
  readonly plan: string;
  readonly from: Day;
  readonly finish?: Day;
  readonly boxed: number;
  readonly left: number;
}

/** To the maker in its worker: what to plan, with a flag in shared memory that says stop; that the flag was raised while it waits for the solver; or to write what it made. */
export type ToMaker =
  | {
      readonly make: {
        readonly folder: string;
        readonly morning: Day;
        readonly accepted: AcceptedPlan | null;
        readonly search: "short" | "long";
        readonly flag: SharedArrayBuffer;
      };
    }
  | { readonly stop: true }
  | { readonly write: { readonly target: string } };

export type FromMaker =
  | { readonly line: PlanLine }
  | {
      readonly written: { readonly plan: Plan; readonly picture: string; readonly accepted: AcceptedPayload };
    }
  | { readonly failure: string };
