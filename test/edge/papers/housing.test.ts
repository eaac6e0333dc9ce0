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
describe("a drawing on paper", () => {
  // base 61 × 41, walls 9.5 to 11, half head flaps: all on one page
  const small = drawingFor(60, 40, 9);

  withPoppler.each(["A4", "Letter"] as const)(
    "is at true scale on %s: figures stand as far apart as on the piece, to 0.1 mm",
    async (sheet) => {
      const [, page = []] = wordsOf(await paperOf(small, sheet));
      const label = (figure: string) =>
        small.labels.find(({ says }) => "figure" in says && says.figure === figure) ?? { x: 0, y: 0 };
      const printed = (figure: string) => page.find(({ text }) => text === figure) ?? { x: 0, y: 0 };
      // spine and fore-edge wall along the top; head and tail wall down the side
      const across = label("10.5").x - label("11").x;
      const down = label("9.5").y - label("10").y;
      expect([across, down]).toEqual([51.75, 70.75]); // 41 + (11 + 10.5) / 2; 61 + (10 + 9.5) / 2
      expect(Math.abs(printed("10.5").x - printed("11").x - across)).toBeLessThan(0.1);
      expect(Math.abs(printed("9.5").y - printed("10").y - down)).toBeLessThan(0.1);
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
