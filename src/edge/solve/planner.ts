import type { Route } from "../../core/care/care.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import type { PlanStep } from "../../core/plan/improve/course.ts";
import type { Planned } from "../../core/plan/make-plan.ts";
import { startWorker } from "../worker.ts";
import type { FromPlanner, ToPlanner } from "./planner-messages.ts";

/** Makes one plan away from the thread that asks. */
export interface Planner {
  /** The plan; `hear` is told on the way where planning stands. */
  plan(campaign: Campaign, routes: readonly Route[], hear: (at: PlanStep) => void): Promise<Planned>;
  /** The plan in hand is answered as it is: the best so far, whole and with its bound. */
  stop(): void;
  close(): Promise<void>;
}

export function startPlanner(): Planner {
  const worker = startWorker(new URL("./planner-worker", import.meta.url));
  const flag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  return {
    plan: (campaign, routes, hear) =>
      new Promise((resolve, reject) => {
        const fail = (why: unknown): void => reject(new Error(`The planner failed: ${why}`));
        worker.on("error", fail).once("exit", () => fail("it ended"));
        worker.on("message", (message: FromPlanner) => {
          if ("step" in message) hear(message.step);
          else if ("planned" in message) resolve(message.planned);
          else fail(message.failure);
        });
        worker.postMessage({ campaign, routes, flag } satisfies ToPlanner);
      }),
    stop: () => {
      Atomics.store(new Int32Array(flag), 0, 1);
      worker.postMessage({ stop: true } satisfies ToPlanner);
    },
    close: async () => {
      await worker.terminate();
    },
  };
}
