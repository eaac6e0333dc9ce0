import type { Worker } from "node:worker_threads";
import type { Day } from "../../core/units/day.ts";
import { startWorker } from "../worker.ts";
import { type DailyBackup, dropUnfinished } from "./daily-backup.ts";

const LOOK_EVERY_MS = 3_600_000;

export interface BackupWish {
  readonly folder: string;
  readonly today: Day;
}

/**
 * Makes the backup of the day now, and looks every hour whether a new day wants its own. It is copied and read from end to end on a thread of
 * its own: nobody who enters something waits for it.   @param tell what was made or stands in the way; what stands there still is told once
 */
export function backupsMeanwhile(
  folder: string,
  today: () => Day,
  tell: (done: DailyBackup) => void,
): { close(): Promise<void> } {
  let running: { readonly worker: Worker; readonly day: Day } | null = null;
  let told = "";

  function look(): void {
    if (running !== null) return;
    const worker = startWorker(new URL("./backup-worker", import.meta.url));
    running = { worker, day: today() };
    worker.once("message", (done: DailyBackup) => {
      const words = JSON.stringify(done);
      if (words !== told && done.made.length + done.problems.length > 0) tell(done);
      told = words;
    });
    worker.once("error", (error) => console.error("Leafward could not make the backup of the day:", error));
    worker.once("exit", () => {
      running = null;
    });
    worker.postMessage({ folder, today: running.day } satisfies BackupWish);
  }

  look();
  const looking = setInterval(look, LOOK_EVERY_MS);
  return {
    close: async () => {
      clearInterval(looking);
      if (running === null) return;
      const { worker, day } = running;
      await worker.terminate();
      await dropUnfinished(folder, day);
    },
  };
}
