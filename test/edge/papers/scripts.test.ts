import { describe, expect, test } from "vitest";
import { benchCards } from "../../../src/edge/papers/papers.ts";
import { readPdf } from "./pdf-reader.ts";
import { hasPoppler, textOf } from "./rendered.ts";
import { benchCard } from "./sample-views.ts";

/** Invented titles. What the reader gets back differs from what was written only where said. */
const TITLES: readonly [script: string, title: string, font: string][] = [
  ["Latin", "Żółte księgi portu, część druga", "NotoSans-Regular"],
  ["Greek", "Βιβλίο λιμένος", "NotoSans-Regular"],
  ["Cyrillic", "Книга порта", "NotoSans-Regular"],
  ["Devanagari", "हस्तलिखित बही, द्वितीय खण्ड", "NotoSans-Regular"],
  ["Tamil", "தமிழ் ஓலைச்சுவடி", "NotoSansTamil-Regular"],
  ["Thai", "สมุดข่อยว่าด้วยตำรายา", "NotoSansThai-Regular"],
  ["Arabic", "سجل الميناء", "Amiri-Regular"],
];
const card = (where: string): Promise<Uint8Array> => benchCards([benchCard(0, { where })], { sheet: "A4" });

describe.each(TITLES)("a title in %s", (script, title, font) => {
  test("is set in a font that was brought along and says it is accessible, so no letter of it is a box", async () => {
    const pdf = await card(title);
    // The typesetter gives up PDF/UA where a letter has no glyph (ISO 14289-1: .notdef is not to be shown).
    expect(Buffer.from(pdf).toString("latin1")).toMatch(/pdfuaid:part>1</);
    const { fonts } = await readPdf(pdf);
    expect(fonts).toContainEqual({ name: font, isEmbedded: true });
  });
  (hasPoppler ? test : test.skip)("can be searched and copied", async () => {
    const marks = /[\u200b\u200e\u200f\u202a-\u202e]/g; // marks of direction, which poppler adds around Arabic
    expect(textOf(await card(title)).replace(marks, ""), script).toContain(title);
  });
});

test("a script no font is brought along for is printed all the same, and not called accessible", async () => {
  const pdf = Buffer.from(await card("港の帳簿")).toString("latin1");
  expect(pdf).not.toMatch(/pdfuaid:part>1</);
});
