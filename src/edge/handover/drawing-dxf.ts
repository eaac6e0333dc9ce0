import { DRAWING_WORDS, sayLabel } from "../../core/say/housing.ts";
import type { Point, Segment } from "../../core/stores/housing/blank.ts";
import type { Drawing, LineKind } from "../../core/stores/housing/drawing.ts";
import { arrow } from "./drawing-svg.ts";

/* A drawing for cutting machines: DXF of release 12 in letters, LINE and TEXT only. One unit is a millimetre; release 12 cannot
   say so, hence the bar of 100 in the layer TEXT. Source: DXF Reference, group codes, from memory; read back by dxf-parser in a test. */

type Pair = readonly [code: number, value: string | number];
const LAYERS = { CUT: "CONTINUOUS", FOLD: "DASHED", TEXT: "CONTINUOUS" } as const;
type Layer = keyof typeof LAYERS;
const LAYER_OF: Readonly<Record<LineKind, Layer>> = { cut: "CUT", fold: "FOLD", measure: "TEXT" };

export function drawingDxf(drawing: Drawing, title: string): string {
  // in DXF y goes up
  const up = ({ x, y }: Point): Point => ({ x, y: drawing.height - y });
  const line = (layer: Layer, { from, to }: Segment): Pair[] => [
    [0, "LINE"],
    [8, layer],
    ...at(10, up(from)),
    ...at(11, up(to)),
  ];
  const words = (text: string, where: Point, size: number, upright = false): Pair[] => [
    [0, "TEXT"],
    [8, "TEXT"],
    ...at(10, up(where)),
    [40, figure(size)],
    [1, plainLetters(text)],
    ...(upright ? ([[50, 90]] as const) : []),
    [72, 1],
    ...at(11, up(where)),
    [73, 2],
  ];
  const bar = { from: { x: 0, y: drawing.height + 10 }, to: { x: 100, y: drawing.height + 10 } };
  return written([
    ...section("HEADER", [
      [9, "$ACADVER"],
      [1, "AC1009"],
    ]),
    ...section("TABLES", [...lineTypes(), ...layers()]),
    ...section("ENTITIES", [
      ...drawing.lines.flatMap((each) => line(LAYER_OF[each.kind], each)),
      ...drawing.grain.flatMap(arrow).flatMap((each) => line("TEXT", each)),
      ...drawing.labels.flatMap((label) => words(sayLabel(label), label, label.size, label.upright)),
      ...line("TEXT", bar),
      ...words(DRAWING_WORDS.bar, { x: 50, y: drawing.height + 6 }, 4),
      ...words(title, { x: 50, y: drawing.height + 18 }, 4),
    ]),
    [0, "EOF"],
  ]);
}

const section = (name: string, pairs: readonly Pair[]): Pair[] => [
  [0, "SECTION"],
  [2, name],
  ...pairs,
  [0, "ENDSEC"],
];
const table = (name: string, rows: readonly (readonly Pair[])[]): Pair[] => [
  [0, "TABLE"],
  [2, name],
  [70, rows.length],
  ...rows.flat(),
  [0, "ENDTAB"],
];

function lineTypes(): Pair[] {
  const type = (name: string, words: string, dashes: readonly number[]): Pair[] => [
    [0, "LTYPE"],
    [2, name],
    [70, 0],
    [3, words],
    [72, 65],
    [73, dashes.length],
    [40, dashes.reduce((sum, dash) => sum + Math.abs(dash), 0)],
    ...dashes.map((dash): Pair => [49, dash]),
  ];
  return table("LTYPE", [type("CONTINUOUS", "Solid", []), type("DASHED", "Dashed", [4, -2])]);
}

const layers = (): Pair[] =>
  table(
    "LAYER",
    Object.entries(LAYERS).map(([name, type]): Pair[] => [
      [0, "LAYER"],
      [2, name],
      [70, 0],
      [62, 7],
      [6, type],
    ]),
  );

const at = (code: 10 | 11, { x, y }: Point): Pair[] => [
  [code, figure(x)],
  [code + 10, figure(y)],
  [code + 20, figure(0)],
];
const figure = (mm: number): string => (Math.round(mm * 1e4) / 1e4).toFixed(4);
/** Release 12 knows ASCII only. */
const plainLetters = (text: string): string => text.replaceAll("×", "x").replace(/[^\x20-\x7e]/g, "?");
const written = (pairs: readonly Pair[]): string =>
  pairs.map(([code, value]) => `${code}\r\n${value}\r\n`).join("");
