import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { type RunningServer, startServer } from "../../src/apps/server/start.ts";
import type { Plan } from "../../src/core/plan/plan.ts";
import { crowdedPlan, emptyPlan, samplePicture, samplePlan } from "../apps/sample-plan.ts";
import { BROWSER_FLAGS, browserPath } from "./browser.ts";
import { buildPageIfMissing } from "./built-page.ts";

const executablePath = browserPath();
if (executablePath === null)
  console.warn("Skipped: no Chrome or Chromium found for the page's tests. Set CHROME_PATH to one.");

describe.skipIf(executablePath === null)("the page, in a real browser", () => {
  const papersFolder = mkdtempSync(join(tmpdir(), "leafward-page-"));
  let browser: Browser;
  let server: RunningServer;
  let complaints: string[] = [];

  beforeAll(async () => {
    await buildPageIfMissing();
    writeFileSync(join(papersFolder, "day-sheet-PA.pdf"), "%PDF-1.7");
    server = await startServer({ plan: samplePlan(), picture: samplePicture, papersFolder, port: 0 });
    browser = await chromium.launch({ executablePath: executablePath ?? "", args: BROWSER_FLAGS });
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
    rmSync(papersFolder, { recursive: true, force: true });
  });
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close();
    complaints = [];
  });

  /** The page with everything the browser complains of: errors, failed requests, broken policy. */
  async function opened(options: BrowserContextOptions = {}, address = server.address): Promise<Page> {
    const context = await browser.newContext({
      viewport: { width: 1280, height: 800 },
      locale: "en-GB",
      ...options,
    });
    const page = await context.newPage();
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) complaints.push(message.text());
    });
    page.on("pageerror", (error) => complaints.push(String(error)));
    page.on("requestfailed", (request) => complaints.push(`failed: ${request.url()}`));
    page.on("request", (request) => {
      if (!request.url().startsWith(address)) complaints.push(`asked elsewhere: ${request.url()}`);
    });
    await page.goto(address);
    await page.getByRole("heading", { level: 1 }).waitFor();
    await page.evaluate(async () => {
      await document.fonts.ready;
    });
    return page;
  }

  async function withPlan(plan: Plan, look: (page: Page) => Promise<void>): Promise<void> {
    const other = await startServer({
      plan,
      picture: samplePicture,
      papersFolder: join(papersFolder, "none"),
      port: 0,
    });
    try {
      await look(await opened({}, other.address));
    } finally {
      await other.close();
    }
  }

  const part = (page: Page, name: string) => page.getByRole("region", { name, exact: true }).first();
  const overflow = (page: Page): Promise<number> =>
    page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  const axe = async (page: Page) =>
    (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [
      id,
      nodes.map(({ target }) => String(target)),
    ]);

  test("opens without an error, a broken policy or a request to anywhere else", async () => {
    const page = await opened();
    await page.getByRole("textbox").or(page.getByRole("searchbox")).first().fill("SR-0430");
    await page.getByRole("radio", { name: "Table" }).click();
    expect(complaints).toEqual([]);
    expect(await page.title()).toBe("Saltmere Reach Harbour Papers · Leafward");
  });

  test("answers first: the range of the finish, what is boxed, and how many items have no place", async () => {
    const page = await opened();
    const answer = part(page, "When it will be finished");
    await expect.poll(() => answer.innerText()).toContain("As likely as not, finished by 9 February 2027.");
    const text = await answer.innerText();
    for (const words of [
      "22 January 2027",
      "9 February 2027",
      "5 March 2027",
      "78 items have no place",
      "2.9%",
    ])
      expect(text).toContain(words);
  });

  test("shows the five rooms in the order they are walked, with counts and waits", async () => {
    const page = await opened();
    const rooms = part(page, "The five rooms");
    expect(await rooms.getByRole("heading", { level: 3 }).allInnerTexts()).toEqual([
      "Door",
      "Ward",
      "Bench",
      "Camera",
      "Shelf",
    ]);
    for (const { now, wait } of samplePlan().rooms) {
      const text = await rooms.innerText();
      expect(text).toContain(String(now));
      expect(text).toContain(wait);
    }
  });

  test("shows every person's two weeks, as a picture that a screen reader is told and as a table", async () => {
    const page = await opened();
    const people = part(page, "The coming two weeks");
    const told = await people
      .getByRole("img")
      .evaluateAll((all) => all.map((each) => each.ariaLabel).join(" "));
    await people.getByRole("radio", { name: "Table" }).click();
    const table = await people.getByRole("table").innerText();
    for (const { name } of samplePlan().people) {
      expect(told).toContain(name);
      expect(table).toContain(name);
    }
    expect(told).toContain("228 mins of 240 mins");
    expect(table).toContain("228 mins of 240 mins");
  });

  test("says of people on clean work nothing but “clean work this week”", async () => {
    const page = await opened();
    const text = await page.locator("body").innerText();
    expect(text).toContain("clean work this week");
    expect(text).not.toMatch(/pregnan|asthma|allerg|medical|unfit|fit for|illness|health/i);
  });

  test("gives each item without a place its reason, rule, source and whom to ask, and more of them on a press", async () => {
    const page = await opened();
    const left = part(page, "Items without a place");
    const text = await left.innerText();
    for (const words of ["SR-1461", "Rule H01", "KODAK-H182", "Possible nitrate", "must be done"])
      expect(text).toContain(words);
    expect(text).not.toContain("SR-1130");
    await left
      .getByRole("button", { name: /^Show 20 more/ })
      .last()
      .click();
    await expect.poll(() => left.innerText()).toContain("SR-1130");
  });

  test("finds an item by its number, and says when none matches", async () => {
    const page = await opened();
    const left = part(page, "Items without a place");
    await left.getByRole("searchbox").fill("sr-1130");
    await expect.poll(() => left.getByRole("status").innerText()).toContain("1 item of 78");
    await left.getByRole("searchbox").fill("no such thing");
    await expect.poll(() => left.innerText()).toContain("No item matches.");
  });

  test("lists orders with lateness in words, the first day in order with its wipe-downs, and the papers", async () => {
    const page = await opened();
    expect(await part(page, "Orders to send").innerText()).toContain("late already");
    const sheets = part(page, "First day’s sheets");

    const pico = await sheets.innerText();
    expect(pico.indexOf("SR-0310")).toBeLessThan(pico.indexOf("SR-0412"));
    expect(pico).toContain("wipe the station down");
    expect(pico).toContain("08:30");
    const link = part(page, "Papers to print").getByRole("link");
    const address = new URL((await link.getAttribute("href")) ?? "", page.url()).href;
    expect((await page.request.get(address)).status()).toBe(200);
  });

  test.each(["light", "dark"] as const)("has no fault that axe can find, %s", async (colorScheme) => {
    const page = await opened({ colorScheme });

    expect(await axe(page)).toEqual([]);
    await page.getByRole("radio", { name: "Table" }).click();
    expect(await axe(page)).toEqual([]);
  });

  test.each([
    [1280, 800],
    [800, 1280],
    [390, 844],
  ])(
    "never scrolls sideways at %d × %d, and every target is large enough for a glove",
    async (width, height) => {
      const page = await opened({ viewport: { width, height } });
      expect(await overflow(page)).toBe(0);
      const small = await page
        .locator("main button, main input, main summary, nav a, main li a, main [role=radio]")
        .evaluateAll((all) =>
          all
            .filter((each) => each.checkVisibility())
            .map((each) => ({ box: each.getBoundingClientRect(), words: each.textContent }))
            .filter(({ box }) => box.height < 44 || box.width < 44)
            .map(({ words, box }) => `${words} ${box.width} × ${box.height}`),
        );
      expect(small).toEqual([]);
    },
  );

  test("can be mirrored for a language that runs from right to left", async () => {
    const page = await opened();
    await page.evaluate(() => document.documentElement.setAttribute("dir", "rtl"));
    expect(await overflow(page)).toBe(0);
  });

  test("can be walked by keyboard alone, and the focus is always seen", async () => {
    const page = await opened();
    const seen: string[] = [];
    for (let step = 0; step < 60; step++) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const here = document.activeElement;
        if (here === null || here === document.body) return null;
        const marked = [here, here.parentElement].some(
          (each) => each !== null && getComputedStyle(each).outlineStyle !== "none",
        );
        return {
          words: `${here.ariaLabel ?? ""} ${here.textContent ?? ""}`.trim(),
          tag: here.tagName,
          marked,
        };
      });
      if (at === null) break;
      expect(at.marked, `${at.tag} ${at.words.slice(0, 40)}`).toBe(true);
      seen.push(`${at.tag} ${at.words}`);
    }
    const walk = seen.join("\n");
    for (const words of [
      "Skip to the finish date",
      "People",
      "Picture",
      "INPUT",
      "Show",
      "SUMMARY",
      "day sheet PA",
    ])
      expect(walk).toContain(words);
    expect(seen[0]).toContain("Skip to the finish date");
  });

  test("changes picture for table with the keyboard", async () => {
    const page = await opened();
    await page.getByRole("radio", { name: "Picture" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Space");
    await expect.poll(() => part(page, "The coming two weeks").getByRole("table").count()).toBe(1);
  });

  test("shows the same after a reload", async () => {
    const page = await opened();
    const before = await page.locator("main").innerText();
    await page.reload();
    await page.getByRole("heading", { level: 1 }).waitFor();
    expect(await page.locator("main").innerText()).toBe(before);
    expect(complaints).toEqual([]);
  });

  test("writes dates and numbers the reader's way", async () => {
    const page = await opened({ locale: "de-DE" });
    const text = await page.locator("body").innerText();
    expect(text).toContain("9. Februar 2027");
    expect(text).toContain("1.480");
  });

  test("says what is missing when there is no plan yet, part by part", async () => {
    await withPlan(emptyPlan(), async (page) => {
      const text = await page.locator("main").innerText();
      for (const words of [
        "No finish date yet",
        "The plan counts no rooms yet",
        "Nothing holds the date back",
        "Nobody is in the plan for these two weeks",
        "Every item has its place",
        "Nothing to order",
        "No sheets for the first day",
        "No papers written yet",
      ])
        expect(text).toContain(words);
      expect(await axe(page)).toEqual([]);
      expect(complaints).toEqual([]);
    });
  });

  test("stays whole with twelve people and 2,400 items left out", async () => {
    await withPlan(crowdedPlan(), async (page) => {
      expect(await overflow(page)).toBe(0);
      await page.getByRole("searchbox").fill("file 2399");
      await expect.poll(() => page.getByRole("status").first().innerText()).toContain("1 item of 2,400");
    });
  });

  test("says what to do when the server is gone, and comes back on a press", async () => {
    const page = await browser.newPage({ locale: "en-GB" });
    await page.route("**/api/page", (route) => route.abort());
    await page.goto(server.address);
    await page.getByRole("heading", { name: "The plan could not be opened" }).waitFor();
    await page.unroute("**/api/page");
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByRole("heading", { name: "Saltmere Reach Harbour Papers" }).waitFor();
  });

  test("prints without its controls", async () => {
    const page = await opened();
    await page.emulateMedia({ media: "print" });
    for (const control of await page.locator("nav, main button, main input").all())
      expect(await control.isVisible()).toBe(false);
    expect(await page.getByRole("heading", { level: 1 }).isVisible()).toBe(true);
  });
});
