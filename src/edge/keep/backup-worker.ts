import { parentPort } from "node:worker_threads";
import type { BackupWish } from "./backups-meanwhile.ts";
import { dailyBackup } from "./daily-backup.ts";

parentPort?.once("message", async ({ folder, today }: BackupWish) => {
  parentPort?.postMessage(await dailyBackup(folder, today));
});
