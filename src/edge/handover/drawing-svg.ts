import { escaped } from "../../core/plan/picture/marks.ts";
import { DRAWING_WORDS, sayLabel } from "../../core/say/housing.ts";
import type { Segment } from "../../core/stores/housing/blank.ts";
import type { Drawing, Label, LineKind } from "../../core/stores/housing/drawing.ts";
import type { Sheet } from "../../core/stores/housing/sheets.ts";

/** Told apart by stroke, not by colour: a heavy line cuts, dashes fold, a hair line measures. */
const STROKES: Readonly<Record<LineKind | "grain", string>> = {
  cut: 'stroke-width="0.6"',
  fold: 'stroke-width="0.4" stroke-dasharray="4 2"',
  measure: 'stroke-width="0.15"',
  grain: 'stroke-width="0.25" stroke-dasharray="0.8 0.8"',
};
const KINDS: readonly LineKind[] = ["measure", "fold", "cut"];

/** The part of a drawing that lies in a window, at true scale when printed at 100 %. @param window mm; may reach beyond the drawing */
export function svgWindow(
  drawing: Drawing,
  window: Sheet & { readonly x: number; readonly y: number },
): string {
  const { x, y, width, height } = window;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${shown(width)}mm" height="${shown(height)}mm" viewBox="${[x, y, width, height].map(shown).join(" ")}">`,
    picture(drawing),
    "</svg>\n",
  ].join("\n");
}

/** The whole drawing with its legend and a bar of 100 mm below. */
export function drawingSvg(drawing: Drawing, title: string): string {
  const [width, height] = [Math.max(drawing.width, LEGEND_WIDTH), drawing.height + LEGEND_HEIGHT];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${shown(width)}mm" height="${shown(height)}mm" viewBox="0 0 ${shown(width)} ${shown(height)}">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    picture(drawing),
    legend(drawing.height, title),
    "</svg>\n",
  ].join("\n");
}

function picture(drawing: Drawing): string {
  const groups = KINDS.map((kind) =>
    group(
      kind,
      drawing.lines.filter((line) => line.kind === kind),
    ),
  );
  return [
    ...groups,
    group("grain", drawing.grain.flatMap(arrow)),
    `<g font-family="Noto Sans, sans-serif" text-anchor="middle" fill="#000">${drawing.labels.map(text).join("")}</g>`,
  ].join("\n");
}

const group = (kind: LineKind | "grain", lines: readonly Segment[]): string =>
  `<path fill="none" stroke="#000" ${STROKES[kind]} d="${lines.map(({ from, to }) => `M${shown(from.x)} ${shown(from.y)}L${shown(to.x)} ${shown(to.y)}`).join("")}"/>`;

/** The shaft and both heads of an upright arrow. */
export function arrow({ from, to }: Segment): Segment[] {
  const head = Math.min(3, Math.abs(to.y - from.y) / 4);
  const tip = ({ x, y }: Segment["from"], way: number): Segment[] =>
    [-1, 1].map((side) => ({ from: { x, y }, to: { x: x + (side * head) / 2, y: y + way * head } }));
  return [{ from, to }, ...tip(from, 1), ...tip(to, -1)];
}

/** Letters stand a third of their height below their middle. */
function text(label: Label): string {
  const { x, y, size, upright } = label;
  const turn = upright ? ` transform="rotate(-90 ${shown(x)} ${shown(y)})"` : "";
  return `<text x="${shown(x)}" y="${shown(y + 0.35 * size)}" font-size="${shown(size)}"${turn}>${escaped(sayLabel(label))}</text>`;
}

const LEGEND_WIDTH = 300;
const LEGEND_HEIGHT = 30;

function legend(y: number, title: string): string {
  const kinds = [
    ["cut", 20],
    ["fold", 60],
    ["measure", 132],
    ["grain", 188],
  ] as const;
  const [top, middle] = [y + 4, y + 14];
  const lines = kinds.map(([kind, x]) => {
    const line = { from: { x, y: middle }, to: { x: x + 14, y: middle } };
    return `${group(kind, [line])}<text x="${x + 16}" y="${middle + 1.3}">${DRAWING_WORDS[kind]}</text>`;
  });
  const bar = { x: 20, y: y + 22 };
  const stroke = group("cut", [
    { from: bar, to: { x: bar.x + 100, y: bar.y } },
    ...[0, 100].map((x) => ({ from: { x: bar.x + x, y: bar.y - 2 }, to: { x: bar.x + x, y: bar.y + 2 } })),
  ]);
  return `<g font-family="Noto Sans, sans-serif" font-size="3.8"><text x="20" y="${top + 2}" font-weight="bold">${escaped(title)}</text>${lines.join("")}${stroke}<text x="${bar.x + 104}" y="${bar.y + 1.3}">${DRAWING_WORDS.bar}</text></g>`;
}

const shown = (mm: number): string => String(Math.round(mm * 1000) / 1000);
