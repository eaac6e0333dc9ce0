import type { LogEvent } from "../../src/core/log/event.ts";
import { fetchAfter, letIn, send } from "./link.ts";
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
    const token = letIn(folder, "tablet-1");
    const writer = newWriter("tablet-1");
    const nextBatch = (): LogEvent[] => Array.from({ length: 10 }, () => writer.write(noteOn("B-001", 60)));
    const tight = await startServer(folder, undefined, { blocks: BLOCKS });
    const line = { address: tight.first, token };
    const taken: LogEvent[] = [];
    let batch = nextBatch();
    let answer = await send(line, batch);
    for (let i = 0; answer === "kept" && i < MOST_BATCHES; i++) {
      taken.push(...batch);
      batch = nextBatch();
      answer = await send(line, batch);
    }
    const whenFull = await fetchAfter(line);
    await tight.kill();
    const roomy = await startServer(folder);
    const again = await send({ address: roomy.first, token }, batch);
    const kept = await fetchAfter({ address: roomy.first, token });
    await roomy.kill();
    const sameAs = (events: readonly LogEvent[], found: typeof kept): boolean =>
      events.length === found?.length && events.every(({ hash }, at) => hash === found[at]?.event.hash);
    return {
      line: `a file that may not outgrow a megabyte took ${taken.length} events, then refused (${answer}) and could still be read; with room again it took the refused ones`,
      faults: [
        ...unless(answer === "keep-full", `the answer was ${answer}`),
        ...unless(
          taken.length > 0 && sameAs(taken, whenFull),
          "full, it did not hold just what it had acknowledged",
        ),
        ...unless(again === "kept", `with room again the answer was ${again}`),
        ...unless(sameAs([...taken, ...batch], kept), "in the end it did not hold all"),
      ],
    };
  },
};
