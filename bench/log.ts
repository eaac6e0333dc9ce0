/** The log of a campaign of 20,000 items in a million events: folded from nothing, stored, resumed, and told as a campaign. Limits beside. */

import { campaignOf } from "../src/core/log/campaign-of.ts";
import type { Json } from "../src/core/log/canonical-json.ts";
import type { LogEvent } from "../src/core/log/event.ts";
import { fold } from "../src/core/log/fold.ts";
import type { Kind, Payload } from "../src/core/log/kinds.ts";
import { resume, snapshotOf } from "../src/core/log/snapshot.ts";
import type { CampaignState } from "../src/core/log/state.ts";
import { nextUlid } from "../src/core/log/ulid.ts";
import { addDays, type Day } from "../src/core/units/day.ts";

const EVENTS = 1_000_000;
const ITEMS = 20_000;
/** Events that come after the snapshot was taken: a busy day of six people. */
const REST = 2_000;
const START = "2026-06-01" as Day;
const NOON = Date.UTC(2026, 5, 1, 12);
const TESTS = [
  "growth_visible",
  "wet",
  "rub_mark",
  "media_flakes",
  "leaves_stuck",
  "erh",
  "guano",
  "old_holes",
];

export function benchLog(): void {
  const rows: [what: string, measured: string, limit: string][] = [];
  const events = [...someEvents(0, EVENTS)];
  const [whole, folding] = timed(() => fold(events));
  rows.push([`fold of ${EVENTS.toLocaleString("en")} events, from nothing`, said(folding), "5 s"]);
  events.length = 0;
  const lines = Array.from(someEvents(0, EVENTS / 10), (event) => JSON.stringify(event));
  const [, parsing] = timed(() => lines.map((line) => JSON.parse(line) as unknown).length);
  rows.push(["JSON.parse alone of a tenth of them, for comparison", said(parsing), ""]);
  lines.length = 0;
  const earlier = asFromDisk(snapshotOf(fold(someEvents(0, EVENTS - REST))));
  const rest = [...someEvents(EVENTS - REST, EVENTS)];
  const [text, storing] = timed(() => snapshotOf(whole));
  rows.push([`snapshot, ${(text.length / 1e6).toFixed(0)} MB of text`, said(storing), ""]);
  const resumes = Array.from({ length: 5 }, () => timed(() => fold(rest, stateOf(earlier))));
  const [resumed, resuming] = resumes.reduce((best, each) => (each[1][1] < best[1][1] ? each : best));
  rows.push([
    `resume and fold of the ${REST.toLocaleString("en")} events since, best of 5`,
    said(resuming),
    "300 ms",
  ]);
  rows.push(["the two states are the same", snapshotOf(resumed) === text ? "yes" : "NO", "yes"]);
  const [, telling] = timed(() => campaignOf(resumed, addDays(START, 200))?.findings.length);
  rows.push(["the campaign told from it, for care and plan", said(telling), ""]);
  console.log("                                                              wall (processor)   limit");
  for (const [what, measured, limit] of rows)
    console.log(`${what.padEnd(60)}  ${measured.padEnd(17)}  ${limit}`);
}

function stateOf(text: string): CampaignState {
  const state = resume(text);
  if (!state.ok) throw new Error("A snapshot just made could not be read.");
  return state.value;
}

/** In one piece of memory, as a file gives it. */
const asFromDisk = (text: string): string => Buffer.from(text).toString();

/** Wall seconds and processor seconds: on a busy machine they part. */
function timed<T>(work: () => T): [T, readonly [number, number]] {
  const [wall, busy] = [performance.now(), process.cpuUsage()];
  const done = work();
  const { user, system } = process.cpuUsage(busy);
  return [done, [(performance.now() - wall) / 1000, (user + system) / 1e6]];
}
const said = ([wall, busy]: readonly [number, number]): string =>
  `${wall.toFixed(2)} s (${busy.toFixed(2)} s)`;

/** Listings first, then findings, bags, moves, work, pictures and wipes in turn, from four devices. Hashes are not looked at by a fold. */
export function* someEvents(from: number, to: number): Generator<LogEvent> {
  const chance = Uint8Array.from({ length: 10 }, (_, i) => 17 * i + 3);
  const numbers = new Map<string, number>();
  let id = "";
  for (let i = 0; i < to; i++) {
    const device = `device-${i % 4}`;
    const number = (numbers.get(device) ?? 0) + 1;
    numbers.set(device, number);
    const clock = { wall: NOON + i * 20, counter: 0 };
    id = nextUlid(clock.wall, chance, id);
    const hash = "0".repeat(64);
    if (i < from) continue;
    const { kind, payload } = i === 0 ? founded : i <= ITEMS ? listed(i) : done(i);
    yield {
      ...{
        id,
        campaign: "bench",
        device,
        number,
        clock,
        who: { role: "scribe", person: "MQ" },
        kind,
        version: 1,
      },
      ...{ payload: payload as unknown as { [key: string]: Json }, seen: [], before: hash, hash },
    };
  }
}

type Said = { readonly [K in Kind]: { readonly kind: K; readonly payload: Payload<K> } }[Kind];
const common = (value: number) => ({ value, source: "common practice, no source" });
const founded: Said = {
  kind: "campaignFounded",
  payload: {
    name: "Bench",
    start: START,
    end: addDays(START, 400),
    wardLitres: 2000,
    place: { name: "Bench", climate: "hot_humid", freezer: true, fineFilterVacuum: true },
    limits: {
      exposedMinutesADay: common(180),
      exposedDaysAWeek: common(3),
      exposedDaysInARow: common(2),
      maskMinutes: common(75),
      maskBreakMinutes: common(30),
    },
    stations: [],
  },
};
const itemOf = (i: number): string => `B-${String((i * 7919) % ITEMS).padStart(5, "0")}`;
const listed = (i: number): Said => ({
  kind: "itemListed",
  payload: {
    item: itemOf(i),
    title: `Harbour ledger, volume ${i}`,
    facts: { format: "bound_volume", support: "paper_rag", media: ["ink_iron_gall"], leaves: 80 + (i % 90) },
    priority: i % 9 === 0 ? "must" : "want",
    heightMm: 300 + (i % 120),
    widthMm: 200,
    thicknessMm: 20,
  },
});

function done(i: number): Said {
  const item = itemOf(i);
  const day = addDays(START, Math.floor((i / EVENTS) * 200));
  const bag = { bag: `N-${i % 400}`, items: [item], day, minute: i % 1440 };
  const test = TESTS[Math.floor(i / ITEMS) % TESTS.length] ?? "wet";
  const work = { item, day, person: "MQ", minutes: 5 + (i % 40), exposed: i % 3 === 0 };
  switch (i % 10) {
    case 0:
      return { kind: "bagRead", payload: { ...bag, relHum: 0.5 + (i % 30) / 100, dryBulb: 27 } };
    case 1:
      return { kind: "bagWeighed", payload: { item, day, minute: i % 1440, grams: 800 + (i % 500) } };
    case 2:
      return { kind: "itemMoved", payload: { item, room: "Ward", day } };
    case 3:
      return { kind: "actDone", payload: { ...work, part: "", act: "clean" } };
    case 4:
      return {
        kind: "pictureTaken",
        payload: { item, part: "", day, shot: `f-${i}`, picture: "0f".repeat(32) },
      };
    case 5:
      return { kind: "stationWiped", payload: { station: "mould-bench", day, person: "MQ", minutes: 6 } };
    default:
      return {
        kind: "findingRecorded",
        payload: { item, part: "", test, answer: i % 5 === 0 ? "yes" : "no", day, by: "MQ" },
      };
  }
}
