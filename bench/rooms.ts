import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type CDPSession, chromium, type Page } from "playwright-core";
import { type LogServer, startLogServer } from "../src/apps/server/serve-log.ts";
import { eventsFrom } from "../src/core/log/events-from.ts";
import { newPen } from "../src/core/log/pen.ts";
import { openFileKeep } from "../src/edge/keep/open-keep.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { makeCampaign } from "./make-campaign.ts";

const ITEMS = Number(process.env.LEAFWARD_BENCH_ITEMS ?? 20_000);
/** A tablet of the cheaper kind against this machine. */
const SLOWER = 4;

/** The rooms with a large campaign on a slow tablet, beside a plain page with a table of the same rows. */
export async function benchRooms(): Promise<void> {
  const executablePath = process.env.CHROME_PATH ?? "/usr/bin/chromium";
  const folder = mkdtempSync(join(tmpdir(), "leafward-bench-rooms-"));
  const campaign = makeCampaign({ items: ITEMS, people: 12, weeks: 52, seed: 1 });
  const opened = await openFileKeep(join(folder, "log.leafward.db"));
  if (!opened.ok) throw new Error("no log");
  const keep = opened.value;
  const moment = { now: Date.now(), random: new Uint8Array(10) };
  const pen = newPen(campaign.name, "sheets-bench");
  const { events } = eventsFrom(campaign, pen, { role: "lead" }, moment, publishedRuleBook().tests);
  for (let at = 0; at < events.length; at += 5000) await keep.append(events.slice(at, at + 5000));
  const server = await startLogServer({
    ...{ folder, keep, campaign: campaign.name, port: 0, pretendDay: campaign.planFrom },
    requestsAMinute: 1_000_000,
  });
  console.log(`${ITEMS} items, ${events.length} entries; processor slowed ${SLOWER} times`);
  const context = await chromium.launchPersistentContext(join(folder, "browser"), {
    executablePath,
    args: ["--headless", "--no-sandbox", "--disable-gpu"],
    viewport: { width: 800, height: 1280 },
    locale: "en-GB",
  });
  try {
    const page = await context.newPage();
    await firstVisit(page, server);
    const slow = await slowed(page);
    await reload(page);
    await slow.detach();
  } finally {
    await context.close();
    await server.close();
    await keep.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function firstVisit(page: Page, server: LogServer): Promise<void> {
  const before = performance.now();
  await page.goto(`${server.address}/#in=${server.leadCode("bench").code}`);
  await page.locator(".today-floor").waitFor({ timeout: 300_000 });
  say("first visit, campaign fetched", performance.now() - before);
  await page.waitForTimeout(5000);
}

async function slowed(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  return session;
}

async function reload(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const seen = ((globalThis as unknown as { seen: Record<string, number> }).seen ??= {});
    new MutationObserver(() => {
      for (const each of [".top", ".today-floor"])
        if (seen[each] === undefined && document.querySelector(each))
          requestAnimationFrame(() => {
            seen[each] ??= performance.now();
          });
    }).observe(document, { childList: true, subtree: true });
  });
  await page.reload();
  await page.locator(".today-floor").waitFor({ timeout: 300_000 });
  await page.waitForTimeout(300);
  const seen = await page.evaluate(() => (globalThis as unknown as { seen: Record<string, number> }).seen);
  for (const [what, ms] of Object.entries(seen)) say(`reload to ${what}`, ms);
}

const say = (what: string, ms: number): void =>
  console.log(`${what.padEnd(44)} ${Math.round(ms).toLocaleString("en-GB")} ms`);
