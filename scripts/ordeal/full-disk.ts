import { join } from "node:path";
import type { LogEvent } from "../../src/core/log/event.ts";
import { fetchAfter, firstCode, send } from "./link.ts";
import { startServer } from "./process.ts";
import { skipped, type Trial, unless } from "./trial.ts";
import { newWriter, noteOn } from "./writer.ts";

/** A megabyte, in blocks of 512 bytes. */
const BLOCKS = 2000;
const MOST_BATCHES = 400;

export const fullDisk: Trial = {
  name: "disk full",
  run: async ({ folder }) => {
    if (process.platform === "win32") return skipped("the size of files cannot be limited here");
    const file = join(folder, "log.leafward.db");
    const writer = newWriter("tablet-1");
    const nextBatch = (): LogEvent[] => Array.from({ length: 10 }, () => writer.write(noteOn("B-001", 60)));
    const tight = await startServer(file, { blocks: BLOCKS });
    const taken: LogEvent[] = [];
    let batch = nextBatch();
    let answer = await send(tight.first, batch);
    for (let i = 0; answer?.refused.length === 0 && i < MOST_BATCHES; i++) {
      taken.push(...batch);
      batch = nextBatch();
      answer = await send(tight.first, batch);
    }
    const whenFull = await fetchAfter(tight.first, 0);
    await tight.kill();
    const roomy = await startServer(file);
    const again = await send(roomy.first, batch);
    const kept = await fetchAfter(roomy.first, 0);
    await roomy.kill();
    const code = firstCode(answer?.refused);
    const sameAs = (events: readonly LogEvent[], found: typeof kept): boolean =>
      events.length === found?.length && events.every(({ hash }, at) => hash === found[at]?.event.hash);
    return {
      line: `a file that may not outgrow a megabyte took ${taken.length} events, then refused (${code}) and could still be read; with room again it took the refused ones`,
      faults: [
        ...unless(code === "keep-full", `the answer was ${code}`),
        ...unless(
          taken.length > 0 && sameAs(taken, whenFull),
          "full, it did not hold just what it had acknowledged",
        ),
        ...unless(again?.added === batch.length, "with room again it did not go on"),
        ...unless(sameAs([...taken, ...batch], kept), "in the end it did not hold all"),
      ],
    };
  },
};
