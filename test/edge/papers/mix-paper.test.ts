import { expect, test } from "vitest";
import { hazardSvg } from "../../../src/edge/papers/hazard-signs.ts";
import { pictogramBox } from "../../../src/edge/papers/mix-paper.ts";

/** Side of the square in its drawing, as a share of the box it is printed in. */
function sideShare(svg: string): number {
  const [, path = ""] = /d="(M50 [^"]*Z)" fill="#ffffff"/.exec(svg) ?? [];
  const points = [...path.matchAll(/(\d+) (\d+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
  const [a = [0, 0], b = [0, 0]] = points;
  return Math.hypot(a[0] - b[0], a[1] - b[1]) / 100;
}

// CLP Regulation (EC) 1272/2008, annex I, 1.2.1 and table 1.3: a red square set on its point; up to 3 litres if possible 16 × 16 mm and a
// label of 52 × 74, up to 50 litres at least 23 × 23 mm and 74 × 105.
test.each([
  ["GHS02", "small", 16],
  ["GHS07", "small", 16],
  ["GHS02", "large", 23],
  ["GHS07", "large", 23],
] as const)("%s on a %s label is a square of %d mm", (code, size, side) => {
  expect(sideShare(hazardSvg(code) ?? "") * pictogramBox(size)).toBeGreaterThan(side - 0.05);
});
