import type { Solve, Solved } from "../../core/plan/programme.ts";
import { startWorker } from "../worker.ts";

export interface Solver {
  readonly solve: Solve;
  close(): Promise<void>;
}

/** The HiGHS solver in a worker of its own, so that server and page stay awake while it thinks. */
export function startSolver(): Solver {
  const worker = startWorker(new URL("./highs-worker", import.meta.url));
  const waiting = new Map<number, { done: (solved: Solved) => void; fail: (error: Error) => void }>();
  let last = 0;
  worker.on("message", ({ id, solved, failure }: { id: number; solved?: Solved; failure?: string }) => {
    const who = waiting.get(id);
    waiting.delete(id);
    if (solved) who?.done(solved);
    else who?.fail(new Error(`The solver failed: ${failure}`));
  });
  worker.on("error", (error) => {
    for (const each of waiting.values()) each.fail(error);
    waiting.clear();
  });
  return {
    solve: (programme, options) =>
      new Promise((done, fail) => {
        waiting.set(++last, { done, fail });
        worker.postMessage({ id: last, programme, options });
      }),
    close: async () => {
      await worker.terminate();
    },
  };
}
