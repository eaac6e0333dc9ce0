/** A programme of a thousand campaigns: how long its list takes. `LEAFWARD_BENCH_ENTRIES` entries in each; 1,000 unless told, 10,000 take minutes to fill. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { startPostgres } from "../scripts/ordeal/postgres.ts";
import { newWriter, noteOn } from "../scripts/ordeal/writer.ts";
import { addDays, type Day } from "../src/core/units/day.ts";
import { openProgramme, type Programme } from "../src/edge/programme/programme.ts";
import type { CampaignSummary } from "../src/edge/programme/summary.ts";

const CAMPAIGNS = 1000;
const ENTRIES = Number(process.env.LEAFWARD_BENCH_ENTRIES ?? 1000);
const LISTS = 200;
const LIMIT_MS = 200;

export async function benchProgramme(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "leafward-bench-"));
  const postgres = await startPostgres(folder);
  if (typeof postgres === "string")
    return console.log(`Skipped: PostgreSQL does not start here (${postgres}).`);
  try {
    await bench(postgres.url);
  } finally {
    await postgres.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function bench(url: string): Promise<void> {
  const opened = await openProgramme(url);
  if (!opened.ok) throw new Error(opened.problems[0]?.code);
  const programme = opened.value;
  await fill(url);
  for (let at = 1; at <= CAMPAIGNS; at++) await programme.saveSummary(nameOf(at), at, SUMMARY);
  const waits: number[] = [];
  for (let i = 0; i < LISTS; i++) waits.push(await timeOf(programme));
  await programme.close();
  const [first = 0] = waits;
  waits.sort((a, b) => a - b);
  const at = (share: number): string => `${(waits[Math.floor(share * (LISTS - 1))] ?? 0).toFixed(0)} ms`;
  console.log(
    `${CAMPAIGNS.toLocaleString("en")} campaigns of ${ENTRIES.toLocaleString("en")} entries listed ${LISTS} times: the first in ${first.toFixed(0)} ms, half within ${at(0.5)}, 95 % within ${at(0.95)} (limit ${LIMIT_MS} ms)`,
  );
}

async function timeOf(programme: Programme): Promise<number> {
  const began = performance.now();
  const { length } = await programme.campaigns();
  if (length !== CAMPAIGNS) throw new Error(`${length} campaigns were listed`);
  return performance.now() - began;
}

const nameOf = (at: number): string => `Campaign ${String(at).padStart(4, "0")}`;

/** Entries of all campaigns in turn, as they would come; written past the keep, which is not what is measured. */
async function fill(url: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  const body = JSON.stringify(newWriter("tablet-1").write(noteOn("B-001")));
  await client.query("set synchronous_commit to off");
  await client.query(
    `insert into leafward_event (place, campaign, id, hash, device, number, body)
     select (e - 1) * ${CAMPAIGNS} + c, 'Campaign ' || lpad(c::text, 4, '0'), lpad(e::text, 26, '0'), repeat('0', 64), 'tablet-1', e, $1
     from generate_series(1, ${ENTRIES}) e, generate_series(1, ${CAMPAIGNS}) c`,
    [body],
  );
  await client.query("analyze leafward_event");
  await client.end();
}

const START = "2026-06-01" as Day;
const SUMMARY: CampaignSummary = {
  ...{ name: "Harbour papers", place: "Saltmere", planFrom: START, end: addDays(START, 200), routed: 900 },
  finish: {
    ...{
      p10: addDays(START, 150),
      p50: addDays(START, 160),
      p90: addDays(START, 175),
      draws: 200,
      unfinished: 3,
    },
    boxed: { p10: 880, p50: 890, p90: 900 },
  },
  nearMould: { planned: 640, allowed: 2700 },
  runOut: ["Ethanol, 70 %", "Wipes", "Polyethylene bags"].map((name, i) => ({
    name,
    day: addDays(START, 30 + i),
  })),
  ...{ lateOrders: 1, questions: ["Q-07", "Q-09"], setAside: 18, disagreements: 2 },
};
