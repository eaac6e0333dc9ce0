import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { makeAll } from "../../demo/make/all.ts";
import { tally, tallyRows } from "../../demo/make/tally.ts";
import type { Campaign, Item } from "../../src/core/items/campaign.ts";
import { readCampaignFolder } from "../../src/edge/intake/read-campaign.ts";
import { projectFolder } from "../../src/edge/published.ts";

const demo = join(projectFolder(), "demo");
const FOLDERS = ["saltmere", "nine-lamps", "marabelle"] as const;
const again = mkdtempSync(join(tmpdir(), "leafward-demo-"));
makeAll(again);
afterAll(() => rmSync(again, { recursive: true }));

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(folder, name)).isFile())
    .sort();

async function campaignOf(folder: string): Promise<Campaign> {
  const { campaign, problems } = await readCampaignFolder(join(demo, folder));
  expect(problems.filter((each) => each.severity !== "note")).toEqual([]);
  if (!campaign) throw new Error(`${folder} cannot be read.`);
  return campaign;
}

/** Items with this answer on the whole item. */
const answered = ({ findings }: Campaign, testName: string, ...answers: string[]): Set<string> =>
  new Set(
    findings
      .filter((each) => each.part === "" && each.test === testName && answers.includes(String(each.answer)))
      .map((each) => each.item),
  );
const among = (items: readonly Item[], ids: ReadonlySet<string>): number =>
  items.filter((item) => ids.has(item.id)).length;
const ofFormat = ({ items }: Campaign, ...formats: string[]): Item[] =>
  items.filter((item) => formats.includes(String(item.facts.format)));

describe("the invented campaigns", () => {
  test.each(FOLDERS)("%s is made again byte for byte from its seed", (folder) => {
    const made = filesIn(join(again, folder));
    expect(made).toEqual(filesIn(join(demo, folder)));
    for (const name of made)
      expect(
        readFileSync(join(again, folder, name)).equals(readFileSync(join(demo, folder, name))),
        name,
      ).toBe(true);
  });

  test.each(FOLDERS)("%s holds nothing to mend and nothing to decide", async (folder) => {
    await campaignOf(folder);
  });

  test.each(FOLDERS)("%s numbers every item once, and no item was worked before it came", async (folder) => {
    const { items, sessions } = await campaignOf(folder);
    expect(new Set(items.map((item) => item.id)).size).toBe(items.length);
    const later = new Set(items.filter((item) => item.arrives).map((item) => item.id));
    expect(sessions.filter((each) => later.has(each.item))).toEqual([]);
  });

  test.each(FOLDERS)("%s tells of a late delivery and of a reader that fails", async (folder) => {
    const { deliveries } = await campaignOf(folder);
    expect(deliveries.some((each) => /late/.test(each.note ?? ""))).toBe(true);
    const { problems } = await readCampaignFolder(join(demo, folder));
    const failing = problems.filter(({ code }) => code === "reader-stuck" || code === "reader-silent");
    expect(new Set(failing.map(({ file }) => file)).size).toBe(1);
  });

  test.each(FOLDERS)("%s gives no reason for clean work", async (folder) => {
    const { calendar } = await campaignOf(folder);
    expect(calendar.filter((each) => each.what === "clean work" && each.note)).toEqual([]);
  });

  test("together they stay under 12 MB", () => {
    const bytes = filesIn(demo).reduce((sum, name) => sum + statSync(join(demo, name)).size, 0);
    expect(bytes).toBeLessThan(12e6);
  });

  test("the README counts the conditions the rules find", async () => {
    const rows = tallyRows(await Promise.all(FOLDERS.map((folder) => tally(join(demo, folder)))));
    const readme = readFileSync(join(demo, "README.md"), "utf8").replaceAll(/ +/g, " ");
    expect(
      rows.filter((row) => !readme.includes(row)),
      "put these rows in demo/README.md",
    ).toEqual([]);
  });
});

describe("the stories hold exactly what they say", () => {
  test("Saltmere: 1,480 items; 90 covers powder; 40 ledgers with dry growth; 9 wet; 130 files with growth", async () => {
    const saltmere = await campaignOf("saltmere");
    expect(saltmere.items).toHaveLength(1480);
    const ledgers = ofFormat(saltmere, "bound_volume");
    const files = ofFormat(saltmere, "loose_sheets");
    expect([ledgers.length, files.length, ofFormat(saltmere, "newspaper").length]).toEqual([210, 940, 51]);
    expect(ofFormat(saltmere, "map_plan", "other")).toHaveLength(96);
    expect(ofFormat(saltmere, "photo_print", "photo_cased")).toHaveLength(180);
    expect(ofFormat(saltmere, "film_negative")).toHaveLength(3);
    expect(among(ledgers, answered(saltmere, "rub_mark", "trace", "clear", "heavy"))).toBe(90);
    expect(among(ledgers, answered(saltmere, "growth_visible", "yes"))).toBe(40);
    expect(answered(saltmere, "wet", "yes").size).toBe(9);
    const grown = new Set([
      ...answered(saltmere, "growth_visible", "yes", "unsure"),
      ...answered(saltmere, "musty_odour", "yes"),
    ]);
    expect(among(files, grown)).toBe(130);
    const sheets = files.reduce((sum, file) => sum + Number(file.facts.leaves), 0) / files.length;
    expect(Math.abs(sheets - 85)).toBeLessThan(3);
  });

  test("Nine Lamps: 620 items; 260 cut, 90 inked, 60 painted; 70 offerings; 55 holed, 18 fresh; 40 with dry growth", async () => {
    const lamps = await campaignOf("nine-lamps");
    expect(lamps.items).toHaveLength(620);
    const bundles = ofFormat(lamps, "palm_leaf_bundle");
    const counts = ["palm_leaf_bundle", "bark_manuscript", "folded_book", "loose_sheets", "other"];
    expect(counts.map((format) => ofFormat(lamps, format).length)).toEqual([410, 60, 48, 90, 12]);
    expect(bundles.filter((item) => item.parts.length > 0)).toHaveLength(60);
    expect(bundles.filter((item) => String(item.facts.media).includes("inked_on_surface"))).toHaveLength(90);
    const leaves = bundles.map((item) => Number(item.facts.leaves));
    expect(Math.min(...leaves)).toBeGreaterThanOrEqual(70);
    expect(Math.max(...leaves)).toBeLessThanOrEqual(160);
    expect(answered(lamps, "devotional_deposit", "yes").size).toBe(70);
    expect(answered(lamps, "old_holes", "yes").size).toBe(55);
    expect(answered(lamps, "fresh_frass", "yes").size).toBe(18);
    expect(among(bundles, answered(lamps, "growth_visible", "yes"))).toBe(40);
  });

  test("Marabelle: 4,300 items; 240 plates cracked, 130 with growth; 300 pieces of film unmarked; 12 books green", async () => {
    const marabelle = await campaignOf("marabelle");
    expect(marabelle.items).toHaveLength(4300);
    const plates = ofFormat(marabelle, "glass_negative");
    expect([plates.length, ofFormat(marabelle, "film_negative").length]).toEqual([2150, 1300]);
    expect(ofFormat(marabelle, "album", "photo_print", "other")).toHaveLength(480);
    expect([ofFormat(marabelle, "newspaper").length, ofFormat(marabelle, "bound_volume").length]).toEqual([
      300, 70,
    ]);
    expect(among(plates, answered(marabelle, "glass_broken", "yes"))).toBe(240);
    expect(among(plates, answered(marabelle, "growth_visible", "yes"))).toBe(130);
    expect(answered(marabelle, "film_edge_mark", "none").size).toBe(300);
    expect(answered(marabelle, "film_sticky_or_bubbled", "yes").size).toBe(1);
    expect(answered(marabelle, "bright_green", "yes").size).toBe(12);
    expect(answered(marabelle, "boards_detached", "yes").size).toBe(150);
  });
});
