import type { Solve, Solved } from "../../core/plan/programme.ts";
import { startWorker } from "../worker.ts";

export interface Solver {
  readonly solve: Solve;
  /** Searches for whole numbers, the one in hand and all that follow, end without an answer. What is relaxed takes a moment and is still solved. */
  halt(): void;
  close(): Promise<void>;
}

interface Asked {
  readonly relaxed: boolean;
  done(solved: Solved): void;
  fail(error: Error): void;
}

const HALTED: Solved = {
  status: "stopped",
  objective: Number.POSITIVE_INFINITY,
  bound: Number.NEGATIVE_INFINITY,
  values: new Float64Array(0),
  duals: new Float64Array(0),
};

/** The HiGHS solver in a worker of its own, so that server and page stay awake while it thinks. */
export function startSolver(): Solver {
  const worker = startWorker(new URL("./highs-worker", import.meta.url));
  const waiting = new Map<number, Asked>();
  let last = 0;
  let halted = false;
  let broken: Error | null = null;
  worker.on("message", ({ id, solved, failure }: { id: number; solved?: Solved; failure?: string }) => {
    const who = waiting.get(id);
    waiting.delete(id);
    if (solved) who?.done(solved);
    else who?.fail(new Error(`The solver failed: ${failure}`));
  });
  worker.on("error", (error) => {
    broken = error;
    for (const each of waiting.values()) each.fail(error);
    waiting.clear();
  });
  return {
    solve: (programme, options) =>
      new Promise((done, fail) => {
        if (broken) return fail(broken);
        if (halted && !options.relaxed) return done(HALTED);
        waiting.set(++last, { relaxed: options.relaxed, done, fail });
        worker.postMessage({ id: last, programme, options });
      }),
    halt: () => {
      halted = true;
      for (const [id, who] of waiting) {
        if (who.relaxed) continue;
        waiting.delete(id);
        who.done(HALTED);
      }
    },
    close: async () => {
      await worker.terminate();
    },
  };
}
