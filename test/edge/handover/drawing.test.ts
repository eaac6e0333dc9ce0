import dxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import { type Drawing, drawingOf } from "../../../src/core/stores/housing/drawing.ts";
import { HOUSING_KINDS, type HousingKind, housingFor } from "../../../src/core/stores/housing/housing.ts";
import { drawingDxf } from "../../../src/edge/handover/drawing-dxf.ts";
import { drawingSvg } from "../../../src/edge/handover/drawing-svg.ts";

function drawn(kind: HousingKind): Drawing {
  const outcome = housingFor(kind, { height: 240, width: 165, thickness: 32 });
  if (!outcome.ok) throw new Error("refused");
  return drawingOf(outcome.value.blanks);
}

// Its types promise a default beside other names; Node hands over the class itself.
const DxfParser = dxfParser as unknown as typeof dxfParser.default;

/** What an independent reader (dxf-parser 1.1.2) finds. */
function read(kind: HousingKind) {
  const found = new DxfParser().parseSync(drawingDxf(drawn(kind), "A title"));
  if (!found) throw new Error("not read");
  const lines = found.entities.flatMap((each) => ("vertices" in each ? [each as unknown as ReadLine] : []));
  const texts = found.entities.flatMap((each) => ("text" in each ? [String(each.text)] : []));
  return { found, lines, texts };
}
interface ReadLine {
  readonly layer: string;
  readonly vertices: readonly { readonly x: number; readonly y: number }[];
}
const lengthOf = ({ vertices: [a, b] }: ReadLine): number =>
  a && b ? Math.hypot(a.x - b.x, a.y - b.y) : Number.NaN;

describe("DXF of release 12", () => {
  test.each(HOUSING_KINDS)(
    "%s: another reader finds every cut and fold in its layer, at its length",
    (kind) => {
      const { lines } = read(kind);
      const wanted = drawn(kind).lines;
      for (const [layer, of] of [
        ["CUT", "cut"],
        ["FOLD", "fold"],
      ] as const) {
        const ours = wanted.filter((line) => line.kind === of);
        const theirs = lines.filter((line) => line.layer === layer);
        const sum = ours.reduce((total, { from, to }) => total + Math.hypot(to.x - from.x, to.y - from.y), 0);
        expect(theirs).toHaveLength(ours.length);
        expect(theirs.reduce((total, line) => total + lengthOf(line), 0)).toBeCloseTo(sum, 2);
      }
    },
  );
  test("has the three layers, folds dashed, and words as text", () => {
    const { found, texts } = read("four-flap");
    expect(Object.keys(found.tables.layer.layers)).toEqual(["CUT", "FOLD", "TEXT"]);
    expect(Object.keys(found.tables.lineType.lineTypes)).toContain("DASHED");
    expect(texts).toEqual(expect.arrayContaining(["head flap", "565.5", "100 mm", "A title"]));
  });
  test("the head stands above the tail, as y goes up there", () => {
    const { found } = read("four-flap");
    const heightOf = (text: string): number => {
      const entity = found.entities.find((each) => "text" in each && each.text === text);
      return (entity as unknown as { startPoint: { y: number } }).startPoint.y;
    };
    expect(heightOf("head flap")).toBeGreaterThan(heightOf("tail flap"));
  });
  test("is plain ASCII", () => {
    expect(drawingDxf(drawn("two-strip"), "Größe 240 × 165")).toMatch(/^[\x20-\x7e\r\n]*$/);
  });
});

describe("SVG", () => {
  test.each(HOUSING_KINDS)("%s: one unit is one millimetre on paper", (kind) => {
    const svg = drawingSvg(drawn(kind), "A title");
    const [, width, height, box] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([\d. ]+)"/.exec(svg) ?? [];
    expect(box).toBe(`0 0 ${width} ${height}`);
  });
  test("tells cut, fold and measure apart without colour, and says how", () => {
    const svg = drawingSvg(drawn("jacket"), "A title");
    expect(new Set(svg.match(/#[0-9a-f]{3,6}\b/g))).toEqual(new Set(["#fff", "#000"]));
    expect(svg).toMatch(/>cut<.*>fold \(crease, never cut\)<.*>measures in mm<.*>grain</);
    expect(svg).toMatch(/stroke-width="0.4" stroke-dasharray="4 2"/);
  });
  test("a title cannot break out of it", () => {
    expect(drawingSvg(drawn("jacket"), "</title><script>")).not.toContain("<script>");
  });
});
