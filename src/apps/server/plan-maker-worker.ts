import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { parentPort } from "node:worker_threads";
import type { PlanStep, Watch } from "../../core/plan/improve/course.ts";
import { makePlan, PLAN_DEFAULTS } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Replan } from "../../core/plan/replan/changes.ts";
import { replan } from "../../core/plan/replan/replan.ts";
import { sayPlanStepName } from "../../core/say/plan-step.ts";
import { replanTable } from "../../edge/handover/replan-table.ts";
import { finishedPlan, type ReadyFolder, readyFolder } from "../../edge/solve/ready-folder.ts";
import { startSolver } from "../../edge/solve/solver.ts";
import { BrokenPlan } from "../cli/broken-plan.ts";
import type { PlannedFolder } from "../cli/plan-folder.ts";
import { planText, writePlan } from "../cli/write-plan.ts";
import type { AcceptedPayload, FromMaker, PlanGist, ToMaker } from "./plan-maker-messages.ts";
import { replanTold } from "./replan-told.ts";

/** One plan is made here, told, and written when it is accepted; then the worker is done. */

/** Steps are told no oftener than this. */
const TOLD_EVERY_MS = 150;
/** Until the first prices are known nothing can be said of how good a plan is. */
const UNKNOWN_GAP = 0.9;

const solver = startSolver();
const tell = (message: FromMaker): void => parentPort?.postMessage(message);
let made: { readonly planned: PlannedFolder; readonly its: Replan | null; readonly hash: string } | null =
  null;

/** The thread hears no message while it plans, so the wish to stop comes through shared memory. */
function watchOn(flag: SharedArrayBuffer): Watch {
  const wish = new Int32Array(flag);
  let told = Number.NEGATIVE_INFINITY;
  let before: PlanStep["step"] | null = null;
  return ({ step, done, gap }) => {
    const now = performance.now();
    if (step !== before || now - told >= TOLD_EVERY_MS) {
      told = now;
      before = step;
      const known = gap < UNKNOWN_GAP ? gap : null;
      tell({ line: { step: "planning", at: sayPlanStepName(step), done, gap: known } });
    }
    return Atomics.load(wish, 0) === 0 ? "go on" : "stop";
  };
}

async function make({
  folder,
  morning,
  accepted,
  search,
  flag,
}: Extract<ToMaker, { make: unknown }>["make"]) {
  tell({ line: { step: "reading" } });
  const ready = await readyFolder(folder, morning, (items) => tell({ line: { step: "care", items } }));
  if (ready.campaign === null) {
    const problem = ready.problems.find(({ severity }) => severity === "stop") ?? ready.problems[0];
    if (problem === undefined) throw new Error("The campaign folder can no longer be read.");
    return tell({ line: { step: "problem", problem } });
  }
  tell({ line: { step: "planning", at: sayPlanStepName("programme"), done: 0, gap: null } });
  const { campaign, norms, routes } = ready;
  const watch = watchOn(flag);
  const { planned, replan: its } =
    accepted === null
      ? {
          planned: await makePlan(campaign, routes, norms, solver.solve, PLAN_DEFAULTS, watch),
          replan: null,
        }
      : await replan(campaign, ready, norms, solver.solve, accepted, { search, watch });
  const { plan, broken } = finishedPlan(ready, planned);
  if (broken !== null) throw new BrokenPlan(broken);
  const hash = createHash("sha256").update(planText(plan)).digest("hex");
  made = { planned: plannedFolder(ready, plan, planned.use), its, hash };
  tell({
    line: { step: "ready", plan: hash, gist: gistOf(plan), told: its && replanTold(its, campaign) },
  });
}

const plannedFolder = (ready: ReadyFolder, plan: Plan, use: PlannedFolder["use"]): PlannedFolder => {
  const { campaign, problems, care, routes, stock } = ready;
  return { campaign, problems, care, routes, stock, plan, use };
};

const gistOf = ({ planFrom, end, finish, routed, proof, left, orders }: Plan): PlanGist => ({
  ...{ planFrom, end, finish, routed, proof },
  left: left.map(({ must, kind }) => ({ must, kind })),
  orders: orders.map(({ late }) => ({ late })),
});

/** As `leafward plan` writes it, and the changes as `leafward replan` does. */
async function write(target: string): Promise<void> {
  if (made === null) throw new Error("There is no plan to write.");
  const { planned, its, hash } = made;
  tell({ line: { step: "writing", plan: hash } });
  await writePlan(planned, target, { sheet: "A4", allCards: false });
  if (its !== null) await writeFile(join(target, "changes.csv"), replanTable(its, planned.campaign));
  const picture = await readFile(join(target, "picture.svg"), "utf8");
  tell({ written: { plan: planned.plan, picture, accepted: payloadOf(planned.plan, hash) } });
}

const payloadOf = ({ planFrom, finish, left }: Plan, plan: string): AcceptedPayload => ({
  ...{ plan, from: planFrom, boxed: Math.round(finish.boxed.p50), left: left.length },
  ...(finish.p50 === null ? {} : { finish: finish.p50 }),
});

const failed = (error: unknown): void =>
  tell({ failure: error instanceof Error ? String(error.stack) : String(error) });

parentPort?.on("message", (message: ToMaker) => {
  if ("stop" in message) solver.halt();
  else if ("make" in message) make(message.make).catch(failed);
  else write(message.write.target).catch(failed);
});
