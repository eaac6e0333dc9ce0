import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import {
  bagTags,
  benchCardFiles,
  benchCards,
  daySheets,
  orderList,
} from "../../../src/edge/papers/papers.ts";
import type { BenchCardView, DayRow } from "../../../src/edge/papers/views.ts";
import { bagTag, benchCard, cleanDaySheet, daySheet, order, rowsOf } from "./sample-views.ts";

const A4 = { sheet: "A4" } as const;
const LETTER = { sheet: "Letter" } as const;
const folder = mkdtempSync(join(tmpdir(), "leafward-papers-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const hasPoppler = spawnSync("pdftotext", ["-v"]).error === undefined;
const withPoppler = hasPoppler ? test : test.skip;
if (!hasPoppler)
  console.warn("pdftotext (poppler-utils) is not installed: the claims on the papers' text are skipped.");

/** What the reader's eye or a screen reader gets, page by page. */
function pagesOf(pdf: Uint8Array, order: "-layout" | "-raw" = "-layout"): string[] {
  const file = join(folder, "paper.pdf");
  writeFileSync(file, pdf);
  const text = spawnSync("pdftotext", [order, file, "-"], { encoding: "utf8" }).stdout;
  return text.split("\f").slice(0, -1);
}
/** How far down its page a word last stands, in points. */
function heightsOf(pdf: Uint8Array): (word: string) => number {
  const file = join(folder, "paper.pdf");
  writeFileSync(file, pdf);
  const boxes = spawnSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8" }).stdout;
  const found = [...boxes.matchAll(/yMax="([\d.]+)">([^<]+)</g)];
  return (word) => Math.max(...found.filter((each) => each[2] === word).map((each) => Number(each[1])));
}
const wordsOf = (text: string): string => text.replace(/\s+/g, " ").trim();
const sourceOf = (pdf: Uint8Array): string => Buffer.from(pdf).toString("latin1");
const pageCount = (pdf: Uint8Array): number => sourceOf(pdf).match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

describe("every paper", () => {
  const papers: readonly [string, (options: typeof A4 | typeof LETTER) => Promise<Uint8Array>][] = [
    ["day sheet", (options) => daySheets([daySheet()], options)],
    ["bench card", (options) => benchCards([benchCard()], options)],
    ["bag tag", (options) => bagTags([bagTag()], options)],
    ["order list", (options) => orderList(order, options)],
  ];
  test.each(papers)("%s: the same view gives the same bytes", async (_, print) => {
    const [first, second] = [await print(A4), await print(A4)];
    expect(Buffer.compare(first, second)).toBe(0);
  });
  test.each(papers)(
    "%s: says it is accessible (PDF/UA-1), is tagged and names its language",
    async (_, print) => {
      const pdf = sourceOf(await print(A4)); // ISO 14289-1: pdfuaid:part 1 in the metadata; MarkInfo and Lang in the catalogue
      expect(pdf).toMatch(/pdfuaid:part>1</);
      expect(pdf).toMatch(/\/Marked true/);
      expect(pdf).toMatch(/\/Lang \(en\)/);
    },
  );
  test.each(papers)("%s: A4 is 210 × 297 mm, Letter 8.5 × 11 in", async (name, print) => {
    const box = (pdf: Uint8Array): number[] =>
      (/\/MediaBox\s*\[([^\]]+)\]/.exec(sourceOf(pdf))?.[1] ?? "").trim().split(/\s+/).slice(2).map(Number);
    const [a4, letter] = [box(await print(A4)), box(await print(LETTER))].map((each) =>
      each.toSorted((a, b) => a - b),
    );
    expect(a4?.[0], name).toBeCloseTo(595.28, 1); // points, 72 to the inch; ISO 216
    expect(a4?.[1]).toBeCloseTo(841.89, 1);
    expect(letter).toEqual([612, 792]); // ANSI/ASME Y14.1
  });
  test("nothing to print is one page that says so", async () => {
    expect(pageCount(await bagTags([], A4))).toBe(1);
  });
});

describe("the day sheet", () => {
  test("gives each person a page", async () => {
    expect(
      pageCount(
        await daySheets(
          ["Tevi Lusk", "Otto", "Mara Quelm"].map((name) => daySheet(name)),
          A4,
        ),
      ),
    ).toBe(3);
  });
  withPoppler(
    "shows person, day, work, wipe-downs, minutes against the limit, break, protection and stops",
    async () => {
      const [page = ""] = pagesOf(await daySheets([daySheet("Jon Harrowby-Nue")], A4));
      for (const words of [
        "Jon Harrowby-Nue",
        "Tuesday 2 June 2026",
        "LDG-0001",
        "FIL-0006",
        "168 of at most 180 min",
        "318 min on 2 of 3 days",
        "Wipe down mould bench 1",
        "Mask off: 30 min outside the zone",
        "Wear: FFP2 mask, nitrile gloves",
        "M017",
        "Stop and ask if: colour or fibre on the tool; powder",
        "Follow local rules and licensed practice.",
        "page 1 of 1",
      ])
        expect(wordsOf(page)).toContain(words);
    },
  );
  withPoppler("of a person on clean work says that, and nothing of mould, mask or limit", async () => {
    const page = wordsOf(pagesOf(await daySheets([cleanDaySheet()], A4)).join(" "));
    expect(page).toContain("Clean work this week");
    expect(page).not.toMatch(/mould|mask|of at most/i);
  });
  withPoppler("says when each row begins and ends, the day's hours and what they are made of", async () => {
    const page = wordsOf(pagesOf(await daySheets([daySheet()], A4)).join(" "));
    expect(page).toContain("08:30–09:10");
    expect(page).toContain("08:00–16:15: work 307 min · changing and clearing 83 min");
    expect(page).toContain("Clock times are a proposal.");
    expect(page.indexOf("Somebody stays in the building")).toBeLessThan(page.indexOf("08:30–09:10"));
  });
  withPoppler("of many short items alike is one row with every number on it", async () => {
    const items = Array.from({ length: 40 }, (_, n) => `FIL-${1000 + n}`);
    const [row] = rowsOf(1);
    const many = { ...(row as DayRow & { kind: "work" }), item: "40 items", title: "", items };
    const page = wordsOf(pagesOf(await daySheets([daySheet("Otto", { rows: [many] })], A4)).join(" "));
    for (const item of items) expect(page).toContain(item);
  });
  withPoppler("with twelve pieces of work goes on a second page, the stops stand on the first", async () => {
    const pages = pagesOf(await daySheets([daySheet("Tevi Lusk", { rows: rowsOf(12) })], A4));
    expect(pages).toHaveLength(2);
    expect(pages[0]).toContain("Stop and ask if");
    expect(pages[1]).toContain("Tevi Lusk");
    expect(wordsOf(pages[1] ?? "")).toContain("page 2 of 2");
  });
});

describe("the bench card", () => {
  const crowded: Partial<BenchCardView> = {
    title: "Tariff book with manuscript slips, second copy, from the upstairs store over the fish hall, 1899",
    never: Array.from(
      { length: 12 },
      (_, n) => `forbidden act number ${n + 1}, in a few more words than usual`,
    ),
    notYet: Array.from({ length: 8 }, (_, n) => ({
      action: `act ${n + 1} kept back`,
      until: "until two bag readings of 55 % or less, a day apart, show it dry",
    })),
  };
  test("of an ordinary book takes one page, on either sheet", async () => {
    expect(pageCount(await benchCards([benchCard()], A4))).toBe(1);
    expect(pageCount(await benchCards([benchCard()], LETTER))).toBe(1);
  });
  withPoppler("with twenty forbids and a long title takes two, and loses no word", async () => {
    const pages = pagesOf(await benchCards([benchCard(3, crowded)], A4));
    expect(pages).toHaveLength(2);
    const all = wordsOf(pages.join(" "));
    for (let n = 1; n <= 12; n++) expect(all).toContain(`forbidden act number ${n}`);
    for (let n = 1; n <= 8; n++) expect(all).toContain(`act ${n} kept back`);
    expect(pages[0]).toContain("Stop and ask if");
    expect(pages[1], "the word stands again over the rest of its list").toContain("Never");
  });
  withPoppler("lays out the whole card as the accepted one", async () => {
    const pages = pagesOf(await benchCards([benchCard()], A4), "-raw");
    await expect(pages.join("\f")).toMatchFileSnapshot("../../golden/papers/bench-card.txt");
  });
  test("for many items come in files of at most a hundred, in order", async () => {
    const files = await benchCardFiles(
      Array.from({ length: 203 }, (_, n) => benchCard(n, { steps: [], reasons: [] })),
      A4,
    );
    expect(files.map(pageCount)).toEqual([100, 100, 3]);
  });
});

describe("the bag tag", () => {
  test("comes four to a page", async () => {
    expect(
      pageCount(
        await bagTags(
          [0, 1, 2, 3, 4].map((n) => bagTag(n)),
          A4,
        ),
      ),
    ).toBe(2);
  });
  withPoppler("never loses who may open it and what releases it, however long the rest", async () => {
    const long = bagTag(2, {
      title: "very long title ".repeat(20),
      reason: "reason ".repeat(60),
      alsoInside: Array(60).fill("FIL-1234"),
    });
    const height = heightsOf(await bagTags([long], A4));
    const readings = height("Date");
    for (const word of ["M017", "mask", "bench", "Released", "June."])
      expect(height(word), word).toBeLessThan(readings);
  });
});

describe("the order list", () => {
  withPoppler("says what, how much, by when, and late in a word", async () => {
    const text = wordsOf(pagesOf(await orderList(order, A4)).join(" "));
    for (const words of [
      "FFP2 masks, two shapes",
      "12 × 20 = 240 masks",
      "Friday 29 May 2026",
      "LATE",
      "sea",
      "One box for each",
    ])
      expect(text).toContain(words);
    expect(text.match(/LATE/g)).toHaveLength(1);
  });
});

describe("a hostile title is printed, never run", () => {
  const titles = [
    '#panic("x") $x^2$ *b* _i_ @ref <lab> \\ // c /* d */ ~ -- "q" `raw` #{while true {}}',
    "سجل الميناء، الجزء الثاني 1894",
    "Βιβλίο λιμένος · Книга порта · Żółć",
    "தமிழ் ஓலைச்சுவடி",
    "a".repeat(300),
    "nul\u0000 tab\t line\n half \ud800 picture 😀 turned \u202e end",
    "",
  ];
  test.each(titles.map((title, n) => [n, title] as const))("title %i", async (n, title) => {
    const item = title.slice(0, 60) || "x";
    const cards = await benchCards([benchCard(n, { title, item, where: title, never: [title] })], A4);
    const tags = await bagTags([bagTag(n, { title, number: item, reason: title })], A4);
    const sheets = await daySheets([daySheet(item, { stations: [title] })], A4);
    const orders = await orderList(
      { ...order, lines: order.lines.map((line) => ({ ...line, why: title })) },
      A4,
    );
    for (const pdf of [cards, tags, sheets, orders]) expect(pageCount(pdf)).toBeGreaterThan(0);
  });
  withPoppler("with marks of the typesetter keeps every mark", async () => {
    const text = wordsOf(pagesOf(await benchCards([benchCard(0, { where: titles[0] ?? "" })], A4)).join(" "));
    expect(text).toContain(
      '#panic("x") $x^2$ *b* _i_ @ref <lab> \\ // c /* d */ ~ -- "q" `raw` #{while true {}}',
    );
  });
  withPoppler("in Greek and Cyrillic can be searched", async () => {
    const text = wordsOf(pagesOf(await benchCards([benchCard(0, { where: titles[2] ?? "" })], A4)).join(" "));
    expect(text).toContain("Βιβλίο λιμένος · Книга порта · Żółć");
  });
});

test("no font but the bundled ones is embedded", async () => {
  const pdf = sourceOf(await benchCards([benchCard(0, { title: "سجل الميناء 漢字 😀" })], A4));
  const fonts = new Set([...pdf.matchAll(/\/BaseFont \/[A-Z]{6}\+([A-Za-z]+)/g)].map((match) => match[1]));
  expect([...fonts].sort()).toEqual(["Amiri", "NotoSans"]);
});

test("the templates name no font of the machine", () => {
  const paper = readFileSync(
    new URL("../../../src/edge/papers/templates/paper.typ", import.meta.url),
    "utf8",
  );
  expect(paper).toContain("fallback: false");
});

withPoppler("a sentence that came with its full stop gets no second one", async () => {
  const views = [
    daySheet("Otto", { askWho: "the lead. A question is never a delay.", stops: ["droppings", "powder."] }),
  ];
  const text = wordsOf(pagesOf(await daySheets(views, A4)).join(" "));
  expect(text).toContain("Stop and ask if: droppings; powder. Ask: the lead. A question is never a delay.");
  expect(text).not.toContain("..");
});
