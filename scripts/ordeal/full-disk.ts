import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { LogEvent } from "../../src/core/log/event.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { startServer } from "./process.ts";
import { type Shown, skipped, type Trial, unless } from "./trial.ts";
import { newWriter, noteOn } from "./writer.ts";

/** A megabyte, in blocks of 512 bytes. */
const BLOCKS = 2000;
const DISK = "size=2m";
const MOST_BATCHES = 400;

export const fullDisk: Trial = {
  name: "disk full",
  run: async ({ folder }) => {
    if (process.platform === "win32") return skipped("the size of files cannot be limited here");
    const disk = join(folder, "disk");
    mkdirSync(disk);
    if (spawnSync("mount", ["-t", "tmpfs", "-o", DISK, "tmpfs", disk]).status !== 0)
      return filledUp(disk, {
        what: "a file that may not outgrow a megabyte (no small disk can be mounted here)",
        wish: { blocks: BLOCKS },
        makeRoom: () => {},
      });
    const enlarge = () => spawnSync("mount", ["-o", "remount,size=64m", disk]);
    try {
      return await filledUp(disk, { what: "a disk of two megabytes", wish: {}, makeRoom: enlarge });
    } finally {
      spawnSync("umount", ["--lazy", disk]);
    }
  },
};

interface Narrow {
  /** For people. */
  readonly what: string;
  readonly wish: { readonly blocks?: number };
  makeRoom(): void;
}

async function filledUp(folder: string, { what, wish, makeRoom }: Narrow): Promise<Shown> {
  const token = letIn(folder, "tablet-1");
  const writer = newWriter("tablet-1");
  const nextBatch = (): LogEvent[] => Array.from({ length: 10 }, () => writer.write(noteOn("B-001", 60)));
  const tight = await startServer(folder, undefined, wish);
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
  makeRoom();
  const roomy = await startServer(folder);
  const again = await send({ address: roomy.first, token }, batch);
  const kept = await fetchAfter({ address: roomy.first, token });
  await roomy.kill();
  const sameAs = (events: readonly LogEvent[], found: typeof kept): boolean =>
    events.length === found?.length && events.every(({ hash }, at) => hash === found[at]?.event.hash);
  return {
    line: `${what} took ${taken.length} events, then refused (${answer}) and could still be read; with room again it took the refused ones`,
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
}
