import { basename } from "node:path";
import { campaignOf } from "../../core/log/campaign-of.ts";
import type { LogEvent } from "../../core/log/event.ts";
import { fold } from "../../core/log/fold.ts";
import { namesOn } from "../../core/log/state.ts";
import { verifyChain } from "../../core/log/verify-chain.ts";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import type { Day } from "../../core/units/day.ts";
import { damaged } from "./failures.ts";
import { faultsOf } from "./judge.ts";
import { openDatabase } from "./postgres-base.ts";
import { openFile, pageFaults } from "./sqlite-base.ts";
import { sumBeside, sumOf } from "./sums.ts";
import type { Base } from "./tables.ts";

export interface VerifiedCampaign {
  readonly campaign: string;
  readonly events: number;
  readonly devices: number;
  /** Whether its entries tell a campaign: it was founded. */
  readonly tells: boolean;
}

export interface Verified {
  readonly where: string;
  readonly campaigns: readonly VerifiedCampaign[];
  readonly problems: readonly Problem[];
}

/** Reads a log file to its last page and entry, and writes nothing. */
export async function verifyFile(path: string, today: Day): Promise<Outcome<Verified>> {
  const opened = openFile(path, "read");
  if (!opened.ok) return opened;
  const { base, file } = opened.value;
  const where = basename(path);
  const pages = pageFaults(file).map((fault) => damaged(where, fault));
  return { ok: true, value: await verified(base, [...(await sumFaults(path)), ...pages], today) };
}

export async function verifyDatabase(url: string, today: Day): Promise<Outcome<Verified>> {
  const base = await openDatabase(url);
  return base.ok ? { ok: true, value: await verified(base.value, [], today) } : base;
}

async function sumFaults(path: string): Promise<Problem[]> {
  const written = await sumBeside(path);
  if (written === null || written === (await sumOf(path))) return [];
  return [
    {
      code: "keep-sum-differs",
      severity: "stop",
      file: basename(path),
      remedy: "Take another backup, or copy this one again from where it was made.",
    },
  ];
}

async function verified(base: Base, before: readonly Problem[], today: Day): Promise<Verified> {
  const { events, problems } = await readRows(base);
  const byCampaign = new Map<string, LogEvent[]>();
  for (const event of events) {
    const list = byCampaign.get(event.campaign);
    if (list) list.push(event);
    else byCampaign.set(event.campaign, [event]);
  }
  await base.close();
  const names = [...byCampaign.keys()].sort();
  const told = names.map((campaign) => verifyCampaign(campaign, byCampaign.get(campaign) ?? [], today));
  return {
    where: base.where,
    campaigns: told.map(({ verified }) => verified),
    problems: [...before, ...problems, ...told.flatMap((each) => each.problems)],
  };
}

function verifyCampaign(campaign: string, events: readonly LogEvent[], today: Day) {
  const state = fold(events);
  const devices = new Set(events.map(({ device }) => device)).size;
  const verified = { campaign, events: events.length, devices, tells: campaignOf(state, today) !== null };
  return { verified, problems: [...verifyChain(events, wasRead), ...namesOn(state, "strange").map(strange)] };
}

/** Whoever is here was held against its hash when it was read. */
const wasRead = (): boolean => true;

const PAGE = 1000;

/** Every row that can be read. A page that cannot ends the reading: what lies behind it is not known. */
async function readRows(base: Base): Promise<{ events: LogEvent[]; problems: Problem[] }> {
  const events: LogEvent[] = [];
  const problems: Problem[] = [];
  let last = 0;
  try {
    for (;;) {
      const rows = await base.db
        .selectFrom("leafward_event")
        .selectAll()
        .where("place", ">", last)
        .orderBy("place")
        .limit(PAGE)
        .execute();
      for (const row of rows) {
        if (row.place !== last + 1) problems.push(placesMissing(base.where, last + 1, row.place - 1));
        last = row.place;
        const read = eventOf(row, base.where);
        if (read.ok) events.push(read.value);
        else problems.push(...read.problems);
      }
      if (rows.length < PAGE) break;
    }
  } catch (error) {
    const problem = base.failureOf(error);
    if (problem === null) throw error;
    problems.push({ ...problem, got: `nothing can be read after place ${last}` });
  }
  return { events, problems };
}

interface Row {
  readonly place: number;
  readonly campaign: string;
  readonly id: string;
  readonly hash: string;
  readonly device: string;
  readonly number: number;
  readonly body: string;
}

function eventOf(row: Row, where: string): Outcome<LogEvent> {
  let event: LogEvent;
  try {
    event = JSON.parse(row.body);
  } catch {
    return refused(misfiled(where, row.place));
  }
  const faults = faultsOf(event);
  if (faults.length > 0) return refused(...faults.map((fault) => ({ ...fault, file: where })));
  const { campaign, id, hash, device, number } = event;
  const isFiledRight =
    row.campaign === campaign &&
    row.id === id &&
    row.hash === hash &&
    row.device === device &&
    row.number === number;
  return isFiledRight ? { ok: true, value: event } : refused(misfiled(where, row.place));
}

const misfiled = (where: string, place: number): Problem => ({
  code: "keep-row",
  severity: "stop",
  file: where,
  got: String(place),
  remedy:
    "The file was changed by something else than Leafward. Put the last good backup in its place with npx leafward restore.",
});

const placesMissing = (where: string, from: number, to: number): Problem => ({
  code: "keep-places-missing",
  severity: "stop",
  file: where,
  got: from === to ? `${from}` : `${from} to ${to}`,
  remedy:
    "Entries were taken out of the file. Put the last good backup in its place with npx leafward restore; whatever is newer in this one is taken over.",
});

const strange = (name: string): Problem => ({
  code: "keep-strange",
  severity: "note",
  got: name,
  remedy: "They are kept and passed on. A newer Leafward will understand them.",
});
