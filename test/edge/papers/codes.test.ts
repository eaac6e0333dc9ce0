import jsqr from "jsqr";
import { describe, expect, test } from "vitest";
import { type LabelView, labels } from "../../../src/edge/papers/label-view.ts";
import { bagTags, benchCards } from "../../../src/edge/papers/papers.ts";
import { cutOut, firstPage, hasPoppler, type Pixels } from "./rendered.ts";
import { bagTag, benchCard } from "./sample-views.ts";

const look = hasPoppler ? test : test.skip;
const decode = jsqr.default;
const read = ({ data, width, height }: Pixels): string | undefined => decode(data, width, height)?.data;

const label: LabelView = {
  kind: "Hazard label",
  campaign: "An invented campaign",
  number: "BX-0417",
  head: "Ask before opening",
  signs: ["W016", "GHS06"],
  lines: [["May hold", "arsenic green"]],
  toWrite: [],
};

describe("the QR code is read back from the printed page by a decoder that is none of ours", () => {
  look("of a bench card", async () => {
    const page = firstPage(await benchCards([benchCard(3, { item: "LDG-0042" })], { sheet: "A4" }), 150);
    expect(read(cutOut(page, 0.6, 0, 1, 0.25))).toBe("LDG-0042");
  });
  look("of a label", async () => {
    const page = firstPage(await labels([label], { sheet: "A4" }), 200);
    expect(read(cutOut(page, 0.25, 0, 0.5, 0.12))).toBe("BX-0417");
  });
  look("of a bag tag with a fold across a corner of it", async () => {
    const page = firstPage(await bagTags([{ ...bagTag(0), number: "SR-1480" }], { sheet: "A4" }), 150);
    const code = cutOut(page, 0.3, 0.05, 0.5, 0.25);
    expect(read(code)).toBe("SR-1480");
    const { x, y } = decode(code.data, code.width, code.height)?.location.bottomRightCorner ?? { x: 0, y: 0 };
    const side = 20; // of some 177 pixels: 30 mm at 150 dots to the inch
    for (let row = Math.round(y) - side; row < y; row++)
      for (let column = Math.round(x) - side; column < x; column++)
        code.data.fill(255, (row * code.width + column) * 4, (row * code.width + column) * 4 + 3);
    expect(read(code)).toBe("SR-1480"); // level Q restores a quarter, ISO/IEC 18004
  });
});

look("a hazard label without colour still has its black figures and its frames", async () => {
  const page = firstPage(await labels([label], { sheet: "A4" }), 100, true);
  const signs = cutOut(page, 0.02, 0.07, 0.25, 0.14);
  const shades = new Set(signs.data.filter((_, at) => at % 4 === 0));
  expect(Math.min(...shades)).toBeLessThan(40); // figures
  expect([...shades].some((shade) => shade > 60 && shade < 200)).toBe(true); // frames and fields
});

look(
  "the number on a bag tag is tall enough to be read through a bag: its digits stand 12 mm or more",
  async () => {
    const page = firstPage(await bagTags([{ ...bagTag(0), number: "SR-0042" }], { sheet: "A4" }), 100);
    const top = cutOut(page, 0.02, 0.015, 0.46, 0.12);
    const isInk = (y: number): boolean => {
      for (let x = 0; x < top.width; x++) if ((top.data[(y * top.width + x) * 4] ?? 255) < 90) return true;
      return false;
    };
    const rows = Array.from({ length: top.height }, (_, y) => isInk(y));
    const first = rows.indexOf(true);
    const last = rows.indexOf(false, first);
    expect(((last - first) / 100) * 25.4).toBeGreaterThan(12); // mm; reading at arm's length, common practice, no source
  },
);
