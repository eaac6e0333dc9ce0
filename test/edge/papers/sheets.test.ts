import { describe, expect, test } from "vitest";
import { planStop } from "../../../src/core/plan/stop/plan-stop.ts";
import { addDays, type Day } from "../../../src/core/units/day.ts";
import { boxLabelViews } from "../../../src/edge/papers/box-label-view.ts";
import { exposureViews } from "../../../src/edge/papers/exposure-view.ts";
import { hazardLabelViews } from "../../../src/edge/papers/hazard-label-view.ts";
import { itemHistory } from "../../../src/edge/papers/item-history.ts";
import { itemRecordView } from "../../../src/edge/papers/item-record-view.ts";
import { labels } from "../../../src/edge/papers/label-view.ts";
import { type SheetView, sheets } from "../../../src/edge/papers/sheet-view.ts";
import { stationLogViews } from "../../../src/edge/papers/station-log-view.ts";
import { stationSheetViews } from "../../../src/edge/papers/station-sheet-view.ts";
import { stopSheetView } from "../../../src/edge/papers/stop-sheet-view.ts";
import { wardSheetView } from "../../../src/edge/papers/ward-sheet-view.ts";
import { weekView } from "../../../src/edge/papers/week-view.ts";
import { readPdf } from "./pdf-reader.ts";
import { book, campaign, care, norms, plan, routes, worked } from "./print-source.ts";

const firstDay = plan.clock[0]?.day as Day;
const [first] = care;
if (!first) throw new Error("The kept campaign is empty.");
const stopPlan = planStop({ campaign, book, norms, care, routes }, addDays(campaign.planFrom, 18));
const record = itemRecordView({
  ...{ campaign: worked(), book, care: first, pictures: [] },
  route: routes[0] ?? ([] as never),
  history: itemHistory(worked(), null, first.item.id),
});
const hazardLabels = hazardLabelViews(campaign.name, care, routes, campaign.planFrom);
const stations = stationSheetViews(plan, campaign, firstDay);
const exposure = exposureViews(worked());

type Print = (sheet: "A4" | "Letter") => Promise<Uint8Array>;
const sheet =
  (...views: readonly SheetView[]): Print =>
  (size) =>
    sheets(views, { sheet: size });
const PAPERS: readonly [string, Print, wide: boolean][] = [
  ["station sheet", sheet(...stations), false],
  ["quarantine sheet", sheet(wardSheetView(campaign, routes)), true],
  ["station log", sheet(...stationLogViews(campaign)), true],
  ["exposure register", sheet(...exposure), false],
  ["weekly report", sheet(weekView(plan, campaign)), false],
  ["stop sheet", sheet(stopSheetView(stopPlan)), false],
  ["item record", sheet(record), false],
  ["hazard label", (size) => labels(hazardLabels, { sheet: size }), false],
  [
    "box label",
    (size) =>
      labels(boxLabelViews(campaign.name, [{ box: "BX-07", items: [first.item.id] }], { care, routes }), {
        sheet: size,
      }),
    false,
  ],
];

describe.each(PAPERS)("the %s", (_, print, wide) => {
  test("is tagged, names a heading, and brings its fonts along", async () => {
    const pdf = await readPdf(await print("A4"));
    expect(pdf.isTagged).toBe(true);
    expect([...pdf.roles]).toContain("H1");
    expect(pdf.fonts.length).toBeGreaterThan(0);
    expect(pdf.fonts.filter(({ isEmbedded }) => !isEmbedded)).toEqual([]);
    for (const page of pdf.pages) expect(page).toContain("Follow local rules and licensed practice.");
  });
  test("is as large as the sheet asked for", async () => {
    const across = ([width, height]: readonly [number, number]) => (wide ? [height, width] : [width, height]);
    const [a4, letter] = [await readPdf(await print("A4")), await readPdf(await print("Letter"))];
    expect(across(a4.size)[0]).toBeCloseTo(595.28, 1); // 210 mm at 72 points to the inch, ISO 216
    expect(across(letter.size)).toEqual([612, 792]); // 8.5 × 11 in, ANSI/ASME Y14.1
  });
});

describe("the station sheet", () => {
  test("holds every piece of work of its day once, at its station, in the order of the clock", () => {
    const pieces = plan.clock.filter(
      ({ day, kind, station }) => day === firstDay && kind === "work" && station !== "",
    );
    const rows = stations.flatMap(({ blocks }) =>
      blocks.flatMap((each) => (each.kind === "table" ? each.rows : [])),
    );
    const named = rows.flatMap((row) =>
      typeof row[2] === "object" && "strong" in row[2] ? [row[2].strong] : [],
    );
    expect(named.sort()).toEqual(pieces.map(({ items }) => items.join(", ")).sort());
  });
});

describe("the quarantine sheet", () => {
  test("says at the door what to wear, that readings release, and leaves room to write", () => {
    const { blocks } = wardSheetView(campaign, routes);
    const signs = blocks.flatMap((each) => (each.kind === "signs" ? each.codes : []));
    expect(signs).toEqual(expect.arrayContaining(["W009", "M017", "M004", "M009", "M010", "P022"])); // ISO 7010
    const said = JSON.stringify(blocks);
    expect(said).toContain("Do not release by date.");
    expect(said).toContain("Two readings of 55 % or less, a day apart"); // common practice, no source; rule W07
    expect(blocks.some((each) => each.kind === "table" && each.blank > 0)).toBe(true);
  });
});

describe("the exposure register", () => {
  const said = JSON.stringify(exposure);
  test("holds codes and minutes of work near mould alone", () => {
    expect(exposure).toHaveLength(1);
    expect(said).toContain("193 min near mould on 1 day."); // 141 + 52; the clean 9 min are nobody's exposure
    expect(said).toContain("over the limit");
  });
  test("names nobody, and nothing of anybody's health or clean work", () => {
    for (const { name } of campaign.people) expect(said).not.toContain(name);
    expect(said).not.toMatch(/health|clean work|ill|pregnan|allerg/i);
  });
});

describe("the weekly report", () => {
  const said = JSON.stringify(weekView(plan, campaign));
  test("gives the finish as a range and how it was come by", () => {
    expect(said).toContain("1 campaign in 10");
    expect(said).toContain("9 in 10");
    expect(said).toContain("simulated campaigns");
  });
  test("names no person and no item", () => {
    for (const { name } of campaign.people) expect(said).not.toContain(name);
    for (const { id } of campaign.items) expect(said).not.toContain(`"${id}"`);
  });
});

test("the stop sheet has a place for every item, and none twice", () => {
  const { blocks } = stopSheetView(stopPlan);
  const rows = blocks.flatMap((each) => (each.kind === "table" ? each.rows : []));
  const numbers = rows.flatMap((row) =>
    typeof row[2] === "object" && "note" in row[2] ? (row[2].note ?? "").split(", ") : [],
  );
  expect(numbers.sort()).toEqual(campaign.items.map(({ id }) => id).sort());
});

test("the item record tells every finding and every piece of work on it", () => {
  const said = JSON.stringify(record);
  expect(said).toContain("Clean, 141 min, near mould");
  const own = campaign.findings.filter(({ item }) => item === first.item.id);
  const rows = record.blocks.flatMap((each) =>
    each.kind === "table" && each.title === "What was found" ? each.rows : [],
  );
  expect(rows).toHaveLength(own.length);
});

test("a picture in the record is in the PDF; its words are read out", async () => {
  const dot = Buffer.from(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
    "base64",
  ); // a PNG of one pixel
  const shown = itemRecordView({
    ...{ campaign, book, care: first, history: [] },
    route: routes[0] ?? ([] as never),
    pictures: [{ name: "dot.png", says: "before, the cover" }],
  });
  const pdf = await sheets([shown], { sheet: "A4" }, [{ name: "dot.png", bytes: dot }]);
  const read = await readPdf(pdf);
  expect(read.pages.join(" ")).toContain("before, the cover");
  expect([...read.roles]).toContain("Figure");
  expect(Buffer.from(pdf).toString("latin1")).toMatch(/\/Subtype\s*\/Image/);
});
