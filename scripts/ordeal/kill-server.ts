import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { LogEvent } from "../../src/core/log/event.ts";
import type { Day } from "../../src/core/units/day.ts";
import { LOG_FILE } from "../../src/edge/keep/open-keep.ts";
import { verifyFile } from "../../src/edge/keep/verify.ts";
import { Account } from "./account.ts";
import { between, chanceFrom } from "./chance.ts";
import { fetchAfter, letIn, send } from "./link.ts";
import { type Running, startServer } from "./process.ts";
import type { Trial } from "./trial.ts";
import { newWriter, noteOn, type Writer } from "./writer.ts";

const TABLETS = 6;
const LONGEST_MS = 150;
const BIGGEST_BATCH = 20;
const TODAY = "2026-06-19" as Day;

interface Tablet {
  readonly writer: Writer;
  readonly token: string;
  /** Sent, and no answer came. */
  open: readonly LogEvent[] | null;
}

export const killServer: Trial = {
  name: "server killed while it writes, SQLite",
  run: async ({ folder, size, seed }) => {
    const { account, cut } = await killing({
      folder,
      start: () => startServer(folder),
      kill: (server) => server.kill(),
      kills: size.serverKills,
      seed,
    });
    const read = await verifyFile(join(folder, LOG_FILE), TODAY);
    const problems = read.ok ? read.value.problems : read.problems;
    return {
      line: `${sayKills(size.serverKills, account, cut)}, ${problems.length} faults in the file`,
      faults: [
        ...account.faults,
        ...account.lost(),
        ...problems.map(({ code, got }) => `${code} ${got ?? ""}`),
      ],
    };
  },
};

export const sayKills = (kills: number, account: Account, cut: number): string =>
  `${kills} kills cut off ${cut} batches on their way; ${said(account.acknowledged)} events acknowledged, ${account.lost().length} of them lost`;

export const said = (n: number): string => n.toLocaleString("en-GB");

interface Killing {
  readonly folder: string;
  start(): Promise<Running>;
  /** Called while tablets write; leaves nothing that writes. */
  kill(server: Running): Promise<void>;
  readonly kills: number;
  readonly seed: number;
}

/** Tablets send batches without end; again and again something is killed, and what was acknowledged is looked for.
 *  @returns cut: batches that got no answer */
export async function killing({
  folder,
  start,
  kill,
  kills,
  seed,
}: Killing): Promise<{ account: Account; cut: number }> {
  const chance = chanceFrom(seed);
  let cut = 0;
  const account = new Account();
  const tablets: Tablet[] = Array.from({ length: TABLETS }, (_, at) => ({
    writer: newWriter(`tablet-${at + 1}`),
    token: letIn(folder, `tablet-${at + 1}`),
    open: null,
  }));
  for (let at = 0; at <= kills; at++) {
    const server = await start();
    const fresh = await fetchAfter({ address: server.first, token: tablets[0]?.token ?? "" }, account.place);
    if (fresh === null) account.faults.push(`after kill ${at} the log cannot be read (${server.first})`);
    else account.look(fresh, `after kill ${at}`);
    if (fresh === null || at === kills) {
      await server.kill();
      break;
    }
    const stop = new AbortController();
    const sending = tablets.map((tablet) => sendOn(tablet, server.first, account, chance, stop.signal));
    const before = account.acknowledged;
    for (let i = 0; i < 1000 && account.acknowledged === before; i++) await sleep(5);
    await sleep(between(chance, 0, LONGEST_MS));
    await kill(server);
    stop.abort();
    await Promise.all(sending);
    cut += tablets.filter(({ open }) => open !== null).length;
  }
  return { account, cut };
}

/** A tablet sends until no answer comes; what was not answered is sent again first, as an outbox does. */
async function sendOn(
  tablet: Tablet,
  address: string,
  account: Account,
  chance: () => number,
  signal: AbortSignal,
): Promise<void> {
  while (!signal.aborted) {
    const count = between(chance, 1, BIGGEST_BATCH);
    const batch =
      tablet.open ??
      Array.from({ length: count }, (_, i) => tablet.writer.write(noteOn(`B-${i}`, between(chance, 1, 30))));
    tablet.open = batch;
    account.sending(batch);
    if ((await send({ address, token: tablet.token }, batch)) !== "kept") return;
    account.taken(batch);
    tablet.open = null;
  }
}
