import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { checkFolder } from "../../../src/apps/cli/check.ts";
import { keepSheets } from "../../../src/apps/cli/keep.ts";
import { whyItem } from "../../../src/apps/cli/why.ts";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import { penOf } from "../../../src/core/log/pen.ts";
import { verifyChain } from "../../../src/core/log/verify-chain.ts";
import { writeEvent } from "../../../src/core/log/write-event.ts";
import { newCampaignFiles } from "../../../src/edge/intake/new-campaign.ts";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { codeOf, openCampaign } from "../../../src/edge/keep/open-campaign.ts";
import { openKeep } from "../../../src/edge/keep/open-keep.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { day } from "../../core/log/examples.ts";
import { deviceCalled, sealed } from "../../core/log/some-events.ts";
import { eventsOf } from "./keep-claims.ts";

const root = mkdtempSync(join(tmpdir(), "leafward-sheets-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** The campaign a new folder begins with: a few invented items, people and stores. */
const fresh = join(root, "fresh");
beforeAll(() => {
  mkdirSync(fresh);
  for (const [name, text] of newCampaignFiles()) writeFileSync(join(fresh, name), text);
});

let count = 0;
async function taken(): Promise<string> {
  const folder = join(root, `${++count}`);
  cpSync(fresh, folder, { recursive: true });
  expect((await keep(folder)).status).toBe(0);
  return folder;
}

async function said(command: (say: (line: string) => void) => Promise<number>) {
  const lines: string[] = [];
  const status = await command((line) => lines.push(line));
  return { status, text: lines.join("\n") };
}
const keep = (folder: string, ...more: string[]) => said((say) => keepSheets([folder, ...more], say, say));

function change(folder: string, file: string, from: string, to: string): void {
  const path = join(folder, file);
  const text = readFileSync(path, "utf8");
  const changed = text.replace(from, to);
  expect(changed).not.toBe(text);
  writeFileSync(path, changed);
}

/** What the log adds of its own, the state of items, left out. */
const compared = (campaign: Campaign | null) =>
  campaign && { ...campaign, items: campaign.items.map(({ state: _, ...item }) => item) };
const bySheets = async (folder: string) => compared((await readCampaignFolder(folder)).campaign);
const byLog = async (folder: string) => compared((await openCampaign(folder)).campaign);
const lists = (campaign: ReturnType<typeof compared>) =>
  campaign &&
  Object.fromEntries(
    Object.entries(campaign).map(([name, value]) => [
      name,
      Array.isArray(value)
        ? value.map((each) => JSON.stringify(each, Object.keys(each).sort())).sort()
        : value,
    ]),
  );

async function eventsIn(folder: string) {
  const opened = await openKeep(folder, "read");
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const [campaign = ""] = await opened.value.campaigns();
  const events = await eventsOf(opened.value, campaign);
  await opened.value.close();
  return events;
}

describe("a folder with a log", () => {
  test("tells the same campaign as its sheets, in the same order", async () => {
    const folder = await taken();
    expect((await openCampaign(folder)).log).toMatchObject({ where: "log.leafward.db" });
    expect(await byLog(folder)).toEqual(await bySheets(folder));
  });

  test("a second taking in writes nothing", async () => {
    const folder = await taken();
    const before = await eventsIn(folder);
    expect((await keep(folder)).text).toContain("says what the sheets say");
    expect(await eventsIn(folder)).toEqual(before);
  });

  test("whose sheets and a tablet contradict names both answers and how to settle them, until they are settled", async () => {
    const folder = await taken();
    const events = await eventsIn(folder);
    const found = events.find(({ kind, payload }) => kind === "findingRecorded" && payload.answer === "no");
    if (!found) throw new Error("The sheets of a new folder have an answer.");
    const { campaign, payload } = found;
    const tablet = deviceCalled("tablet-3");
    const write = async (answer: string, seen: readonly string[]) => {
      const note = tablet.write({
        kind: "findingRecorded",
        payload: { ...payload, answer, by: "TL" },
        seen,
      });
      const event = sealed({ ...note, campaign });
      const opened = await openKeep(folder);
      if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
      expect(await opened.value.append([event])).toMatchObject({ added: 1 });
      await opened.value.close();
      return event;
    };
    const other = await write("yes", []);
    const checked = await said((say) => checkFolder(folder, say));
    for (const { status, text } of [await keep(folder), checked]) {
      const words = text.replaceAll(/\s+/g, " ");
      expect(status).toBe(1);
      expect(words).toContain("One answer contradicts another");
      expect(words).toMatch(/no \([^)]*in the sheets\)/);
      expect(words).toMatch(/yes \([^)]*TL, on tablet-3\)/);
      expect(words).toContain(`${payload.item} · `);
      expect(words).toContain("look again together");
    }
    await write("yes", [found.id, other.id]);
    expect((await keep(folder)).text).not.toContain("contradict");
  });

  test("that is begun by several at once holds each row once, and so does a change", async () => {
    const folder = join(root, `${++count}`);
    cpSync(fresh, folder, { recursive: true });
    const atOnce = async (): Promise<void> => {
      const all = await Promise.all([keep(folder), keep(folder), keep(folder)]);
      expect(all.map(({ status }) => status)).toEqual([0, 0, 0]);
    };
    await atOnce();
    const alone = await eventsIn(await taken());
    expect(await eventsIn(folder)).toHaveLength(alone.length);
    change(folder, "people.csv", "AN,Ana,", "AN,Anna,");
    await atOnce();
    const corrections = (await eventsIn(folder)).filter(({ kind }) => kind === "eventCorrected");
    expect(corrections).toHaveLength(1);
  });

  test("goes by the log when a sheet was changed since, says so, and follows once it is taken in", async () => {
    const folder = await taken();
    const before = await byLog(folder);
    changeEverything(folder);
    const opened = await openCampaign(folder);
    expect(compared(opened.campaign)).toEqual({ ...before, planFrom: opened.campaign?.planFrom });
    expect(opened.problems).toContainEqual(
      expect.objectContaining({ code: "sheets-differ", severity: "note" }),
    );
    expect((await keep(folder, "--look")).text).toContain("Nothing was written");
    await keep(folder);
    expect(lists(await byLog(folder))).toEqual(lists(await bySheets(folder)));
    expect((await openCampaign(folder)).problems.map(({ code }) => code)).not.toContain("sheets-differ");
    expect(verifyChain(await eventsIn(folder))).toEqual([]);
  });

  test("there and back again: a row changed and changed back stands as at first", async () => {
    const folder = await taken();
    const before = await bySheets(folder);
    changeEverything(folder);
    await keep(folder);
    cpSync(fresh, folder, { recursive: true });
    await keep(folder);
    expect(lists(await byLog(folder))).toEqual(lists(before));
  });

  test("what people wrote elsewhere stays when a sheet is taken in", async () => {
    const folder = await taken();
    const opened = await openKeep(folder);
    if (!opened.ok) throw new Error();
    const events = await eventsIn(folder);
    const item = (await bySheets(folder))?.items[0]?.id ?? "";
    const written = writeEvent(
      penOf(events, events[0]?.campaign ?? "", "tablet-1"),
      {
        kind: "findingRecorded",
        payload: { item, part: "", test: "wet", answer: "unsure", day: day("2026-06-20") },
        who: { role: "cleaner" },
      },
      { now: Date.UTC(2026, 5, 20), random: new Uint8Array(10) },
      publishedRuleBook().tests,
    );
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    await opened.value.append([written.value.event]);
    await opened.value.close();
    changeEverything(folder);
    await keep(folder);
    const found = (await byLog(folder))?.findings ?? [];
    expect(found).toContainEqual({ item, part: "", test: "wet", answer: "unsure", day: "2026-06-20" });
  });

  test("what a newer Leafward took from the sheets stays when an older one takes them in", async () => {
    const folder = await taken();
    const opened = await openKeep(folder);
    if (!opened.ok) throw new Error();
    const campaign = (await eventsIn(folder))[0]?.campaign ?? "";
    const { hash: _, ...rest } = deviceCalled("sheets-01020304").write({
      kind: "leafPressed",
      payload: { item: "x" },
    });
    expect(await opened.value.append([sealed({ ...rest, campaign })])).toMatchObject({ added: 1 });
    await opened.value.close();
    expect((await keep(folder)).text).toContain("says what the sheets say");
  });

  test("a name cut within a letter is cut before it", () => {
    expect(codeOf({ name: `${"a".repeat(79)}🌿` })).toBe("a".repeat(79));
  });

  test("works without its sheets", async () => {
    const folder = await taken();
    const before = await bySheets(folder);
    for (const name of newCampaignFiles().keys()) rmSync(join(folder, name));
    const item = before?.items[0]?.id ?? "";
    const { status, text } = await said((say) => whyItem(folder, item, say, say));
    expect(status).toBe(0);
    expect(text).toContain(item);
    expect((await openCampaign(folder)).problems).toEqual([]);
  });

  test("is never passed over when its log cannot be read", async () => {
    const folder = await taken();
    writeFileSync(join(folder, "log.leafward.db"), "spoilt");
    const opened = await openCampaign(folder);
    expect(opened.campaign).toBeNull();
    expect(opened.problems[0]).toMatchObject({ code: "keep-not-ours" });
  });
});

function changeEverything(folder: string): void {
  const lines = (file: string) => readFileSync(join(folder, file), "utf8").trimEnd().split("\n");
  change(folder, "campaign.json", '"name": "', '"name": "New ');
  change(folder, "campaign.json", '"minutesADay": 360', '"minutesADay": 300');
  change(folder, "items.csv", "Rent roll", "Rent rolls");
  change(folder, "findings.csv", "trace", "colour");
  for (const file of ["items.csv", "findings.csv", "people.csv", "calendar.csv", "stores.csv"]) {
    const [head = "", ...rows] = lines(file);
    writeFileSync(join(folder, file), `${[head, ...rows.slice(0, -1)].join("\n")}\n`);
  }
}
