import { describe, expect, test } from "vitest";
import { codes, readWith, rows, the } from "./campaign-folder.ts";

const HEAD = "item,title,format,leaves,mass_kg,due";
const items = (...lines: string[]) => ({
  "items.csv": rows(HEAD, ...lines),
  "parts.csv": null,
  "findings.csv": null,
  "sessions.csv": null,
});

describe("a row that cannot be used is set aside with its place, what was found and what to do", () => {
  test("a number in words", async () => {
    const read = await readWith(items("A-1,One,pamphlet,12,,", "A-2,Two,pamphlet,forty,,"));
    expect(the("not-a-number", read)).toMatchObject({
      file: "items.csv",
      line: 3,
      column: "leaves",
      got: "forty",
      severity: "stop",
    });
    expect(read.counts.items).toEqual({ rows: 2, used: 1 });
  });
  test("negative and impossible numbers", async () => {
    const read = await readWith(
      items("A-1,One,pamphlet,-4,,", "A-2,Two,pamphlet,3,900,", "A-3,Three,pamphlet,3.5,,"),
    );
    expect(codes(read).slice(0, 5)).toEqual(
      expect.arrayContaining(["number-out-of-range", "number-out-of-range", "not-whole"]),
    );
    expect(read.counts.items?.used).toBe(0);
  });
  test("a word that is not known, with the nearest that is", async () => {
    const read = await readWith(items("A-1,One,pamphlett,,,"));
    expect(the("unknown-word", read)).toMatchObject({
      column: "format",
      got: "pamphlett",
      remedy: 'Did you mean "pamphlet"?',
    });
  });
  test("packs and prices: each pack with its units, and a list that cannot be read is set aside whole", async () => {
    const stores = (packs: string) => ({
      "stores.csv": rows(
        "store,name,use,unit,on_hand,pack,lead_days,packs",
        `masks,Masks,k-mask,pc,4,20,7,${packs}`,
      ),
      "deliveries.csv": null,
    });
    const read = await readWith(stores('"20=8,50 | 100=35"'));
    expect(read.campaign?.stores[0]?.packs).toEqual([
      { size: 20, price: 8.5 },
      { size: 100, price: 35 },
    ]);
    expect((await readWith(stores("20 | 100"))).campaign?.stores[0]?.packs).toEqual([
      { size: 20 },
      { size: 100 },
    ]);
    for (const odd of ["20=cheap | 100=35", "0", "20 || 100"]) {
      const other = await readWith(stores(odd));
      expect(the("not-packs", other)).toMatchObject({
        file: "stores.csv",
        column: "packs",
        got: odd,
        severity: "ask",
      });
      expect(other.campaign?.stores[0]?.packs).toBeUndefined();
    }
  });
  test("a list with commas instead of bars", async () => {
    const read = await readWith({
      "items.csv": rows("item,title,format,media", 'A-1,One,map_plan,"pencil, watercolour"'),
    });
    expect(the("unknown-word", read).remedy).toContain('"|"');
  });
  test("a cell that is needed", async () => {
    const read = await readWith(items("A-1,,pamphlet,,,"));
    expect(the("required-empty", read)).toMatchObject({ line: 2, column: "title" });
  });
  test("a text with a comma in it shifts the cells", async () => {
    const read = await readWith(items("A-1,Rolls, two of them,pamphlet,3,1,2026-07-01"));
    the("extra-cells", read);
    expect(read.counts.items).toEqual({ rows: 1, used: 0 });
  });
  test("every problem of a row is said, not only the first", async () => {
    const read = await readWith(items("A-1,One,book,x,y,z"));
    expect(
      codes(read).filter((code) => ["unknown-word", "not-a-number", "not-a-date"].includes(code)),
    ).toHaveLength(4);
  });
  test("an item number given twice names the line of the first", async () => {
    const read = await readWith(items("A-1,One,pamphlet,,,", "A-2,Two,pamphlet,,,", "a-1,Again,pamphlet,,,"));
    expect(the("duplicate", read)).toMatchObject({ line: 4, got: "a-1", expected: "line 2" });
    expect(read.campaign?.items.map(({ id }) => id)).toEqual(["A-1", "A-2"]);
  });
  test("years the wrong way round", async () => {
    const read = await readWith({
      "items.csv": rows("item,title,format,date_earliest,date_latest", "A-1,One,pamphlet,1890,1850"),
    });
    the("first-after-last", read);
  });
});

describe("headings", () => {
  test("are found below titles, whatever their case, spaces, hyphens and units", async () => {
    const read = await readWith({
      "items.csv": rows(
        "Survey of the press room;;;",
        ";;;",
        "ITEM *;Title;Format;Height (mm)",
        "A-1;One;Bound volume;330",
      ),
    });
    expect(read.campaign?.items[0]).toMatchObject({
      id: "A-1",
      heightMm: 330,
      facts: { format: "bound_volume", longest_side_cm: 33 },
    });
  });
  test("that are missing make the table unusable, and each is named once", async () => {
    const read = await readWith({ "items.csv": rows("item,leaves", "A-1,3", "A-2,4") });
    expect(read.problems.filter(({ code }) => code === "missing-column").map(({ got }) => got)).toEqual([
      "title",
      "format",
    ]);
    expect(read.counts.items).toEqual({ rows: 2, used: 0 });
  });
  test("that are not known are noted once and kept out", async () => {
    const read = await readWith({
      "items.csv": rows("item,title,format,shelfmark,leafs", "B-001,One,other,x,3", "B-002,Two,other,y,4"),
    });
    const unknown = read.problems.filter(({ code }) => code === "unknown-column");
    expect(unknown.map(({ got, severity }) => `${got} ${severity}`)).toEqual([
      "shelfmark note",
      "leafs note",
    ]);
    expect(unknown[1]?.remedy).toContain('"leaves"');
    expect(read.campaign?.items[0]?.facts).toEqual({ format: "other" });
  });
  test("given twice: the first column counts", async () => {
    const read = await readWith({
      "items.csv": rows("item,title,title,format", "B-001,One,Uno,other", "B-002,Two,Due,other"),
    });
    the("column-twice", read);
    expect(read.campaign?.items[0]?.title).toBe("One");
  });
  test("repeated in the middle of the table are passed over", async () => {
    const read = await readWith({
      "items.csv": rows("item,title,format", "B-001,One,other", "Item,Title,Format", "B-002,Two,other"),
    });
    expect(the("heading-repeated", read)).toMatchObject({ line: 3, severity: "note" });
    expect(read.counts.items).toEqual({ rows: 2, used: 2 });
  });
  test("that are nowhere: no campaign", async () => {
    const read = await readWith({ "items.csv": rows("A-1,One,other", "A-2,Two,other") });
    the("no-headings", read);
    expect(read.campaign).toBeNull();
  });
});

describe("line numbers are those of the file", () => {
  test("after quoted line ends", async () => {
    const read = await readWith(items('A-1,"One', "and more", 'of it",pamphlet,,,', "A-2,Two,pamphlet,x,,"));
    expect(the("not-a-number", read).line).toBe(5);
    expect(read.campaign?.items[0]?.title).toBe("One and more of it");
  });
  test("after blank lines, and with line ends of old and new systems", async () => {
    const text = `${HEAD}\r\rA-1,One,pamphlet,,,\n\r\nA-2,Two,pamphlet,x,,`;
    expect(the("not-a-number", await readWith({ "items.csv": text })).line).toBe(5);
  });
  test("a quotation mark that never closes is said where it opens", async () => {
    const read = await readWith(
      items("A-1,One,pamphlet,,,", 'A-2,"Two,pamphlet,,,', "A-3,Three,pamphlet,,,"),
    );
    expect(the("unclosed-quote", read)).toMatchObject({ line: 3, severity: "stop" });
    expect(read.campaign?.items).toHaveLength(1);
  });
});

describe("numbers as people write them", () => {
  const masses = async (...written: string[]) =>
    readWith({
      "items.csv": rows(
        "item;title;format;mass_kg;leaves",
        ...written.map((each, i) => `A-${i};T;other;${each}`),
      ),
    });
  const kilograms = async (...written: string[]) =>
    (await masses(...written)).campaign?.items.map(({ facts }) => facts.mass_kg);

  test("semicolons with decimal commas", async () =>
    expect(await kilograms("1,5;", "0,25;")).toEqual([1.5, 0.25]));
  test("a comma seen as decimal elsewhere settles 1,500", async () =>
    expect(await kilograms("1,500;", "0,25;")).toEqual([1.5, 0.25]));
  test("a point seen as decimal elsewhere settles 1.250", async () =>
    expect(await kilograms("1.250;", "0.5;")).toEqual([1.25, 0.5]));
  test("1,500 alone is asked about, never guessed", async () => {
    const read = await masses("1,500;");
    expect(the("ambiguous-number", read)).toMatchObject({
      severity: "ask",
      got: "1,500",
      expected: "1500 or 1.5",
    });
    expect(read.counts.items?.used).toBe(0);
  });
  test("in a column of whole numbers it can only be thousands", async () => {
    expect(
      (await masses(";1.500", ";2 500", ";1’200")).campaign?.items.map(({ facts }) => facts.leaves),
    ).toEqual([1500, 2500, 1200]);
  });
  test("the unit of the column may stand after the number, another may not", async () => {
    const read = await readWith({
      "items.csv": rows("item,title,format,height_mm", "A-1,T,other,330 mm", "A-2,T,other,33 cm"),
    });
    expect(read.campaign?.items.map(({ heightMm }) => heightMm)).toEqual([330]);
    expect(the("not-a-number", read).got).toBe("33 cm");
  });
  test("digits of other scripts", async () => expect(await kilograms("௧௨;", "٣,٥;")).toEqual([12, 3.5]));
});

describe("dates as people write them", () => {
  const due = async (...written: string[]) =>
    readWith(items(...written.map((each, i) => `A-${i},T,other,,,"${each}"`)));
  const days = async (...written: string[]) =>
    (await due(...written)).campaign?.items.map((item) => item.due);

  test("the same day in many ways", async () => {
    const ways = [
      "2026-07-02",
      "2026/7/2",
      "2.7.2026",
      "2 July 2026",
      "July 2, 2026",
      "2. Juli 2026",
      "2 juillet 2026",
      "2-Jul-2026",
      "2 de julio de 2026",
      "2026-07-02 00:00:00",
    ];
    expect(new Set(await days(...ways))).toEqual(new Set(["2026-07-02"]));
  });
  test("a day above 12 settles the whole column", async () => {
    expect(await days("02/07/2026", "25/06/2026")).toEqual(["2026-07-02", "2026-06-25"]);
    expect(await days("07/02/2026", "06/25/2026")).toEqual(["2026-07-02", "2026-06-25"]);
  });
  test("an order that nothing settles is asked about, never guessed", async () => {
    const read = await due("02/07/2026", "05/05/2026");
    expect(the("ambiguous-date", read)).toMatchObject({
      severity: "ask",
      got: "02/07/2026",
      expected: "2026-07-02 or 2026-02-07",
    });
    expect(read.campaign?.items.map((item) => item.due)).toEqual(["2026-05-05"]);
  });
  test("the campaign may settle it", async () => {
    const { campaignWith } = await import("./campaign-folder.ts");
    const read = await readWith({
      ...items("A-1,T,other,,,02/07/2026"),
      "campaign.json": campaignWith({ dates: "month first" }),
    });
    expect(read.campaign?.items[0]?.due).toBe("2026-02-07");
  });
  test("two orders in one column: whatever does not fit the commoner one alone is asked about", async () => {
    const read = await due("25/06/2026", "26/06/2026", "06/27/2026", "02/07/2026");
    const found = read.problems.filter(({ code }) => code === "contradictory-dates");
    expect(found.map(({ line, got }) => `${line} ${got}`)).toEqual(["4 06/27/2026", "5 02/07/2026"]);
    expect(read.campaign?.items.map((item) => item.due)).toEqual(["2026-06-25", "2026-06-26"]);
  });
  test("days that do not exist and years of two digits", async () => {
    const read = await due("2026-02-30", "02/07/26", "soon");
    expect(codes(read).filter((code) => ["not-a-date", "short-year"].includes(code))).toEqual([
      "not-a-date",
      "short-year",
      "not-a-date",
    ]);
  });
  test("a day outside the campaign is used and noted", async () => {
    const read = await due("2062-07-02");
    expect(the("day-outside", read)).toMatchObject({ severity: "note", column: "due", got: "2062-07-02" });
    expect(read.campaign?.items).toHaveLength(1);
  });
});
