import type { Blank, Part, Point, Segment } from "./blank.ts";
import { tenths } from "./measures.ts";
import type { Sheet } from "./sheets.ts";

/* A drawing at true scale: mm, x to the right, y down from the upper left corner. */

export type LineKind = "cut" | "fold" | "measure";
export interface Line extends Segment {
  readonly kind: LineKind;
}

/** Words or a figure, centred on their point; `upright` reads from below. */
export interface Label extends Point {
  readonly says: { readonly part: Part; readonly count: number } | { readonly figure: string };
  /** Height of the letters, mm. */
  readonly size: number;
  readonly upright: boolean;
}

export interface Drawing extends Sheet {
  readonly lines: readonly Line[];
  readonly labels: readonly Label[];
  /** One arrow with two heads for each piece, along its grain. */
  readonly grain: readonly Segment[];
}

/** Room around each piece for its measures, mm. */
const MARGIN = 20;
const LETTERS = 4;
/** A row is closed when it would grow wider than this, mm, and wider than its widest piece. */
const ROW = 700;

/** All pieces on one drawing, in rows, each with its measures. */
export function drawingOf(blanks: readonly Blank[]): Drawing {
  const each = blanks.flatMap((blank) => Array.from({ length: blank.count }, () => blank));
  const row = Math.max(ROW, ...each.map(({ width }) => width + 2 * MARGIN));
  const placed: { readonly blank: Blank; readonly at: Point }[] = [];
  let [x, y, deep, width] = [0, 0, 0, 0];
  for (const blank of each) {
    const [wide, high] = [blank.width + 2 * MARGIN, blank.height + 2 * MARGIN];
    if (x + wide > row) [x, y, deep] = [0, y + deep, 0];
    placed.push({ blank, at: { x: x + MARGIN, y: y + MARGIN } });
    x += wide;
    deep = Math.max(deep, high);
    width = Math.max(width, x);
  }
  return {
    width,
    height: y + deep,
    lines: placed.flatMap(({ blank, at }) => linesOf(blank).map((line) => ({ ...line, ...moved(line, at) }))),
    labels: placed.flatMap(({ blank, at }) =>
      labelsOf(blank).map((label) => ({ ...label, x: label.x + at.x, y: label.y + at.y })),
    ),
    grain: placed.map(({ blank, at }) => moved(grainOf(blank), at)),
  };
}

const moved = ({ from, to }: Segment, at: Point): Segment => ({
  from: { x: from.x + at.x, y: from.y + at.y },
  to: { x: to.x + at.x, y: to.y + at.y },
});

function linesOf(blank: Blank): Line[] {
  const cuts = blank.outline.map((from, at): Line => {
    const to = blank.outline[(at + 1) % blank.outline.length] ?? from;
    return { kind: "cut", from, to };
  });
  const folds = blank.folds.map((fold): Line => ({ kind: "fold", ...fold }));
  return [...cuts, ...folds, ...chains(blank).flatMap(chainLines)];
}

/** Measures in a row: `level` beneath one another or not, `at` how far off, the stops along it. */
interface Chain {
  readonly level: boolean;
  readonly at: number;
  readonly stops: readonly number[];
}

/** Part by part on the left and above, the whole on the right and below. */
function chains({ width, height, across, down, inside }: Blank): Chain[] {
  const above: Chain = { level: true, at: -8, stops: across };
  const left: Chain = { level: false, at: -8, stops: down };
  const below: Chain = { level: true, at: height + 8, stops: [0, width] };
  const right: Chain = { level: false, at: width + 8, stops: [0, height] };
  const own = inside.map(({ from, to }): Chain => ({ level: true, at: from.y, stops: [from.x, to.x] }));
  return [above, left, ...own, ...(across.length > 2 ? [below] : []), ...(down.length > 2 ? [right] : [])];
}

const TICK = 1.5;
/** The line, and a slanting stroke at each stop with a short line across it. */
function chainLines({ level, at, stops }: Chain): Line[] {
  const place = (along: number, off: number): Point => (level ? { x: along, y: off } : { x: off, y: along });
  const line = (from: Point, to: Point): Line => ({ kind: "measure", from, to });
  const [first = 0, last = 0] = [stops[0], stops.at(-1)];
  return [
    line(place(first, at), place(last, at)),
    ...stops.flatMap((stop) => [
      line(place(stop, at - 3), place(stop, at + 3)),
      line(place(stop - TICK, at + (level ? TICK : -TICK)), place(stop + TICK, at + (level ? -TICK : TICK))),
    ]),
  ];
}

/** Digits are about this wide for their height. */
const LETTER_WIDTH = 0.62;
const lengthOf = (text: string, size: number): number => text.length * LETTER_WIDTH * size;

function labelsOf(blank: Blank): Label[] {
  const figures = chains(blank).flatMap(({ level, at, stops }) =>
    stops.slice(1).map((stop, i): Label => {
      const from = stops[i] ?? 0;
      const figure = tenths(stop - from);
      const fits = lengthOf(figure, LETTERS) < stop - from;
      const middle = (from + stop) / 2;
      const off = at + (at < 0 ? -1 : 1) * (fits ? 3.2 : 3.6 + lengthOf(figure, LETTERS) / 2);
      const position = level ? { x: middle, y: off } : { x: off, y: middle };
      return { ...position, says: { figure }, size: LETTERS, upright: level !== fits };
    }),
  );
  const names = blank.fields.map((field): Label => {
    const long = Math.max(field.width, field.height);
    const short = Math.min(field.width, field.height);
    return {
      x: field.x + field.width / 2,
      y: field.y + field.height / 2,
      says: { part: field.part, count: 1 },
      size: Math.min(6, 0.4 * short, long / 12),
      upright: field.height > 1.5 * field.width,
    };
  });
  return [...figures, ...names];
}

/** Along the height, a quarter in from the left of the field named first. */
function grainOf(blank: Blank): Segment {
  const base = blank.fields[0] ?? { x: 0, y: 0, width: blank.width, height: blank.height };
  const x = base.x + 0.2 * base.width;
  const reach = Math.min(30, 0.3 * base.height);
  const middle = base.y + base.height / 2;
  return { from: { x, y: middle - reach }, to: { x, y: middle + reach } };
}
