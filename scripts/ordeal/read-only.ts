import { createHash } from "node:crypto";
import { chmodSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fetchAfter, firstCode, send } from "./link.ts";
import { startServer } from "./process.ts";
import { skipped, type Trial, unless } from "./trial.ts";
import { newWriter, noteOn } from "./writer.ts";
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
    const server = await startServer(file, process.getuid?.() === 0 ? { user: NOBODY } : {});
    const kept = await fetchAfter(server.first, 0);
    const answer = await send(server.first, [newWriter("tablet-2").write(noteOn("B-001"))]);
    await server.kill();
    chmodSync(folder, 0o755);
    const code = firstCode(answer?.refused);
    return {
      line: `all ${kept?.length ?? 0} events were read, a new one refused (${code}), the file is as it was`,
      faults: [
        ...unless(
          kept?.length === events.length,
          `read: ${kept?.length ?? server.first} of ${events.length}`,
        ),
        ...unless(code === "keep-read-only", `the answer was ${code}`),
        ...unless(sumOf(file) === before && readdirSync(folder).length === 1, "the folder was changed"),
      ],
    };
  },
};

export const sumOf = (path: string): string => createHash("sha256").update(readFileSync(path)).digest("hex");
