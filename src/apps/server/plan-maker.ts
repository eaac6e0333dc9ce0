import type { AcceptedPlan } from "../../core/plan/replan/accepted.ts";
import type { Day } from "../../core/units/day.ts";
import { startWorker } from "../../edge/worker.ts";
import { refusal } from "./answers.ts";
import type { FromMaker, PlanLine, ToMaker } from "./plan-maker-messages.ts";

/** What an accepted plan is, as soon as it is written. */
export type Written = Extract<FromMaker, { written: unknown }>["written"];

/** Makes one plan at a time away from the thread that answers. Whoever asks while one is made hears of that one. */
export interface PlanMaker {
  /** Where the last making stands; null: none was begun. */
  last(): PlanLine | null;
  /** Lines from where it stands now until it is ready, accepted, or has a problem. Leaving early stops nothing. */
  hear(): AsyncGenerator<PlanLine, void, undefined>;
  /** Begins, unless one is being made or written. */
  make(morning: Day, accepted: AcceptedPlan | null, search: "short" | "long"): void;
  /** The one in hand becomes ready as it is: the best so far, whole and with its bound. */
  stop(): void;
  /** Has what is ready written; false: that plan is not the one that is ready. */
  write(plan: string, target: string, written: (its: Written) => Promise<void>): boolean;
  close(): Promise<void>;
}

const isEnd = ({ step }: PlanLine): boolean => step === "ready" || step === "accepted" || step === "problem";

/** Starts nothing until the first plan is asked for. */
export function planMaker(folder: string): PlanMaker {
  let worker: ReturnType<typeof startWorker> | null = null;
  let flag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
  let last: PlanLine | null = null;
  let onWritten: ((its: Written) => Promise<void>) | null = null;
  const waiting = new Set<() => void>();
  const post = (message: ToMaker): void => worker?.postMessage(message);

  function tell(line: PlanLine): void {
    last = line;
    for (const wake of [...waiting]) wake();
  }

  function fail(why: string): void {
    console.error("Leafward could not make a plan:", why);
    end();
    tell({ step: "problem", ...FAULT });
  }

  function end(): void {
    const ended = worker;
    worker = null;
    void ended?.terminate();
  }

  async function hearFrom(message: FromMaker): Promise<void> {
    if ("failure" in message) return fail(message.failure);
    if ("line" in message) return tell(message.line);
    await onWritten?.(message.written);
    end();
    tell({ step: "accepted", accepted: message.written.accepted });
  }

  function begin(): void {
    const begun = startWorker(new URL("./plan-maker-worker", import.meta.url));
    const own =
      <T>(act: (value: T) => void) =>
      (value: T) => {
        if (worker === begun) act(value);
      };
    begun.on(
      "message",
      own((message: FromMaker) => void hearFrom(message).catch((error) => fail(String(error)))),
    );
    begun.on(
      "error",
      own((error: Error) => fail(String(error.stack))),
    );
    begun.on(
      "exit",
      own((code: number) => fail(`it ended with ${code}`)),
    );
    worker = begun;
  }

  return {
    last: () => last,
    hear: async function* () {
      for (let told: PlanLine | null = null; ; ) {
        if (last !== null && last !== told) {
          told = last;
          yield told;
          if (isEnd(told) && last === told) return;
          continue;
        }
        await new Promise<void>((wake) => {
          const woken = (): void => {
            waiting.delete(woken);
            wake();
          };
          waiting.add(woken);
        });
      }
    },
    make: (morning, accepted, search) => {
      if (last !== null && !isEnd(last)) return;
      end();
      flag = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT);
      begin();
      tell({ step: "reading" });
      post({ make: { folder, morning, accepted, search, flag } });
    },
    stop: () => {
      Atomics.store(new Int32Array(flag), 0, 1);
      post({ stop: true });
    },
    write: (plan, target, written) => {
      if (last?.step !== "ready" || last.plan !== plan) return false;
      onWritten = written;
      tell({ step: "writing", plan });
      post({ write: { target } });
      return true;
    },
    close: async () => {
      await worker?.terminate();
    },
  };
}

const FAULT = refusal(
  "fault",
  "the making of a plan",
  "a plan",
  "Nothing changed. Look at the window Leafward runs in, then plan anew.",
);
