import { describe, expect, test } from "vitest";
import { decodeText } from "../../../src/edge/intake/decode.ts";
import { codes, readWith, rows, the } from "./campaign-folder.ts";

const TEXT = rows(
  "item;title;format",
  "B-001;Règlement du “port” – 5 €;other",
  "B-002;Zoë's Übersicht;other",
);
const swapped = (bytes: Buffer): Buffer => Buffer.from(bytes).swap16();
const wide = Buffer.from(TEXT, "utf16le");
const MARK = Buffer.from([0xff, 0xfe]);
/** Windows-1252 where it differs from Latin-1. Source: WHATWG Encoding Standard, index windows-1252. */
const windows = Buffer.from(
  TEXT.replace("“", "\u0093").replace("”", "\u0094").replace("–", "\u0096").replace("€", "\u0080"),
  "latin1",
);

describe("the same table in other letters gives the same rows", () => {
  test.each([
    ["UTF-8", Buffer.from(TEXT)],
    ["UTF-8 with its mark", Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(TEXT)])],
    ["UTF-16, little end first, with its mark", Buffer.concat([MARK, wide])],
    ["UTF-16, big end first, with its mark", swapped(Buffer.concat([MARK, wide]))],
    ["UTF-16, little end first, without", wide],
    ["UTF-16, big end first, without", swapped(wide)],
    ["Windows-1252", windows],
  ])("%s", async (name, bytes) => {
    const read = await readWith({ "items.csv": bytes });
    expect(read.campaign?.items.map(({ title }) => title)).toEqual([
      "Règlement du “port” – 5 €",
      "Zoë's Übersicht",
    ]);
    expect(codes(read)).toEqual(name === "Windows-1252" ? ["not-utf8"] : []);
  });
  test("a letter that breaks UTF-8 far into a large file still decides", async () => {
    const many = Array.from({ length: 30_000 }, (_, i) => `A-${i};plain;other`);
    const bytes = Buffer.from(rows("item;title;format", ...many, "Z-1;Zoë;other"), "latin1");
    const read = await readWith({
      "items.csv": bytes,
      "parts.csv": null,
      "findings.csv": null,
      "sessions.csv": null,
    });
    the("not-utf8", read);
    expect(read.campaign?.items.at(-1)?.title).toBe("Zoë");
  });
  test("every byte of Windows-1252 as the platform decodes it elsewhere", () => {
    const bytes = Buffer.from(Array.from({ length: 128 }, (_, i) => i + 128));
    const text = decodeText(bytes).text;
    expect(text).toHaveLength(128);
    expect(text.slice(0, 6)).toBe("€\u0081‚ƒ„…");
    expect(text.slice(32)).toBe(Array.from({ length: 96 }, (_, i) => String.fromCharCode(i + 160)).join(""));
  });
});

describe("delimiters", () => {
  test.each([",", ";", "\t"])("'%s'", async (delimiter) => {
    const read = await readWith({ "items.csv": TEXT.replaceAll(";", delimiter) });
    expect(read.campaign?.items).toHaveLength(2);
  });
  test("with commas in the texts and titles above", async () => {
    const read = await readWith({
      "items.csv": rows("A, B, C, D, E, F", "item;title;format", "B-001;a, b, c;other", "B-002;d, e;other"),
    });
    expect(read.campaign?.items.map(({ title }) => title)).toEqual(["a, b, c", "d, e"]);
  });
  test("the hint line that spreadsheet programs write first", async () => {
    const read = await readWith({
      "items.csv": rows("sep=;", "item;title;format;;;", "B-001;One;other;;;", "B-002;Two;other;;;"),
    });
    expect(read.problems).toEqual([]);
    expect(read.campaign?.items).toHaveLength(2);
  });
});
