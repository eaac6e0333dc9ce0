import { describe, expect, test } from "vitest";
import { type Drawing, drawingOf } from "../../../../src/core/stores/housing/drawing.ts";
import { HOUSING_KINDS, type HousingKind, housingFor } from "../../../../src/core/stores/housing/housing.ts";
import { tilesOf } from "../../../../src/core/stores/housing/tiles.ts";

function drawn(kind: HousingKind): Drawing {
  const outcome = housingFor(kind, { height: 240, width: 165, thickness: 32 });
  if (!outcome.ok) throw new Error("refused");
  return drawingOf(outcome.value.blanks);
}
const FIELD = { width: 186, height: 256 };

describe("a drawing", () => {
  test.each(HOUSING_KINDS)("%s: every line and label lies on it", (kind) => {
    const { width, height, lines, labels } = drawn(kind);
    for (const { x, y } of [...lines.flatMap(({ from, to }) => [from, to]), ...labels])
      expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true);
  });
  test("shows each board as often as it is needed", () => {
    const names = drawn("drop-back").labels.flatMap(({ says }) => ("part" in says ? [says.part] : []));
    expect(names.filter((part) => part === "inner-side-wall")).toHaveLength(2);
    expect(names).toHaveLength(11);
  });
  test("each measure stands beside its stretch, the whole below and on the right", () => {
    const figures = drawn("four-flap").labels.flatMap(({ says }) => ("figure" in says ? [says.figure] : []));
    for (const figure of ["166", "34", "33.5", "120.5", "33", "241", "32.5", "565.5", "547.5", "164"])
      expect(figures).toContain(figure);
  });
});

describe("pages of a drawing", () => {
  test.each(HOUSING_KINDS)("%s: every cut and fold is on some page, whole", (kind) => {
    const drawing = drawn(kind);
    const tiles = tilesOf(drawing, FIELD);
    for (const { from, to, kind: of } of drawing.lines.filter((line) => line.kind !== "measure")) {
      // sampled along the line: each of its points is on a page
      for (let t = 0.005; t < 1; t += 0.01) {
        const [x, y] = [from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)];
        const on = tiles.some(
          (tile) => x >= tile.x && x <= tile.x + tile.width && y >= tile.y && y <= tile.y + tile.height,
        );
        expect(on, `${of} at ${x}, ${y}`).toBe(true);
      }
    }
  });
  test("join without gap or overlap", () => {
    for (const { row, column, x, y } of tilesOf(drawn("drop-back"), FIELD))
      expect([x, y]).toEqual([(column - 1) * FIELD.width, (row - 1) * FIELD.height]);
  });
  test("a page on which nothing is cut or folded is left out", () => {
    const drawing = drawn("four-flap");
    const grid = Math.ceil(drawing.width / FIELD.width) * Math.ceil(drawing.height / FIELD.height);
    expect(tilesOf(drawing, FIELD).length).toBeLessThan(grid);
  });
});
