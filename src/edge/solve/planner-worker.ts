import { parentPort } from "node:worker_threads";
import { loadNorms } from "../../core/care/norms.ts";
import type { PlanStep, Watch } from "../../core/plan/improve/course.ts";
import { makePlan, PLAN_DEFAULTS } from "../../core/plan/make-plan.ts";
import { readPublished } from "../published.ts";
import type { FromPlanner, ToPlanner } from "./planner-messages.ts";
import { startSolver } from "./solver.ts";

/** Steps are told no oftener than this. */
const TOLD_EVERY_MS = 100;

const solver = startSolver();
const norms = loadNorms(readPublished("norms.json"));
const tell = (message: FromPlanner): void => parentPort?.postMessage(message);

/** The thread hears no message while it plans, so the wish to stop comes through shared memory. */
function watchOn(flag: SharedArrayBuffer): Watch {
  const wish = new Int32Array(flag);
  let told = Number.NEGATIVE_INFINITY;
  let before: PlanStep["step"] | null = null;
  return (step) => {
    const now = performance.now();
    if (step.step !== before || now - told >= TOLD_EVERY_MS) {
      told = now;
      before = step.step;
      tell({ step });
    }
    return Atomics.load(wish, 0) === 0 ? "go on" : "stop";
  };
}

parentPort?.on("message", (message: ToPlanner) => {
  if ("stop" in message) return solver.halt();
  const { campaign, routes, flag } = message;
  makePlan(campaign, routes, norms, solver.solve, PLAN_DEFAULTS, watchOn(flag)).then(
    (planned) => tell({ planned }),
    (error) => tell({ failure: error instanceof Error ? String(error.stack) : String(error) }),
  );
});
