/** The mould watch over ten loggers for five years: ours, and the same watch in plain C on the same readings. `npx tsx bench/mould.ts` */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type MouldWatch, watchMould } from "../src/core/physics/mould/mould-watch.ts";
import { dampStore, READINGS, type StoreSeries } from "./damp-store.ts";

const REPEATS = 7;
const MOST_SECONDS = 1.5;
const MOST_RATIO = 1.5;
/** Mean humidity of each logger's place: from a dry room to a cellar where everything grows. */
const DAMPNESS = [0.5, 0.55, 0.6, 0.64, 0.68, 0.71, 0.74, 0.78, 0.82, 0.88];

interface Times {
  /** Seconds of each repeat, in order. */
  readonly cpu: readonly number[];
  readonly wall: readonly number[];
}

function timesOf(work: () => void): Times {
  const cpu: number[] = [];
  const wall: number[] = [];
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    const began = performance.now();
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    cpu.push((user + system) / 1e6);
    wall.push((performance.now() - began) / 1e3);
  }
  return { cpu, wall };
}

function sumOf(loggers: readonly StoreSeries[]): number {
  let sum = 0;
  for (const { hours, dryBulb, relHum, surface } of loggers)
    for (const values of [hours, dryBulb, relHum, surface]) sum += plainSum(values);
  return sum;
}

function plainSum(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number; // i is below the length
    sum += value === value ? value : 0;
  }
  return sum;
}

/** What a watch found, by name, moments in hours since the first reading: what the peer prints. */
type Found = Readonly<Record<string, number | null>>;

function foundBy(watch: MouldWatch, zero: number): Found {
  const since = (at: number | null | undefined): number | null => (at == null ? null : at - zero);
  const lamps = { damp: watch.damp, critical: watch.critical, atOne: watch.index };
  const found: Record<string, number | null> = {};
  for (const [name, lamp] of Object.entries(lamps)) {
    found[`${name}.hours`] = lamp.hours;
    found[`${name}.longestHours`] = lamp.longest?.hours ?? 0;
    found[`${name}.longestFrom`] = since(lamp.longest?.from);
    found[`${name}.firstLit`] = since(lamp.firstLit);
    found[`${name}.runHours`] = lamp.now?.hours ?? 0;
  }
  return {
    ...found,
    firstVisible: since(watch.index.firstVisible),
    excessHours: watch.critical.excessHours,
    indexHighest: watch.index.highest,
    indexAtEnd: watch.index.atEnd,
    doseHighest: watch.dose.highest,
    dampestAt: since(watch.dampest?.at),
    dampestRelHum: watch.dampest?.relHum ?? null,
    dampestT: watch.dampest?.temperature ?? null,
    furthestAt: since(watch.furthest?.at),
    furthestRelHum: watch.furthest?.relHum ?? null,
    furthestT: watch.furthest?.temperature ?? null,
    furthestExcess: watch.furthest?.excess ?? null,
    stretches: watch.stretches.length,
    stretchHours: watch.stretches.reduce((sum, stretch) => sum + stretch.hours, 0),
    overRead: Number(watch.cautions.includes("reading-above-saturation")),
    tooWarm: Number(watch.cautions.includes("warmer-than-fitted")),
    used: watch.readings.used,
    missing: watch.readings.missing,
  };
}

// ---- the peer ----

interface PeerAnswer extends Times {
  readonly sumCpu: readonly number[];
  readonly sumWall: readonly number[];
  readonly sum: number;
  readonly watches: readonly Readonly<Record<string, unknown>>[];
}

/** The watch in C, compiled in each way and run on the same doubles; a sentence instead where there is no compiler. */
function peers(
  loggers: readonly StoreSeries[],
  ways: readonly (readonly string[])[],
): (PeerAnswer | string)[] {
  const folder = mkdtempSync(join(tmpdir(), "mould-watch-"));
  try {
    const readings = join(folder, "readings.bin");
    writeReadings(readings, loggers);
    return ways.map((way) => peer(folder, readings, way));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** @param flags for the compiler beside -O3 */
function peer(folder: string, readings: string, flags: readonly string[]): PeerAnswer | string {
  const program = join(folder, "mould_watch");
  const source = fileURLToPath(peerSource());
  const built = spawnSync("cc", ["-O3", ...flags, "-o", program, source, "-lm"], { encoding: "utf8" });
  if (built.error) return "no cc here";
  if (built.status !== 0) return `cc does not compile it: ${built.stderr}`;
  const ran = spawnSync(program, [readings, String(REPEATS)], { encoding: "utf8" });
  return ran.status === 0 ? (JSON.parse(ran.stdout) as PeerAnswer) : `it does not run: ${ran.stderr}`;
}

/** Beside this file, or in the sources when this is the built one. */
function peerSource(): URL {
  const beside = new URL("peers/mould_watch.c", import.meta.url);
  return existsSync(beside) ? beside : new URL("../../bench/peers/mould_watch.c", import.meta.url);
}

function writeReadings(path: string, loggers: readonly StoreSeries[]): void {
  writeFileSync(path, new Float64Array([loggers.length, READINGS]));
  for (const { hours, dryBulb, relHum, surface } of loggers)
    for (const values of [hours, dryBulb, relHum, surface]) writeFileSync(path, values, { flag: "a" });
}

/** `{ damp: { hours } }` as `{ "damp.hours" }`. */
function flat(tree: Readonly<Record<string, unknown>>, before = ""): Record<string, number | null> {
  return Object.entries(tree).reduce<Record<string, number | null>>((all, [name, value]) => {
    if (value !== null && typeof value === "object")
      return { ...all, ...flat(value as Readonly<Record<string, unknown>>, `${before}${name}.`) };
    all[`${before}${name}`] = value === null ? null : Number(value);
    return all;
  }, {});
}

interface Difference {
  readonly name: string;
  readonly off: number;
}

/** The largest difference, over the size of the figure where that is above 1; infinite where only one side has a figure. */
function largestDifference(
  ours: readonly Found[],
  theirs: readonly Found[],
): Difference & { figures: number } {
  let [largest, figures]: [Difference, number] = [{ name: "none", off: 0 }, 0];
  ours.forEach((found, logger) => {
    for (const [name, value] of Object.entries(found)) {
      figures++;
      const off = differenceOf(value, theirs[logger]?.[name]);
      if (off > largest.off) largest = { name: `${name} of logger ${logger + 1}`, off };
    }
  });
  return { ...largest, figures };
}

function differenceOf(ours: number | null, theirs: number | null | undefined): number {
  if (ours === null || theirs === null || theirs === undefined)
    return ours === theirs ? 0 : Number.POSITIVE_INFINITY;
  return Math.abs(ours - theirs) / Math.max(1, Math.abs(ours));
}

// ---- printing ----

const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

const row = (name: string, cells: readonly string[]): void => {
  console.log(`  ${name.padEnd(28)}${cells.map((cell) => `  ${cell}`.padStart(14)).join("")}`);
};
const seconds = (time: number | undefined): string => `${(time ?? Number.NaN).toFixed(3)} s`;
const timeCells = ({ cpu, wall }: Times): string[] =>
  [cpu[0], median(cpu), Math.min(...cpu), wall[0], median(wall), Math.min(...wall)].map(seconds);
const verdict = (got: number, most: number): string => `limit ${most}: ${got <= most ? "kept" : "NOT KEPT"}`;

function bandwidth(name: string, times: Times): void {
  const gigabytes = (DAMPNESS.length * READINGS * 4 * 8) / 1e9;
  row(name, [...timeCells(times), `${(gigabytes / median(times.wall)).toFixed(1)} GB/s`]);
}

function verdictOfRatio(ratio: number): string {
  return verdict(ratio, MOST_RATIO);
}

function compare(name: string, theirs: PeerAnswer | string, judged: (ratio: number) => string): void {
  if (typeof theirs === "string") {
    console.log(`  ${name}: skipped, ${theirs}`);
    return;
  }
  row(name, timeCells(theirs));
  const ratio = (of: (times: Times) => number): string => (of(ours) / of(theirs)).toFixed(2);
  const cpu = ratio(({ cpu }) => median(cpu));
  const wall = ratio(({ wall }) => median(wall));
  row("  ours over it, medians", ["", cpu, "", "", wall, "", judged(Number(cpu))]);
}

function lampsLit(watches: readonly MouldWatch[]): void {
  const count = (isLit: (watch: MouldWatch) => boolean): number => watches.filter(isLit).length;
  console.log(
    `Of ${watches.length} loggers ${count((w) => w.damp.isLit)} light damp, ${count((w) => w.critical.isLit)} critical, ${count((w) => w.index.isLit)} index; ${count((w) => w.dose.share >= 1)} reach the dose.`,
  );
}

const loggers = DAMPNESS.map((dampness, i) => dampStore(i + 1, dampness));
console.log(`Machine: ${cpus()[0]?.model ?? "unknown"}, ${cpus().length} cores, Node ${process.version}`);
console.log(
  `Mould watch: ${loggers.length} loggers, 5 years, every 5 minutes: ${(loggers.length * READINGS).toLocaleString("en")} readings of air, humidity and wall\n`,
);

let watches: MouldWatch[] = [];
const ours = timesOf(() => {
  watches = loggers.map((series) => watchMould(series));
});
const sums = timesOf(() => {
  sumOf(loggers);
});
lampsLit(watches);
row("", ["first, CPU", "median, CPU", "best, CPU", "first, wall", "median, wall", "best, wall"]);
row("ours", [...timeCells(ours), verdict(ours.wall[0] ?? Number.NaN, MOST_SECONDS)]);
const [plain = "", short = ""] = peers(loggers, [[], ["-DSHORT_FORMS"]]);
compare("plain C, -O3", plain, verdictOfRatio);
compare("C with our short cuts", short, () => "no limit");
bandwidth("sum of the columns, ours", sums);
if (typeof plain !== "string") {
  bandwidth("sum of the columns, C", { cpu: plain.sumCpu, wall: plain.sumWall });
  const found = watches.map((watch, i) => foundBy(watch, loggers[i]?.hours[0] ?? Number.NaN));
  const theirs = plain.watches.map((watch) => flat(watch));
  const { name, off, figures } = largestDifference(found, theirs);
  console.log(`\nSame answers: ${figures} figures, largest difference ${off.toExponential(1)} (${name})`);
}
