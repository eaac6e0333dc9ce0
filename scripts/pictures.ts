// Writes the pictures of the page: `npx tsx scripts/pictures.ts [plan.json] [papers folder]`, after `npx vite build`.
// Without a plan it shows the invented one of the tests. `--dark` writes the dark ones beside them.
import { mkdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { chromium } from "playwright-core";
import { startServer } from "../src/apps/server/start.ts";
import type { Plan } from "../src/core/plan/plan.ts";
import { projectFolder } from "../src/edge/published.ts";
import { samplePicture, samplePlan } from "../test/apps/sample-plan.ts";
import { BROWSER_FLAGS, browserPath } from "../test/e2e/browser.ts";

const SIZES = [
  { name: "page-wide", width: 1280, height: 800 },
  { name: "page-tablet", width: 800, height: 1280 },
];

const [planFile, papersFolder = "papers"] = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const dark = process.argv.includes("--dark");
const plan = planFile === undefined ? samplePlan() : (JSON.parse(readFileSync(planFile, "utf8")) as Plan);
const picture =
  planFile === undefined ? samplePicture : readFileSync(join(dirname(planFile), "picture.svg"), "utf8");
const executablePath = browserPath();
if (executablePath === null) throw new Error("No Chrome or Chromium found: set CHROME_PATH to one.");

const folder = join(projectFolder(), "docs", "pictures");
mkdirSync(folder, { recursive: true });
const server = await startServer({ plan, picture, papersFolder, port: 0 });
const browser = await chromium.launch({ executablePath, args: BROWSER_FLAGS });
for (const { name, width, height } of SIZES) {
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme: dark ? "dark" : "light",
    locale: "en-GB",
  });
  await page.goto(server.address);
  await page.getByRole("heading", { level: 1 }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: join(folder, `${name}${dark ? "-dark" : ""}.png`) });
}
await browser.close();
await server.close();
