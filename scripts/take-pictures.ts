import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { PageOptions } from "../src/apps/server/page.ts";
import type { Plan } from "../src/core/plan/plan.ts";
import { projectFolder } from "../src/edge/published.ts";
import { aRealHouse, LAPTOP, TABLET } from "../test/e2e/rooms/a-house.ts";

/* Pictures of every room for the guide, laptop and tablet: npx tsx scripts/take-pictures.ts, after npx leafward plan demo/nine-lamps */

const DEMO = "nine-lamps";
const ROOMS = [
  "today",
  "door",
  "ward",
  "bench",
  "camera",
  "shelf",
  "plan",
  "stores",
  "people",
  "climate",
  "questions",
  "settings",
];

const folder = join(projectFolder(), "docs", "pictures");
const house = await aRealHouse(DEMO, planned().plan.planFrom, planned());
mkdirSync(folder, { recursive: true });
for (const viewport of [LAPTOP, TABLET]) {
  const { page, go, workAs, context } = await house.enter("lead", { viewport });
  await workAs((await page.getByLabel("Working here").locator("option").nth(1).getAttribute("value")) ?? "");
  for (const room of ROOMS) {
    await go(`#/${room}`);
    await page.waitForTimeout(1500); // curves and pictures are drawn
    await page.screenshot({ path: join(folder, `${room}-${viewport.width}.png`) });
  }
  await context.close();
}
await house.close();

function planned(): PageOptions {
  const out = join(projectFolder(), "out", DEMO);
  return {
    plan: JSON.parse(readFileSync(join(out, "plan.json"), "utf8")) as Plan, // written by us
    picture: readFileSync(join(out, "picture.svg"), "utf8"),
    papersFolder: join(out, "papers"),
  };
}
