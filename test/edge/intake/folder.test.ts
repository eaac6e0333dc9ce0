import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { campaignWith, codes, emptyFolder, folderWith, readWith, rows, the } from "./campaign-folder.ts";

describe("a folder that cannot be used gives no campaign and says why", () => {
  test("no such folder", async () => {
    const read = await readCampaignFolder(join(await emptyFolder(), "nowhere"));
    expect(read.campaign).toBeNull();
    expect(the("no-folder", read).got).toBe("nowhere");
  });
  test("an empty folder", async () => {
    const read = await readCampaignFolder(await emptyFolder());
    expect(read.campaign).toBeNull();
    expect(codes(read)).toEqual(["empty-folder"]);
  });
  test("a file in place of a folder", async () => {
    const file = join(await emptyFolder(), "a.txt");
    await writeFile(file, "x");
    expect(codes(await readCampaignFolder(file))).toEqual(["not-a-folder"]);
  });
  test("no campaign.json", async () => {
    const read = await readWith({ "campaign.json": null });
    expect(read.campaign).toBeNull();
    the("no-campaign-file", read);
  });
  test("campaign.json that is not JSON, with the line", async () => {
    const read = await readWith({ "campaign.json": '{\n  "leafward": 1,\n  "name" "x"\n}' });
    expect(read.campaign).toBeNull();
    expect(the("campaign-not-json", read).line).toBe(3);
  });
  test("no items table", async () => {
    const read = await readWith({ "items.csv": null });
    expect(read.campaign).toBeNull();
    expect(the("missing-table", read)).toMatchObject({ severity: "stop", got: "items" });
  });
  test("an end before the start", async () => {
    const read = await readWith({ "campaign.json": campaignWith({ end: "2026-05-31" }) });
    expect(read.campaign).toBeNull();
    expect(the("end-before-start", read)).toMatchObject({ got: "2026-05-31", expected: "2026-06-01" });
  });
  test("a workbook that only has the ending of a table", async () => {
    const read = await readWith({ "items.csv": Buffer.from("PK\u0003\u0004rubbish") });
    expect(read.campaign).toBeNull();
    the("wrong-kind-of-file", read);
  });
});

describe("campaign.json", () => {
  test("every setting that is wrong has its own problem, with its place and what was found", async () => {
    const place = { name: "", climate: "hot", freezer: "no", fineFilterVacuum: true };
    const read = await readWith({
      "campaign.json": campaignWith({ place, start: "1.6.2026", stations: undefined }),
    });
    const found = read.problems.filter(({ code }) => code === "campaign-field");
    expect(found.map(({ column }) => column)).toEqual([
      "place.name",
      "place.climate",
      "place.freezer",
      "start",
      "stations",
    ]);
    expect(found[1]).toMatchObject({
      got: '"hot"',
      expected: "hot_humid, warm_wet_season, hot_dry, temperate",
    });
  });
  test("a setting that is not known is noted, with the nearest that is", async () => {
    const read = await readWith({ "campaign.json": campaignWith({ planfrom: "2026-06-03" }) });
    expect(the("campaign-unknown-field", read)).toMatchObject({ got: "planfrom", severity: "note" });
    expect(the("campaign-unknown-field", read).remedy).toContain("planFrom");
  });
  test("limits that are missing are filled in, and each is said", async () => {
    const read = await readWith({
      "campaign.json": campaignWith({ limits: { maskMinutes: { value: 60, source: "our doctor" } } }),
    });
    expect(codes(read).filter((code) => code === "limits-default")).toHaveLength(4);
    expect(read.campaign?.limits.maskMinutes.value).toBe(60);
    expect(read.campaign?.limits.exposedMinutesADay.value).toBe(180); // data/norms.json, p-day-plan: common practice, no source
  });
  test("a plan that begins outside the campaign", async () => {
    expect(
      the("plan-outside", await readWith({ "campaign.json": campaignWith({ planFrom: "2027-06-03" }) }))
        .severity,
    ).toBe("stop");
  });
  test("a version that is not ours", async () => {
    expect(
      the("campaign-version", await readWith({ "campaign.json": campaignWith({ leafward: 2 }) })),
    ).toMatchObject({ got: "2", expected: "1" });
  });
  test("a station id given twice", async () => {
    const station = { kind: "camera", places: 1, minutesADay: 60 };
    const stations = [
      { id: "c", ...station },
      { id: "c", ...station },
    ];
    the("station-twice", await readWith({ "campaign.json": campaignWith({ stations }) }));
  });
});

describe("the files of the folder", () => {
  test("a sound small campaign has no problem at all, and every row is used", async () => {
    const read = await readWith({});
    expect(read.problems).toEqual([]);
    for (const { rows: all, used } of Object.values(read.counts)) expect([all, used]).toEqual([2, 2]);
  });
  test("a path with spaces and letters of other scripts", async () => {
    const read = await readWith({}, "நூலகம் – règne 図書館 2026");
    expect(read.problems).toEqual([]);
    expect(read.campaign?.items).toHaveLength(2);
  });
  test("a missing table other than items is taken as empty and noted; people are needed", async () => {
    const read = await readWith({
      "parts.csv": null,
      "deliveries.csv": null,
      "findings.csv": null,
      "people.csv": null,
      "sessions.csv": null,
      "calendar.csv": null,
    });
    const missing = read.problems.filter(({ code }) => code === "missing-table");
    expect(missing.map(({ got, severity }) => `${got} ${severity}`).sort()).toEqual([
      "calendar note",
      "deliveries note",
      "findings note",
      "parts note",
      "people stop",
    ]);
    expect(read.campaign?.items).toHaveLength(2);
  });
  test("tables are found whatever the case of their names", async () => {
    const read = await readWith({
      "items.csv": null,
      "Items.CSV": rows("item,title,format", "B-001,One,map_plan", "B-002,Two,map_plan"),
    });
    expect(read.counts.items).toEqual({ rows: 2, used: 2 });
  });
  test("a file that is no table is noted, with the table it may be meant for", async () => {
    const read = await readWith({ "findings (1).csv": "x", "stores.ods": "x" });
    expect(read.problems.map(({ code, file }) => [code, file])).toEqual([
      ["unread-file", "findings (1).csv"],
      ["unread-file", "stores.ods"],
    ]);
    expect(read.problems[0]?.remedy).toContain("findings.csv");
  });
  test("a table that is there twice is read once and asked about", async () => {
    const read = await readWith({ "items.tsv": "item\ttitle\tformat\nX\tY\tother\n" });
    expect(the("table-twice", read)).toMatchObject({ severity: "ask", expected: "items" });
  });
  test("a folder inside is left alone", async () => {
    const folder = await folderWith({ "out/items.csv": "nonsense" });
    expect((await readCampaignFolder(folder)).problems).toEqual([]);
  });
});
