import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { startPostgres } from "../../../scripts/ordeal/postgres.ts";
import { noteOn, writerFrom } from "../../../scripts/ordeal/writer.ts";
import { newPen } from "../../../src/core/log/pen.ts";
import { EMPTY_STATE } from "../../../src/core/log/state.ts";
import type { Day } from "../../../src/core/units/day.ts";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { takeIn } from "../../../src/edge/keep/take-in.ts";
import { planCampaign } from "../../../src/edge/programme/plan-campaign.ts";
import { openProgramme, type Programme } from "../../../src/edge/programme/programme.ts";
import { openQueue, type PlanJob } from "../../../src/edge/programme/queue.ts";
import { type CampaignSummary, summaryOf } from "../../../src/edge/programme/summary.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { samplePlan } from "../../apps/sample-plan.ts";
import { aHouse } from "../../apps/server/a-house.ts";

const SUMMARY = summaryOf(samplePlan(), EMPTY_STATE);
const TODAY = "2026-06-03" as Day;
const folder = mkdtempSync(join(tmpdir(), "leafward-programme-"));
const postgres = await startPostgres(folder);
const skip = typeof postgres === "string";
if (skip) console.warn(`Skipped: PostgreSQL does not start here (${postgres}).`);
const url = skip ? "" : postgres.url;

afterAll(async () => {
  if (!skip) await postgres.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function open(): Promise<Programme> {
  const opened = await openProgramme(url);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.value;
}

/** Some entries of a campaign of that name. */
async function entries(programme: Programme, campaign: string, count: number): Promise<void> {
  const writer = writerFrom(newPen(campaign, "tablet-1"));
  await programme.keep.append(Array.from({ length: count }, () => writer.write(noteOn("B-001"))));
}

describe.skipIf(skip)("a programme", () => {
  test("lists every campaign by name with its last entry, planned or not", async () => {
    const programme = await open();
    await entries(programme, "Zennor", 3);
    await entries(programme, "Alder", 1);
    await entries(programme, "Alder Two", 2);
    const rows = await programme.campaigns();
    expect(rows.map(({ campaign }) => campaign)).toEqual(["Alder", "Alder Two", "Zennor"]);
    expect(rows[2]).toMatchObject({
      last: { kind: "noteWritten", device: "tablet-1" },
      summary: null,
      behind: true,
    });
    await programme.close();
  });

  test("keeps the summary that tells of later entries, and says when newer ones came", async () => {
    const programme = await open();
    const rowOfZennor = async () =>
      (await programme.campaigns()).find(({ campaign }) => campaign === "Zennor");
    const summary = (name: string): CampaignSummary => ({ ...SUMMARY, name });
    await programme.saveSummary("Zennor", 3, summary("later"));
    await programme.saveSummary("Zennor", 2, summary("earlier"));
    expect(await rowOfZennor()).toMatchObject({ summary: { name: "later" }, behind: false });
    await entries(programme, "Zennor", 1);
    expect(await rowOfZennor()).toMatchObject({ behind: true });
    await programme.close();
  });

  test("gives each campaign that waits to one worker, once, and again when its worker failed", async () => {
    const [one, two] = await Promise.all([openQueue(url), openQueue(url)]);
    const jobs = ["a", "b", "c", "d"].map((campaign) => ({ campaign, today: TODAY }));
    expect(await one.ask(jobs)).toBe(4);
    expect(await two.ask(jobs)).toBe(0);
    const done: string[] = [];
    let failures = 0;
    const work = ({ campaign }: PlanJob): Promise<void> => {
      if (campaign === "b" && failures === 0) return Promise.reject(new Error("the machine was too small"));
      done.push(campaign);
      return Promise.resolve();
    };
    const wish = { untilEmpty: true, signal: new AbortController().signal };
    const failed = (): void => void failures++;
    await Promise.all([one.work(work, failed, wish), two.work(work, failed, wish)]);
    await one.work(work, failed, wish);
    expect([done.sort(), failures]).toEqual([["a", "b", "c", "d"], 1]);
    await Promise.all([one.close(), two.close()]);
  });

  test("is answered to the lead by the server whose log is in it, and to no one else", async () => {
    const programme = await open();
    await programme.saveSummary("Alder", 1_000_000, SUMMARY);
    const house = await aHouse({ keep: programme.keep, programme });
    const lead = await house.enter("laptop", "lead");
    const answer = await lead.ask("/api/programme");
    expect(await answer.json()).toEqual({ campaigns: await programme.campaigns() });
    const cleaner = await house.enter("tablet-1", "cleaner");
    expect((await cleaner.ask("/api/programme")).status).toBe(403);
  }); // the house closes after the claims, and writes into the log when it does

  test("shows of a planned campaign its finish, minutes near mould, stores, and what waits for an answer", async () => {
    const programme = await open();
    const { campaign } = await readCampaignFolder("demo/nine-lamps");
    if (!campaign) throw new Error("The demo cannot be read.");
    const few = { ...campaign, items: campaign.items.slice(0, 3) };
    const { tests } = publishedRuleBook();
    await takeIn(programme.keep, few, tests, Date.UTC(2026, 5, 1));
    await planCampaign(programme, { campaign: campaign.name, today: campaign.planFrom });
    const row = (await programme.campaigns()).find((each) => each.campaign === campaign.name);
    expect(row).toMatchObject({
      behind: false,
      summary: { name: campaign.name, end: campaign.end, disagreements: 0 },
    });
    expect(row?.summary?.finish.draws).toBeGreaterThan(0);
    expect(row?.summary?.nearMould.planned).toBeLessThanOrEqual(row?.summary?.nearMould.allowed ?? 0);
    await programme.close();
  });
});
