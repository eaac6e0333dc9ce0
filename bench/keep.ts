/** Fifty tablets on one server, beside the raw rate of the same disk; and a log of a million events opened cold and by its snapshot. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "@photostructure/sqlite";
import { letIn, send } from "../scripts/ordeal/link.ts";
import { startServer } from "../scripts/ordeal/process.ts";
import { newWriter, noteOn } from "../scripts/ordeal/writer.ts";
import { hashOf, type LogEvent } from "../src/core/log/event.ts";
import { openFileKeep } from "../src/edge/keep/open-keep.ts";
import { openDesk } from "../src/edge/serve/log-desk.ts";
import { someEvents } from "./log.ts";

const TABLETS = 50;
const LASTING_MS = 8000;
const RAW_MS = 3000;
const EVENTS = 1_000_000;
/** Entries since the state was saved: a busy day of six people. */
const REST = 2000;

type Row = readonly [what: string, measured: string, limit?: string];

export async function benchKeep(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "leafward-bench-"));
  try {
    const raw = rawRate(join(folder, "raw.db"));
    tell(["one durable insert after the other, the same SQLite and disk", `${said(raw)} a second`]);
    for (const each of [1, 20]) await benchTablets(folder, each, raw);
    await benchOpening(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function benchTablets(folder: string, each: number, raw: number): Promise<void> {
  const names = Array.from({ length: TABLETS }, (_, at) => `tablet-${each}-${at}`);
  const tokens = names.map((name) => letIn(folder, name));
  const server = await startServer(folder);
  const waits: number[] = [];
  const end = performance.now() + LASTING_MS;
  await Promise.all(
    names.map(async (name, at) => {
      const writer = newWriter(name);
      const line = { address: server.first, token: tokens[at] ?? "" };
      while (performance.now() < end) {
        const batch = Array.from({ length: each }, (_, i) => writer.write(noteOn(`B-${i}`)));
        const sent = performance.now();
        const answer = await send(line, batch);
        if (answer !== "kept") throw new Error(`A batch was not kept: ${answer}`);
        waits.push(performance.now() - sent);
      }
    }),
  );
  await server.kill();
  waits.sort((a, b) => a - b);
  const rate = (waits.length * each * 1000) / LASTING_MS;
  const at = (share: number): string =>
    `${(waits[Math.floor(share * (waits.length - 1))] ?? 0).toFixed(0)} ms`;
  const words = each === 1 ? "an entry at a time" : `${each} entries at a time`;
  tell([
    `${TABLETS} tablets, ${words}: acknowledged, written and asked on the same machine`,
    `${said(rate)} a second, ${(rate / raw).toFixed(2)} of the raw rate; half within ${at(0.5)}, 99 % within ${at(0.99)}`,
  ]);
}

/** Inserts a second, each waiting for the disk as a commit of the log does. */
function rawRate(path: string): number {
  const file = new DatabaseSync(path);
  file.exec(
    "pragma journal_mode = wal; pragma synchronous = full; create table event (place integer primary key, body text)",
  );
  const insert = file.prepare("insert into event (body) values (?)");
  const body = JSON.stringify(newWriter("tablet-1").write(noteOn("B-1")));
  let count = 0;
  for (const end = performance.now() + RAW_MS; performance.now() < end; count++) insert.run(body);
  file.close();
  return (count * 1000) / RAW_MS;
}

async function benchOpening(folder: string): Promise<void> {
  const path = join(folder, "million.db");
  await fill(path, 0, EVENTS - REST);
  const cold = await opening(path);
  tell([`${said(EVENTS - REST)} events opened cold: read, parsed, folded`, cold, "5 s"]);
  await fill(path, EVENTS - REST, EVENTS);
  const resumed = await opening(path);
  tell([
    `the same from its saved state, and the ${said(REST)} since held against their hashes`,
    resumed,
    "0.3 s",
  ]);
}

/** How long a server needs for the state, from opening the file on; it saves the state when it closes. */
async function opening(path: string): Promise<string> {
  const [began, busy] = [performance.now(), process.cpuUsage()];
  const opened = await openFileKeep(path);
  if (!opened.ok) throw new Error(opened.problems[0]?.code);
  const desk = await openDesk(opened.value, "bench");
  const { place } = await desk.state();
  const { user, system } = process.cpuUsage(busy);
  const seconds = (performance.now() - began) / 1000;
  await desk.close();
  await opened.value.close();
  return `${seconds.toFixed(2)} s (${((user + system) / 1e6).toFixed(2)} s of processor), up to place ${said(place)}`;
}

/** Past the keep's own judging of entries, which is not what is measured. */
async function fill(path: string, from: number, to: number): Promise<void> {
  const opened = await openFileKeep(path);
  if (opened.ok) await opened.value.close();
  const file = new DatabaseSync(path);
  file.exec("pragma synchronous = off; begin");
  const insert = file.prepare("insert into leafward_event values (?, ?, ?, ?, ?, ?, ?)");
  let place = from;
  for (const each of someEvents(from, to)) {
    const event: LogEvent = { ...each, hash: hashOf(each) };
    const { campaign, id, hash, device, number } = event;
    insert.run(++place, campaign, id, hash, device, number, JSON.stringify(event));
  }
  file.exec("commit");
  file.close();
}

const tell = ([what, measured, limit]: Row): void =>
  console.log(`${what.padEnd(76)}  ${measured}${limit === undefined ? "" : `   limit ${limit}`}`);
const said = (n: number): string => Math.round(n).toLocaleString("en-GB");
