import { gapOf } from "../whole-days.ts";
import type { Trial } from "./best-manner.ts";

/** What the planner is at. */
export type PlanStepName = "programme" | "prices" | "manners" | "changes" | "exact";

/** Where planning stands: the best plan so far and the bound no plan can beat. */
export interface PlanStep {
  readonly step: PlanStepName;
  /** Weighted item-days. */
  readonly bound: number;
  readonly cost: number;
  /** Share of the cost that may still be saved, 0 to 1. */
  readonly gap: number;
  /** Share of the step that is done, 0 to 1. */
  readonly done: number;
}

/** Is told how planning goes and answers whether it shall; whoever watches, the plan is the same unless it says stop. */
export type Watch = (at: PlanStep) => "go on" | "stop";

/** The best plan so far, the bound so far, and whoever watches. */
export class Course {
  stopped = false;
  bound = 0;

  constructor(
    public best: Trial,
    private readonly watch: Watch | undefined,
  ) {}

  offer(other: Trial): void {
    if (other.cost < this.best.cost) this.best = other;
  }

  /** Tells the watch; false: planning shall stop. */
  goesOn(step: PlanStepName, done: number): boolean {
    const { cost } = this.best;
    const bound = Math.min(this.bound, cost);
    if (!this.stopped && this.watch?.({ step, bound, cost, gap: gapOf(cost, bound), done }) === "stop")
      this.stopped = true;
    return !this.stopped;
  }
}
