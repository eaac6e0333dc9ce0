import type { Day } from "../../core/units/day.ts";
import { startWorker } from "../worker.ts";
import type { DeskLine, FromDesk, ToDesk } from "./what-if-messages.ts";

/** Answers what-if questions about one campaign folder, away from the thread that asks. */
export interface WhatIfService {
  /** Lines as they come; a second question waits for the first. Leaving early leaves the worker to finish. */
  ask(scenarios: readonly string[]): AsyncGenerator<DeskLine, void, undefined>;
  /** What would help, told in the same way.   @param most plans made for it at most */
  ease(most: number): AsyncGenerator<DeskLine, void, undefined>;
  /** The campaign is read anew before the next question; one being answered is answered to its end. */
  forget(): void;
  close(): Promise<void>;
}

/** Starts nothing until the first question. */
export function whatIfService(folder: string, planFrom: Day): WhatIfService {
  let worker: ReturnType<typeof startWorker> | null = null;
  let queue: Promise<void> = Promise.resolve();
  let isOld = false;
  const started = (): ReturnType<typeof startWorker> => {
    if (worker && !isOld) return worker;
    void worker?.terminate();
    isOld = false;
    worker = startWorker(new URL("./what-if-worker", import.meta.url));
    const begun = worker;
    begun.once("exit", () => {
      if (worker === begun) worker = null;
    });
    begun.postMessage({ open: { folder, planFrom } } satisfies ToDesk);
    return begun;
  };
  async function* answersTo(question: ToDesk): AsyncGenerator<DeskLine, void, undefined> {
    const before = queue;
    const inbox = new Inbox();
    let finished = (): void => {};
    queue = new Promise((resolve) => {
      finished = resolve;
    });
    await before;
    const asked = started();
    const hear = (message: FromDesk): void => {
      inbox.put(message);
      if ("line" in message) return;
      stopHearing();
      finished();
    };
    const fail = (error: Error): void => hear({ failure: String(error) });
    const gone = (): void => hear({ failure: "it ended" });
    const stopHearing = (): void => {
      asked.off("message", hear).off("error", fail).off("exit", gone);
    };
    asked.on("message", hear).on("error", fail).on("exit", gone);
    asked.postMessage(question);
    for (;;) {
      const message = await inbox.take();
      if ("done" in message) return;
      if ("failure" in message) throw new Error(`The what-if worker failed: ${message.failure}`);
      yield message.line;
    }
  }
  return {
    ask: (scenarios) => answersTo({ ask: scenarios }),
    ease: (most) => answersTo({ ease: most }),
    forget: () => {
      isOld = true;
    },
    close: async () => {
      await worker?.terminate();
    },
  };
}

/** Messages in the order they came, taken one at a time as they are wanted. */
class Inbox {
  private readonly messages: FromDesk[] = [];
  private wake: (() => void) | null = null;

  put(message: FromDesk): void {
    this.messages.push(message);
    this.wake?.();
  }

  async take(): Promise<FromDesk> {
    for (;;) {
      const next = this.messages.shift();
      if (next) return next;
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
  }
}
