import { createHash } from "node:crypto";
import { chmodSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { startScript } from "./process.ts";
import { skipped, type Trial, unless } from "./trial.ts";
import { writtenLog } from "./written-log.ts";

/** As root the folder is looked at by somebody without rights: "nobody" on most systems. */
const NOBODY = 65_534;

export const readOnlyFolder: Trial = {
  name: "read-only folder",
  run: async ({ folder }) => {
    if (process.platform === "win32") return skipped("the rights of a folder are other here");
    const file = join(folder, "log.leafward.db");
    const events = await writtenLog(file, 50);
    const before = sumOf(file);
    chmodSync(file, 0o444);
    chmodSync(folder, 0o555);
    const looker = await startScript("look", [folder], process.getuid?.() === 0 ? { user: NOBODY } : {});
    const [count, code] = looker.first.split(" ");
    await looker.kill();
    chmodSync(folder, 0o755);
    return {
      line: `all ${count} events were read, a new one refused (${code}), the file is as it was`,
      faults: [
        ...unless(Number(count) === events.length, `read: ${looker.first}`),
        ...unless(code === "keep-read-only", `the answer was ${code}`),
        ...unless(sumOf(file) === before && readdirSync(folder).length === 1, "the folder was changed"),
      ],
    };
  },
};

export const sumOf = (path: string): string => createHash("sha256").update(readFileSync(path)).digest("hex");
