import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { verifyChain } from "../../src/core/log/verify-chain.ts";
import { between, chanceFrom } from "./chance.ts";
import { said } from "./kill-server.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { readOutbox } from "./outbox.ts";
import { startScript, startServer } from "./process.ts";
import type { Trial } from "./trial.ts";
import { unless } from "./trial.ts";

const LONGEST_MS = 150;

export const killTablet: Trial = {
  name: "tablet killed while somebody enters",
  run: async ({ folder, size, seed }) => {
    const chance = chanceFrom(seed);
    const token = letIn(folder, "tablet-1");
    const server = await startServer(folder);
    const line = { address: server.first, token };
    const outbox = join(folder, "outbox.jsonl");
    const entered = new Set<string>();
    for (let at = 0; at < size.tabletKills; at++) {
      const tablet = await startScript("tablet", [server.first, token, outbox]);
      await new Promise<void>((begun) => {
        tablet.hear((id) => {
          entered.add(id);
          begun();
        });
      });
      await sleep(between(chance, 0, LONGEST_MS));
      await tablet.kill();
    }
    const rest = readOutbox(outbox);
    const sent = await send(line, rest);
    const kept = ((await fetchAfter(line)) ?? []).map(({ event }) => event);
    await server.kill();
    const here = new Set(kept.map(({ id }) => id));
    const lost = [...entered].filter((id) => !here.has(id));
    const breaks = verifyChain(kept);
    return {
      line: `${size.tabletKills} kills (a process with an outbox file stands for the browser's tab), ${said(entered.size)} entries stood, ${lost.length} of them lost, ${breaks.length} breaks in its chain`,
      faults: [
        ...unless(rest.length === 0 || sent === "kept", `the rest of the outbox: ${sent}`),
        ...lost.map((id) => `${id} stood on the tablet and is nowhere`),
        ...breaks.map(({ code, got }) => `${code} ${got ?? ""}`),
      ],
    };
  },
};
