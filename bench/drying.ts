/** What the drying model is worth: `npx tsx bench/drying.ts`. Prints convergence, balance, times, and a general-purpose solver beside. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { cpus } from "node:os";
import { fileURLToPath } from "node:url";
import {
  type ClosedBag,
  type DryingPrecision,
  DryingRun,
  FINE,
  QUICK,
  type Surroundings,
} from "../src/core/physics/drying/drying.ts";
import { bookPaper, closedBook, type DryingBody } from "../src/core/physics/drying/drying-body.ts";
import { GAB_ROWS } from "../src/core/physics/sorption/gab-isotherm.ts";
import { readyDate } from "../src/core/ward/ready-date.ts";
import type { WardCase } from "../src/core/ward/ward-case.ts";

const HOURS = 180 * 24;
const START = 0.85;
const book = closedBook({ height: 0.24, width: 0.17, thickness: 0.04 }, bookPaper(20));
const room: Surroundings = { kind: "room", relHum: 0.5 };
const bag: ClosedBag = {
  kind: "bag",
  airVolume: 0.005,
  gel: { dryMass: 0.25, relHum: 0.05 },
  leak: 1e-7,
  relHum: 0.7,
};

function runOf(precision: DryingPrecision, surroundings: Surroundings): DryingRun {
  const run = new DryingRun(book, 20, precision);
  run.start(START);
  run.place(surroundings);
  return run;
}

const meanPercent = (precision: DryingPrecision, surroundings: Surroundings, hours: number): number => {
  const run = runOf(precision, surroundings);
  run.goOn(hours);
  return 100 * run.moistureContent;
};

/** Milliseconds of one call, the median of the batches. */
function timeOf(work: () => void, calls: number): number {
  for (let i = 0; i < calls; i++) work();
  const batches = Array.from({ length: 9 }, () => {
    const began = performance.now();
    for (let i = 0; i < calls; i++) work();
    return (performance.now() - began) / calls;
  });
  return batches.sort((a, b) => a - b)[4] ?? Number.NaN;
}

const line = (...cells: readonly (string | number)[]): void => {
  console.log(`  ${cells.map((cell) => String(cell).padStart(14)).join("")}`);
};

function convergence(): void {
  const days = [1, 7, 30, 90, 180];
  const fine = { cells: 640, allowedError: 1e-9 };
  for (const [name, surroundings] of [
    ["room at 50 %", room],
    ["bag with gel and leak", bag],
  ] as const) {
    const reference = days.map((day) => meanPercent(fine, surroundings, 24 * day));
    const offOf = (precision: DryingPrecision): string[] =>
      days.map((day, i) => (meanPercent(precision, surroundings, 24 * day) - (reference[i] ?? 0)).toFixed(5));
    console.log(
      `\nClosed book, 17 by 24 by 4 cm, from 85 %, ${name}: mean moisture, % of dry mass, on 640 cells`,
    );
    line("day", ...days);
    line("", ...reference.map((each) => each.toFixed(4)));
    console.log("off by, cells halved (error allowed in a step 1e-9)");
    for (const cells of [5, 10, 20, 40, 80]) line(`${cells} cells`, ...offOf({ cells, allowedError: 1e-9 }));
    console.log("off by, error allowed in a step a tenth (640 cells)");
    for (const allowedError of [1e-3, 1e-4, 1e-5, 1e-6, 1e-7])
      line(allowedError.toExponential(), ...offOf({ cells: 640, allowedError }));
    console.log("off by, the two settings in use");
    line("FINE", ...offOf(FINE));
    line("QUICK", ...offOf(QUICK));
  }
}

function balance(): void {
  console.log("\nBalance over 180 days: water there at first, less what is left, less what went out; kg");
  for (const [name, surroundings] of [
    ["room", room],
    ["bag", bag],
  ] as const) {
    const run = runOf(FINE, surroundings);
    const before = run.allWater;
    run.goOn(HOURS);
    line(name, before.toFixed(6), run.gone.toFixed(6), (before - run.allWater - run.gone).toExponential(1));
  }
}

function times(): number {
  console.log("\nTime of one run of 180 days (limit 5 ms)");
  let roomTime = Number.NaN;
  for (const [name, precision] of [
    ["FINE", FINE],
    ["QUICK", QUICK],
  ] as const)
    for (const surroundings of [room, bag]) {
      const run = runOf(precision, surroundings);
      const time = timeOf(() => {
        run.start(START);
        run.place(surroundings);
        run.goOn(HOURS);
      }, 200);
      if (precision === FINE && surroundings === room) roomTime = time;
      line(name, surroundings.kind, `${(1000 * time).toFixed(0)} µs`);
    }
  return roomTime;
}

interface PeerAnswer {
  readonly meanPercent: number;
  readonly milliseconds: number;
  readonly scipy: string;
}

/** Same cells, same equations, same question. */
function peers(ours: number): void {
  console.log("\nThe same cells through scipy's solve_ivp, BDF; mean moisture after 180 days in the room");
  const exact = meanPercent({ cells: FINE.cells, allowedError: 1e-11 }, room, HOURS);
  line("", "off by, %", "time", "times ours");
  line("Leafward FINE", (meanPercent(FINE, room, HOURS) - exact).toFixed(5), `${ours.toFixed(3)} ms`, "1");
  for (const [rtol, sparse] of [
    [1e-3, false],
    [1e-4, false],
    [1e-4, true],
    [1e-6, false],
  ] as const) {
    const answer = peer(rtol, sparse);
    if (!answer) {
      console.log("  skipped: no python3 with scipy here");
      return;
    }
    line(
      `rtol ${rtol.toExponential()}${sparse ? " sparse" : ""}`,
      (answer.meanPercent - exact).toFixed(5),
      `${answer.milliseconds.toFixed(1)} ms`,
      (answer.milliseconds / ours).toFixed(0),
    );
  }
}

/** Beside this file, or in the sources when this is the built one. */
function peerScript(): URL {
  const beside = new URL("peers/drying_bdf.py", import.meta.url);
  return existsSync(beside) ? beside : new URL("../../bench/peers/drying_bdf.py", import.meta.url);
}

function peer(rtol: number, sparse: boolean): PeerAnswer | null {
  const { dryMass, conductance } = runOf(FINE, room).cells();
  const { m0, C, K } = GAB_ROWS.ragPaper;
  const asked = {
    dryMass,
    conductance,
    gab: { m0, C, K },
    start: START,
    room: 0.5,
    hours: HOURS,
    rtol,
    sparse,
    repeats: 7,
  };
  const { status, stdout } = spawnSync("python3", [fileURLToPath(peerScript())], {
    input: JSON.stringify(asked),
    encoding: "utf8",
  });
  return status === 0 ? (JSON.parse(stdout) as PeerAnswer) : null;
}

/** A thousand items, no two alike, half in bags with gel, half in a dry room; eight weeks of readings and weighings. */
function manyCases(count: number): WardCase[] {
  return Array.from({ length: count }, (_, i) => {
    const size = {
      height: 0.18 + 0.0015 * ((i * 7) % 100),
      width: 0.12 + 0.001 * ((i * 13) % 100),
      thickness: 0.02 + 0.0004 * ((i * 3) % 100),
    };
    return watched(closedBook(size, bookPaper(20)), i);
  });
}

function watched(body: DryingBody, i: number): WardCase {
  const gel = { dryMass: 0.3 * body.dryMass, relHum: 0.05 };
  const surroundings: Surroundings =
    i % 2 === 0 ? { ...bag, leak: 1e-8, relHum: 0.6, gel } : { kind: "room", relHum: 0.42 };
  const run = new DryingRun(body, 20, QUICK);
  run.scale(Math.exp(0.7 * Math.sin(i)), 1);
  run.start(0.8);
  run.place(surroundings);
  const grams = (): number => Math.round(1000 * (body.dryMass + run.water));
  const weighings = [{ hours: 0, grams: grams() }];
  const readings: { hours: number; relHum: number }[] = [];
  for (let hours = 168; hours <= 8 * 168; hours += 168) {
    run.goOn(hours);
    weighings.push({ hours, grams: grams() });
    if (i % 2 === 0) readings.push({ hours, relHum: run.point().airRelHum });
  }
  const start = { hours: 0, relHum: 0.8 };
  return {
    body,
    dryBulb: 20,
    start,
    stages: [{ fromHours: 0, surroundings }],
    readings,
    weighings,
    now: 8 * 168,
  };
}

function forecasts(): void {
  const cases = manyCases(1000);
  readyDate(cases[0] as WardCase);
  const began = performance.now();
  const dates = cases.map((each) => readyDate(each));
  const seconds = (performance.now() - began) / 1000;
  const dated = dates.filter((date) => date.ok).length;
  console.log(
    `\n1,000 items forecast anew, with bands (limit 2 s): ${seconds.toFixed(2)} s; ${dated} with a date`,
  );
}

console.log(`Machine: ${cpus()[0]?.model ?? "unknown"}, ${cpus().length} cores, Node ${process.version}`);
convergence();
balance();
peers(times());
forecasts();
