import { area, arrow, box, cross, diamond, line, text } from "./marks.ts";
import type { PictureWords } from "./words.ts";

const ROW = 17;
const COLUMNS = 5;
const COLUMN = 196;
const LEFT = 60;

/** Every mark once, with its words. */
export function keyOf({ key }: PictureWords, top: number): string[] {
  const signs: [(x: number, y: number) => string, string][] = [
    [(x, y) => box(x + 6, y - 10, 10, 10, "black"), key.bar],
    [(x, y) => line(x, y - 5, x + 22, y - 5, 1, "4 2"), key.limit],
    [(x, y) => box(x, y - 10, 22, 10, "away"), key.away],
    [(x, y) => line(x, y - 6.5, x + 22, y - 6.5, 0.7) + line(x, y - 3.5, x + 22, y - 3.5, 0.7), key.clean],
    [(x, y) => area(`M${x} ${y}V${y - 10}H${x + 22}V${y}Z`, "used", 1), key.used],
    [(x, y) => area(`M${x} ${y}V${y - 10}H${x + 22}V${y}Z`, "none", 0.6), key.open],
    [(x, y) => arrow(x + 11, y - 10), key.delivery],
    [(x, y) => diamond(x + 11, y - 5), key.order],
    [(x, y) => cross(x + 11, y - 5), key.out],
    [(x, y) => box(x, y - 10, 22, 10, "range", 1), key.range],
  ];
  return signs.flatMap(([sign, words], at) => {
    const x = LEFT + (at % COLUMNS) * COLUMN;
    const y = top + Math.floor(at / COLUMNS) * ROW;
    return [sign(x, y), text(x + 28, y - 1, words, 'font-size="11"')];
  });
}
