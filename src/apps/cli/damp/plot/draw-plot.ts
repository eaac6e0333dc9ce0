import type { Run } from "../../../../core/physics/mould/climate-series.ts";
import { type MouldTrack, mouldTrack } from "../../../../core/physics/mould/mould-track.ts";
import type { AirFigures } from "../../../../core/say/damp/air-figures.ts";
import { PLOT_WORDS, sayPlotText } from "../../../../core/say/damp/air-plot.ts";
import { type AirSeries, climateOf, judgedRelHum, rangeOf } from "../air-series.ts";
import { linePath } from "./thin.ts";
import { type Tick, timeTicks, valueTicks } from "./ticks.ts";

/* Temperature, humidity, lamps and mould index over one time axis, as SVG in black on white. Lengths are user units (px). */

const WIDTH = 1000;
const LEFT = 64;
const RIGHT = 84;
const TEMPERATURE = { top: 64, height: 130 };
const HUMIDITY = { top: 232, height: 190 };
/** Each band below its own name. */
const LAMPS = { top: 446, name: 16, height: 14, gap: 8 };
const INDEX = { top: 592, height: 120 };
const AXIS = INDEX.top + INDEX.height;
const HEIGHT = AXIS + 58;
const INNER = WIDTH - LEFT - RIGHT;

interface Panel {
  readonly top: number;
  readonly height: number;
}

export function drawPlot(of: {
  name: string;
  series: AirSeries;
  figures: AirFigures;
  verdict: string;
}): string {
  const { name, series, figures, verdict } = of;
  const track = mouldTrack(climateOf(series), { growthClass: figures.watch.index.growthClass });
  const [from, to] = [series.hours[0] ?? 0, series.hours.at(-1) ?? 1];
  const span = Math.max(1, to - from);
  const x = (hours: number): number => LEFT + (INNER * (hours - from)) / span;
  const ticks = timeTicks(from, from + span);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-labelledby="title desc" font-family="sans-serif" font-size="13">`,
    `<title id="title">${escaped(PLOT_WORDS.title(name))}</title>`,
    `<desc id="desc">${escaped(sayPlotText(name, from, to, verdict, figures))}</desc>`,
    HATCHES,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    text(LEFT, 30, PLOT_WORDS.title(name), 'font-size="19" font-weight="bold"'),
    ...temperaturePanel(series, x, ticks),
    ...humidityPanel(series, x, ticks),
    ...lampBands(track, x),
    ...indexPanel(track, x, ticks),
    ...ticks.map(({ at, label }) => text(x(at), AXIS + 20, label, 'text-anchor="middle"')),
    text(LEFT + INNER / 2, AXIS + 44, PLOT_WORDS.time(from, to), 'text-anchor="middle"'),
    "</svg>",
    "",
  ].join("\n");
}

type X = (hours: number) => number;

function temperaturePanel({ hours, dryBulb }: AirSeries, x: X, ticks: readonly Tick[]): string[] {
  const { low, high } = rangeOf(dryBulb);
  const [least, most] = Number.isNaN(low) ? [0, 30] : [Math.floor(low - 1), Math.ceil(high + 1)];
  const y = yOf(TEMPERATURE, least, most);
  return [
    ...panel(TEMPERATURE, PLOT_WORDS.temperature, valueTicks(least, most), y, ticks, x),
    line(linePath(hours, dryBulb, { x, y }), 1),
  ];
}

function humidityPanel(series: AirSeries, x: X, ticks: readonly Tick[]): string[] {
  const y = yOf(HUMIDITY, 0, 100);
  const percent = judgedRelHum(series).map((value) => 100 * value);
  return [
    ...panel(HUMIDITY, PLOT_WORDS.relHum(series.surface !== undefined), valueTicks(0, 100), y, ticks, x),
    line(linePath(series.hours, percent, { x, y }), 1),
    ...mark(y(60), "60 %", "2 4", y(60) + 10),
    ...mark(y(65), "65 %", "9 4", y(65)),
  ];
}

/** A limit across a panel, on a white ground so that it shows on a dense line, with its name to the right. */
const mark = (y: number, label: string, dash: string, labelAt = y + 4): string[] => [
  `<path d="M${LEFT} ${round(y)}h${INNER}" stroke="#fff" stroke-width="3.5" fill="none"/>`,
  `<path d="M${LEFT} ${round(y)}h${INNER}" stroke="#000" stroke-width="1.3" stroke-dasharray="${dash}" fill="none"/>`,
  text(LEFT + INNER + 6, labelAt, label, ""),
];

/** A band for each lamp, filled where it is lit, each with a pattern of its own. */
function lampBands({ lit }: MouldTrack, x: X): string[] {
  return [lit.damp, lit.critical, lit.index].flatMap((runs, i) => {
    const name = LAMPS.top + i * (LAMPS.name + LAMPS.height + LAMPS.gap);
    const top = name + LAMPS.name;
    return [
      text(LEFT, top - 4, PLOT_WORDS.lamps[i] ?? "", 'font-weight="bold"'),
      ...pixelSpans(runs, x).map(
        ([a, b]) =>
          `<rect x="${a}" y="${top}" width="${round(b - a)}" height="${LAMPS.height}" fill="url(#lamp${i + 1})" stroke="#000" stroke-width="0.5"/>`,
      ),
      `<rect x="${LEFT}" y="${top}" width="${INNER}" height="${LAMPS.height}" fill="none" stroke="#000" stroke-width="0.8"/>`,
    ];
  });
}

/** Lit stretches as spans of pixels, joined where they touch, at least a pixel wide. */
function pixelSpans(runs: readonly Run[], x: X): [number, number][] {
  const spans: [number, number][] = [];
  for (const { from, hours } of runs) {
    const [a, b] = [round(x(from)), round(Math.max(x(from + hours), x(from) + 1))];
    const last = spans.at(-1);
    if (last && a <= last[1] + 1) last[1] = Math.max(last[1], b);
    else spans.push([a, b]);
  }
  return spans;
}

function indexPanel({ hours, index }: MouldTrack, x: X, ticks: readonly Tick[]): string[] {
  const y = yOf(INDEX, 0, 6);
  return [
    ...panel(INDEX, PLOT_WORDS.index, valueTicks(0, 6), y, ticks, x),
    ...mark(y(1), PLOT_WORDS.begun, "2 4"),
    ...mark(y(3), PLOT_WORDS.visible, "9 4"),
    line(linePath(hours, index, { x, y }), 2),
  ];
}

const yOf =
  ({ top, height }: Panel, low: number, high: number) =>
  (value: number): number =>
    top + height - (height * (value - low)) / (high - low);

/** Frame, grid, marks of the value axis, and what the panel shows. */
function panel(
  { top, height }: Panel,
  title: string,
  marks: readonly Tick[],
  y: (value: number) => number,
  ticks: readonly Tick[],
  x: X,
): string[] {
  return [
    text(LEFT, top - 8, title, 'font-weight="bold"'),
    ...ticks.map(
      ({ at }) => `<path d="M${round(x(at))} ${top}V${top + height}" stroke="#ccc" stroke-width="0.7"/>`,
    ),
    ...marks.map(
      ({ at }) => `<path d="M${LEFT} ${round(y(at))}H${LEFT + INNER}" stroke="#ccc" stroke-width="0.7"/>`,
    ),
    ...marks.map(({ at, label }) => text(LEFT - 8, round(y(at)) + 4, label, 'text-anchor="end"')),
    `<rect x="${LEFT}" y="${top}" width="${INNER}" height="${height}" fill="none" stroke="#000" stroke-width="0.8"/>`,
  ];
}

const line = (d: string, width: number): string =>
  `<path d="${d}" fill="none" stroke="#000" stroke-width="${width}" stroke-linejoin="round"/>`;
const text = (x: number, y: number, words: string, how: string): string =>
  `<text x="${round(x)}" y="${round(y)}"${how === "" ? "" : ` ${how}`}>${escaped(words)}</text>`;
const round = (n: number): number => Math.round(n * 10) / 10;
const escaped = (words: string): string =>
  words.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const HATCHES = `<defs>
<pattern id="lamp1" width="6" height="6" patternUnits="userSpaceOnUse"><rect width="6" height="6" fill="#fff"/><path d="M0 6L6 0" stroke="#000" stroke-width="1"/></pattern>
<pattern id="lamp2" width="5" height="5" patternUnits="userSpaceOnUse"><rect width="5" height="5" fill="#fff"/><path d="M0 5L5 0M0 0L5 5" stroke="#000" stroke-width="1"/></pattern>
<pattern id="lamp3" width="4" height="4" patternUnits="userSpaceOnUse"><rect width="4" height="4" fill="#000"/></pattern>
</defs>`;
