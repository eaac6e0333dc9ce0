import { connect, createServer, type Socket } from "node:net";
import { Transform } from "node:stream";
import { setTimeout as sleep } from "node:timers/promises";
import { verifyChain } from "../../src/core/log/verify-chain.ts";
import { said } from "./kill-server.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { startServer } from "./process.ts";
import { type Trial, unless } from "./trial.ts";
import { newWriter, noteOn } from "./writer.ts";

const BATCH = 100;
/** Of a poor house network. */
const BYTES_A_SECOND = 500_000;
const PIECE_MS = 20;
const MOST_TRIES = 10_000;

export const droppingLink: Trial = {
  name: "an outbox over a link that drops",
  run: async ({ folder, size: { outbox, linkDropsMs } }) => {
    const token = letIn(folder, "tablet-1");
    const server = await startServer(folder);
    const link = await poorLink(Number(new URL(server.first).port), linkDropsMs);
    const writer = newWriter("tablet-1");
    const events = Array.from({ length: outbox }, (_, i) => writer.write(noteOn(`B-${i % 40}`, 5)));
    let [done, broken] = [0, 0];
    while (done < events.length && broken < MOST_TRIES) {
      const batch = events.slice(done, done + BATCH);
      const answer = await send({ address: link.address, token }, batch);
      if (answer === "kept") done += batch.length;
      else broken++;
    }
    link.close();
    const kept = ((await fetchAfter({ address: server.first, token })) ?? []).map(({ event }) => event);
    await server.kill();
    return {
      line: `${said(outbox)} events over a link that drops every ${linkDropsMs / 1000} s: ${broken} batches broken off and sent again, ${said(kept.length)} events there, each once`,
      faults: [
        ...unless(
          kept.length === outbox && new Set(kept.map(({ id }) => id)).size === outbox,
          "not each event once",
        ),
        ...unless(broken > 0, "the link never broke a batch off, which tells nothing"),
        ...verifyChain(kept).map(({ code, got }) => `${code} ${got ?? ""}`),
      ],
    };
  },
};

/** A slow line to a port of this machine on which every connection breaks again and again. */
async function poorLink(port: number, everyMs: number): Promise<{ address: string; close(): void }> {
  const open = new Set<Socket>();
  const proxy = createServer((near) => {
    const far = connect(port, "127.0.0.1");
    for (const socket of [near, far]) {
      open.add(socket);
      socket.on("error", () => {});
      socket.on("close", () => {
        open.delete(socket);
        near.destroy();
        far.destroy();
      });
    }
    near.pipe(slow()).pipe(far);
    far.pipe(near);
  });
  await new Promise<void>((resolve) => proxy.listen(0, "127.0.0.1", resolve));
  const breaking = setInterval(() => {
    for (const socket of open) socket.destroy();
  }, everyMs);
  const address = proxy.address();
  return {
    address: `http://127.0.0.1:${typeof address === "object" && address !== null ? address.port : 0}`,
    close: () => {
      clearInterval(breaking);
      for (const socket of open) socket.destroy();
      proxy.close();
    },
  };
}

const slow = (): Transform =>
  new Transform({
    transform(piece: Buffer, _, done) {
      sleep(PIECE_MS + (1000 * piece.length) / BYTES_A_SECOND).then(() => done(null, piece));
    },
  });
