import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { HOUSING_CAUTIONS } from "../../../src/core/say/housing.ts";
import { type Drawing, drawingOf } from "../../../src/core/stores/housing/drawing.ts";
import { housingFor } from "../../../src/core/stores/housing/housing.ts";
import { housingPaper } from "../../../src/edge/papers/housing-paper.ts";

const folder = mkdtempSync(join(tmpdir(), "leafward-housing-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const withPoppler = spawnSync("pdftotext", ["-v"]).error === undefined ? test : test.skip;

function drawingFor(height: number, width: number, thickness: number): Drawing {
  const outcome = housingFor("four-flap", { height, width, thickness });
  if (!outcome.ok) throw new Error("refused");
  return drawingOf(outcome.value.blanks);
}
const paperOf = (drawing: Drawing, sheet: "A4" | "Letter"): Promise<Uint8Array> =>
  housingPaper(
    {
      title: "Four-flap wrapper",
      subtitle: "A-17",
      drawing,
      pieces: [{ name: "wrapper", count: 1, size: "1 × 2 mm", grain: "up" }],
      making: ["Close it."],
      cautions: HOUSING_CAUTIONS,
    },
    sheet,
  );

interface Word {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}
/** Words of each page with their middles in mm. */
function wordsOf(pdf: Uint8Array): Word[][] {
  const file = join(folder, "paper.pdf");
  writeFileSync(file, pdf);
  const boxes = spawnSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8" }).stdout;
  const mm = 25.4 / 72;
  return boxes
    .split("<page ")
    .slice(1)
    .map((page) =>
      [...page.matchAll(/xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">([^<]+)</g)].map(
        ([, x0, y0, x1, y1, text = ""]) => ({
          text,
          x: (mm * (Number(x0) + Number(x1))) / 2,
          y: (mm * (Number(y0) + Number(y1))) / 2,
        }),
      ),
    );
}
const place = (words: readonly Word[], text: string): Word =>
  words.find((word) => word.text === text) ?? { text, x: Number.NaN, y: Number.NaN };

describe("a drawing on paper", () => {
  // base 61 × 41, walls 5.5 to 7, half head flaps 30.5: all on one page
  const small = drawingFor(60, 40, 5);

  withPoppler.each(["A4", "Letter"] as const)(
    "is at true scale on %s: measures stand as far apart as on the piece",
    async (sheet) => {
      const [, page = []] = wordsOf(await paperOf(small, sheet));
      const label = (part: string) => small.labels.find(({ says }) => "part" in says && says.part === part);
      const [spine, fore] = [label("spine-flap"), label("fore-edge-flap")];
      const [head, tail] = [label("head-flap"), label("tail-flap")];
      if (!spine || !fore || !head || !tail) throw new Error("four flaps");
      const word = (text: string) => place(page, text);
      // one word each side of the base: their distance is the distance of the flaps' middles
      expect(word("fore-edge").x - word("spine").x).toBeGreaterThan(0);
      expect(word("tail").y - word("head").y).toBeCloseTo(tail.y - head.y, 0);
      expect(Math.abs(word("tail").y - word("head").y - (tail.y - head.y))).toBeLessThan(0.3);
    },
  );
  withPoppler("has a page of pieces and cautions, then the drawing with its bar", async () => {
    const [first = [], second = [], ...more] = wordsOf(await paperOf(small, "A4"));
    const text = (words: readonly Word[]) => words.map((word) => word.text).join(" ");
    expect(more).toEqual([]);
    expect(text(first)).toContain("a steel rule with a guard");
    expect(text(first)).toContain("Follow local rules and licensed practice.");
    expect(text(second)).toContain("100 mm");
    expect(text(second)).toContain("row 1, column 1");
  });
  withPoppler(
    "too large for a sheet, is on several, each named by row and column as on the map",
    async () => {
      const [first = [], ...pages] = wordsOf(await paperOf(drawingFor(240, 165, 32), "A4"));
      expect(pages.length).toBeGreaterThan(4);
      for (const words of pages) {
        const at = words.findIndex((word) => word.text === "row");
        const [row, column] = [words[at + 1]?.text.replace(",", ""), words[at + 3]?.text];
        expect(first.map((word) => word.text)).toContain(`${row}–${column}`);
      }
    },
  );
  test("the same drawing gives the same bytes, tagged and accessible", async () => {
    const [first, second] = [await paperOf(small, "A4"), await paperOf(small, "A4")];
    expect(Buffer.compare(first, second)).toBe(0);
    expect(Buffer.from(first).toString("latin1")).toMatch(/pdfuaid:part>1</); // ISO 14289-1
  });
});
