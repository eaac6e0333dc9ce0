import { writeFile } from "node:fs/promises";
import { dirname, extname, join } from "node:path";
import { GROWTH_CLASSES, type GrowthClassName } from "../../../core/physics/mould/mould-growth.ts";
import { type MouldWatch, watchMould } from "../../../core/physics/mould/mould-watch.ts";
import { CAUTIONS } from "../../../core/say/cautions/mould.ts";
import {
  AIR_TODO,
  airGrade,
  sayAirVerdict,
  sayPart,
  sayPlotWritten,
  saySurface,
  sayWarmerSurface,
} from "../../../core/say/damp/air.ts";
import { airComparison, compareWatches } from "../../../core/say/damp/air-comparison.ts";
import { type AirFigures, airFigures } from "../../../core/say/damp/air-figures.ts";
import { sayFault, sayRefusal } from "../../../core/say/damp/faults.ts";
import { moment } from "../../../core/say/damp/quantities.ts";
import { dayFrom } from "../../../core/units/day.ts";
import {
  type AirSeries,
  between,
  climateOf,
  countsOf,
  judgedRelHum,
  rangeOf,
  seriesFrom,
  withSurfaceOf,
  withSurfaceOffset,
} from "./air-series.ts";
import { Given, Refusal } from "./given.ts";
import { AIR_HELP } from "./help-damp.ts";
import { correctionsFrom, type FileRead, LOGGER_OPTIONS, readFile } from "./logger-files.ts";
import { drawPlot } from "./plot/draw-plot.ts";
import { answered, cannot, cautionsOf, type DampCommand, type Report, type Section } from "./report.ts";

const OPTIONS = {
  surface: "text",
  "surface-offset": "text",
  class: "text",
  from: "text",
  to: "text",
  plot: "text",
  ...LOGGER_OPTIONS,
} as const;

/** The last day counts to its end, and not the first moment of the next, h. */
const WHOLE_DAY = 24 - 1e-6;

interface Asked {
  readonly growthClass: GrowthClassName;
  readonly from: number;
  readonly to: number;
  readonly offset: number | null;
  readonly surface: Extract<FileRead, { ok: true }> | null;
}

/** One place watched. */
interface Watched {
  readonly name: string;
  readonly series: AirSeries;
  readonly watch: MouldWatch;
  readonly figures: AirFigures;
  readonly section: Section;
}

/** Can mould grow where the loggers lie: a section for each file, and a comparison where there are several. */
export const air: DampCommand = (args, out, complain) =>
  answered({ name: "air", help: AIR_HELP, options: OPTIONS }, [args, out, complain], async (given) => {
    if (given.files.length === 0) throw cannot("no-logger-file");
    const corrections = correctionsFrom(given);
    const asked = await askedOf(given);
    given.settle();
    const reads = await inTurn(given.files, (path) => readFile(path, corrections));
    const watched = reads.map((read) => (read.ok ? watchedOrFaults(read, asked) : read.faults));
    const good = watched.filter((each): each is Watched => "watch" in each);
    const faults = watched.filter((each): each is readonly string[] => !("watch" in each)).flat();
    if (good.length === 0) throw new Refusal(faults);
    for (const fault of faults) complain(fault);
    return withPlots(reportOf(good, faults.length > 0), good, given.text("plot"));
  });

async function inTurn<A, B>(all: readonly A[], one: (each: A) => Promise<B>): Promise<B[]> {
  const done: B[] = [];
  for (const each of all) done.push(await one(each));
  return done;
}

async function askedOf(given: Given): Promise<Asked> {
  const growthClass = given.oneOf(
    "class",
    Object.keys(GROWTH_CLASSES) as GrowthClassName[],
    "very-sensitive suits leather, paste and dirt.",
    "very-sensitive",
  );
  const offset = given.has("surface-offset")
    ? given.quantity("surface-offset", "kelvin", {
        low: -20,
        high: 20,
        remedy: "Give by how many kelvin the coldest surface is colder than the air, for example -3.",
      })
    : null;
  if (offset !== null && offset > 0) given.refuseInWords(sayWarmerSurface(offset));
  return {
    growthClass,
    offset,
    from: momentFrom(given, "from", 0) ?? Number.NEGATIVE_INFINITY,
    to: momentFrom(given, "to", WHOLE_DAY) ?? Number.POSITIVE_INFINITY,
    surface: await surfaceFrom(given),
  };
}

async function surfaceFrom(given: Given): Promise<Asked["surface"]> {
  const path = given.text("surface");
  if (path === undefined) return null;
  const read = await readFile(path, {});
  if (read.ok) return read;
  for (const fault of read.faults) given.refuseInWords(fault);
  return null;
}

/** Hours since 1970-01-01 of a day (with `dayAdds` hours) or a moment; null when none was given. */
function momentFrom(given: Given, name: string, dayAdds: number): number | null {
  const text = given.text(name);
  if (text === undefined) return null;
  const day = dayFrom(text);
  if (day !== null) return Date.parse(`${day}T00:00:00Z`) / 3.6e6 + dayAdds;
  const at = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}$/.test(text)
    ? Date.parse(`${text.replace(" ", "T")}:00Z`)
    : Number.NaN;
  if (!Number.isNaN(at)) return at / 3.6e6;
  given.refuseInWords(
    sayRefusal({
      option: `--${name}`,
      got: text,
      expected: "a day or a moment, year first",
      remedy: "Write it like 2026-06-01 or 2026-06-01T08:00.",
    }),
  );
  return null;
}

function watchedOrFaults(read: Extract<FileRead, { ok: true }>, asked: Asked): Watched | readonly string[] {
  const { reading, series } = read.read;
  if (reading.columns.temperature === undefined) return [sayFault("no-temperature", reading.file)];
  if (reading.columns.relHum === undefined && !reading.isHumidityFromDewPoint)
    return [sayFault("no-humidity", reading.file)];
  const inTime = between(seriesFrom(series), asked.from, asked.to);
  if (inTime.hours.length === 0)
    return [sayFault("no-readings-left", reading.file, `${reading.firstAt} to ${reading.lastAt}`)];
  const surface = surfaceOf(inTime, asked);
  if (surface.found === 0 && asked.surface)
    return [sayFault("surface-apart", asked.surface.read.reading.file)];
  return watched(read, surface.series, surface.understood, asked);
}

function surfaceOf(series: AirSeries, { surface, offset }: Asked) {
  if (surface !== null) {
    const both = withSurfaceOf(series, seriesFrom(surface.read.series));
    const understood = [surface.understood[0] ?? "", saySurface(both.found, series.hours.length)];
    return { series: both, found: both.found, understood };
  }
  return { series: offset === null ? series : withSurfaceOffset(series, offset), found: 0, understood: [] };
}

function watched(
  { name, understood }: Extract<FileRead, { ok: true }>,
  series: AirSeries,
  ofSurface: readonly string[],
  asked: Asked,
): Watched {
  const watch = watchMould(climateOf(series), { growthClass: asked.growthClass });
  const figures: AirFigures = {
    watch,
    ...countsOf(series.hours, judgedRelHum(series)),
    warmth: rangeOf(series.dryBulb),
    damp: rangeOf(series.relHum),
    judgedAt: asked.surface ? "surface file" : asked.offset === null ? "air" : "surface offset",
  };
  const section: Section = {
    understood: [...understood, ...partOf(series, asked), ...ofSurface],
    verdict: sayAirVerdict(name, watch),
    todo: AIR_TODO[airGrade(watch)],
    figures: airFigures(figures),
    cautions: cautionsOf(watch.cautions, CAUTIONS),
    data: {
      place: name,
      grade: airGrade(watch),
      watch: { ...watch, cautions: undefined },
      ...dataOf(figures, series),
    },
  };
  return { name, series, watch, figures, section };
}

const partOf = ({ hours }: AirSeries, { from, to }: Asked): string[] =>
  from === Number.NEGATIVE_INFINITY && to === Number.POSITIVE_INFINITY
    ? []
    : [sayPart(hours[0] ?? Number.NaN, hours.at(-1) ?? Number.NaN)];

const dataOf = ({ watch: _, ...figures }: AirFigures, { hours }: AirSeries) => ({
  ...figures,
  from: moment(hours[0] ?? Number.NaN),
  to: moment(hours.at(-1) ?? Number.NaN),
});

function reportOf(all: readonly Watched[], hadFaults: boolean): Report {
  const sorted = [...all].sort((a, b) => compareWatches(a.watch, b.watch));
  const rows = sorted.map(({ name, watch, figures }) => ({
    name,
    watch,
    above65: figures.above65,
    knownHours: figures.knownHours,
    meanDamp: figures.damp.mean,
    meanWarmth: figures.warmth.mean,
  }));
  const isWell = all.every(({ watch }) => watch.state === "quiet") && !hadFaults;
  return {
    sections: all.map(({ section }) => section),
    ...(all.length > 1
      ? {
          closing: airComparison(rows),
          closingData: rows.map(({ watch, ...row }) => ({
            ...row,
            state: watch.state,
            stateNow: watch.stateNow,
          })),
        }
      : {}),
    exit: isWell ? 0 : 1,
  };
}

/** Draws each place; the section says where the picture lies. */
async function withPlots(report: Report, all: readonly Watched[], file: string | undefined): Promise<Report> {
  if (file === undefined) return report;
  const sections: Section[] = [];
  for (const { name, series, figures, section } of all) {
    const path = all.length === 1 ? file : suffixed(file, name);
    await write(path, drawPlot({ name, series, figures, verdict: section.verdict }));
    sections.push({
      ...section,
      todo: [...section.todo],
      understood: [...section.understood, sayPlotWritten(path)],
    });
  }
  return { ...report, sections };
}

function suffixed(file: string, name: string): string {
  const ending = extname(file) || ".svg";
  const stem = file.slice(0, file.length - extname(file).length);
  return join(
    dirname(stem),
    `${stem.slice(dirname(stem) === "." ? 0 : dirname(stem).length + 1)}-${name}${ending}`,
  );
}

async function write(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text);
  } catch (error) {
    throw cannot("plot-not-written", path, error instanceof Error ? (error.message.split(",")[0] ?? "") : "");
  }
}
