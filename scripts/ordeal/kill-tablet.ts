import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { verifyChain } from "../../src/core/log/verify-chain.ts";
import { between, chanceFrom } from "./chance.ts";
import { said } from "./kill-server.ts";
import { fetchAfter, isTaken, send } from "./link.ts";
import { readOutbox } from "./outbox.ts";
import { startScript, startServer } from "./process.ts";
import type { Trial } from "./trial.ts";
import { unless } from "./trial.ts";

const LONGEST_MS = 150;

export const killTablet: Trial = {
  name: "tablet killed while somebody enters",
  run: async ({ folder, size, seed }) => {
    const chance = chanceFrom(seed);
    const server = await startServer(join(folder, "log.leafward.db"));
    const outbox = join(folder, "outbox.jsonl");
    const entered = new Set<string>();
    for (let at = 0; at < size.tabletKills; at++) {
      const tablet = await startScript("tablet.ts", [server.first, outbox]);
      tablet.hear((id) => entered.add(id));
      await sleep(20 + between(chance, 0, LONGEST_MS));
      await tablet.kill();
    }
    const rest = readOutbox(outbox);
    const sent = await send(server.first, rest);
    const kept = ((await fetchAfter(server.first, 0)) ?? []).map(({ event }) => event);
    await server.kill();
    const here = new Set(kept.map(({ id }) => id));
    const lost = [...entered].filter((id) => !here.has(id));
    const breaks = verifyChain(kept);
    return {
      line: `${size.tabletKills} kills (a process with an outbox file stands for the browser's tab), ${said(entered.size)} entries stood, ${lost.length} of them lost, ${breaks.length} breaks in its chain`,
      faults: [
        ...unless(isTaken(sent), "the rest of the outbox was refused"),
        ...lost.map((id) => `${id} stood on the tablet and is nowhere`),
        ...breaks.map(({ code, got }) => `${code} ${got ?? ""}`),
      ],
    };
  },
};
