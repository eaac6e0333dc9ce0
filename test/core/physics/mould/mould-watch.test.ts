import { existsSync, readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { relHumAtSurface } from "../../../../src/core/physics/air/moist-air.ts";
import type { ClimateSeries } from "../../../../src/core/physics/mould/climate-series.ts";
import { GROWTH_CLASSES, type Growth, growthAfter } from "../../../../src/core/physics/mould/mould-growth.ts";
import {
  CRITICAL_DOSE_DAYS,
  criticalRelHum,
  dosePerDay,
} from "../../../../src/core/physics/mould/mould-limits.ts";
import { type MouldWatch, watchMould } from "../../../../src/core/physics/mould/mould-watch.ts";
import { OutOfRange } from "../../../../src/core/physics/out-of-range.ts";
import { CAUTIONS } from "../../../../src/core/say/cautions/mould.ts";

/** A reading as a person would write it down. */
interface Reading {
  at: number;
  air: number;
  relHum: number;
  wall?: number;
}

const seriesOf = (readings: Reading[]): ClimateSeries => ({
  hours: Float64Array.from(readings, (each) => each.at),
  dryBulb: Float64Array.from(readings, (each) => each.air),
  relHum: Float64Array.from(readings, (each) => each.relHum),
  ...(readings.some((each) => each.wall !== undefined)
    ? { surface: Float64Array.from(readings, (each) => each.wall ?? Number.NaN) }
    : {}),
});

/** Hourly readings of one climate after another. */
function hourly(...climates: [hours: number, air: number, relHum: number][]): Reading[] {
  const readings: Reading[] = [];
  for (const [hours, air, relHum] of climates)
    for (let h = 0; h < hours; h++) readings.push({ at: 480_000 + readings.length, air, relHum });
  return [...readings, { at: 480_000 + readings.length, air: 20, relHum: 0.4 }];
}

// ---- the plain form: the same lamps, written for the reader and not for speed ----

interface Step {
  from: number;
  hours: number;
  T: number;
  phi: number;
}

/** Stretches without a gap of more than 6 h, each a list of steps. */
function stepsOf(readings: Reading[]): Step[][] {
  const usable = readings.filter((each) => !Number.isNaN(each.air + each.relHum + (each.wall ?? 0)));
  const stretches: Step[][] = [[]];
  usable.forEach((now, i) => {
    const next = usable[i + 1];
    if (!next) return;
    if (next.at - now.at > 6) {
      stretches.push([]);
      return;
    }
    const isColder = now.wall !== undefined && now.wall < now.air;
    const phi = isColder ? relHumAtSurface(now.air, now.relHum, now.wall as number) : now.relHum;
    const T = isColder ? (now.wall as number) : now.air;
    stretches.at(-1)?.push({ from: now.at, hours: next.at - now.at, T, phi: Math.min(1, phi) });
  });
  return stretches;
}

function longestRun(stretches: Step[][], isOn: (step: Step) => boolean): number {
  const lengths = stretches.flatMap((steps) => {
    const runs = [0];
    for (const step of steps)
      if (isOn(step)) runs.push((runs.pop() ?? 0) + step.hours);
      else runs.push(0);
    return runs;
  });
  return Math.max(0, ...lengths);
}

const critical = (T: number): number => Math.min(1, criticalRelHum(Math.min(30, Math.max(1, T)), "a"));

function highestIndex(stretches: Step[][]): number {
  let highest = 0;
  for (const steps of stretches) {
    let now: Growth = { index: 0, dryHours: 0 };
    for (const { T, phi, hours } of steps) {
      now = growthAfter(now, T, phi, hours, GROWTH_CLASSES["very-sensitive"], 0.25);
      highest = Math.max(highest, now.index);
    }
  }
  return highest;
}

function highestDose(stretches: Step[][]): number {
  let highest = 0;
  for (const steps of stretches) {
    const begin = steps[0]?.from ?? 0;
    const end = begin + steps.reduce((sum, step) => sum + step.hours, 0);
    let dose = 0;
    for (let from = begin; from < end; from += 12) {
      const until = Math.min(from + 12, end);
      const share = (step: Step) =>
        Math.max(0, Math.min(until, step.from + step.hours) - Math.max(from, step.from));
      const mean = (of: (step: Step) => number) =>
        steps.reduce((sum, step) => sum + of(step) * share(step), 0) / (until - from);
      const T = Math.min(
        30,
        mean((step) => step.T),
      );
      dose = Math.max(
        0,
        dose +
          (dosePerDay(
            T,
            Math.min(
              1,
              mean((step) => step.phi),
            ),
          ) *
            (until - from)) /
            24,
      );
      highest = Math.max(highest, dose);
    }
  }
  return highest;
}

const readings = fc
  .array(
    fc.record({
      wait: fc.oneof(
        { weight: 8, arbitrary: fc.integer({ min: 1, max: 24 }) },
        fc.integer({ min: 25, max: 60 }),
      ),
      air: fc.oneof(
        { weight: 20, arbitrary: fc.double({ min: -5, max: 38, noNaN: true }) },
        fc.constant(Number.NaN),
      ),
      relHum: fc.double({ min: 0.3, max: 1, noNaN: true }),
      colder: fc.double({ min: -4, max: 6, noNaN: true }),
    }),
    { minLength: 2, maxLength: 200 },
  )
  .map((list) => {
    let at = 480_000;
    return list.map(({ wait, air, relHum, colder }) => {
      at += wait / 4;
      return { at, air, relHum: relHum, wall: air - colder };
    });
  });

describe("the fast pass is the plain one", () => {
  test.each([
    ["at the coldest surface", true],
    ["in the air alone", false],
  ])("%s, with gaps and missing readings", (_, hasWall) => {
    fc.assert(
      fc.property(readings, (all) => {
        const given = hasWall ? all : all.map(({ wall, ...rest }) => rest);
        const stretches = stepsOf(given);
        const watch = watchMould(seriesOf(given));
        expect(watch.damp.longest?.hours ?? 0).toBeCloseTo(
          longestRun(stretches, (s) => s.phi >= 0.65),
          6,
        );
        expect(watch.critical.longest?.hours ?? 0).toBeCloseTo(
          longestRun(stretches, (s) => s.phi > critical(s.T)),
          6,
        );
        const steps = stretches.flat();
        const excess = steps.reduce((sum, s) => sum + Math.max(0, s.phi - critical(s.T)) * s.hours, 0);
        expect(watch.critical.excessHours).toBeCloseTo(excess, 6);
        expect(watch.index.highest).toBeCloseTo(highestIndex(stretches), 9);
        expect(watch.dose.highest).toBeCloseTo(highestDose(stretches), 6);
        expect(watch.stretches.length).toBe(all.every((r) => Number.isNaN(r.air)) ? 0 : stretches.length);
      }),
    );
  });
  test("even steps give what written times give", () => {
    const n = 3000;
    const relHum = Float64Array.from({ length: n }, (_, i) => 0.7 + 0.25 * Math.sin(i / 200));
    const dryBulb = Float64Array.from({ length: n }, (_, i) => 22 + 5 * Math.cos(i / 300));
    const even = watchMould({ hours: { start: 480_000, step: 0.25 }, dryBulb, relHum });
    const written = watchMould({
      hours: Float64Array.from(relHum, (_, i) => 480_000 + i * 0.25),
      dryBulb,
      relHum,
    });
    expect(even).toEqual(written);
    expect(even.damp.isLit).toBe(true);
  });
});

describe("the lamps", () => {
  const watch = (...climates: [number, number, number][]): MouldWatch =>
    watchMould(seriesOf(hourly(...climates)));

  test("47 hours at 65 % light nothing, 48 hours light the first", () => {
    expect(watch([47, 20, 0.65]).state).toBe("quiet");
    const damp = watch([10, 20, 0.5], [48, 20, 0.65], [10, 20, 0.5]);
    expect(damp).toMatchObject({ state: "watch", stateNow: "quiet" });
    expect(damp.damp).toMatchObject({ firstLit: 480_058, longest: { from: 480_010, hours: 48 }, now: null });
    expect(damp.reasons).toEqual([{ code: "damp-too-long", from: 480_010, hours: 48 }]);
  });
  test("a run of any length is one run: 3,000 hours, with a hundred before it", () => {
    const long = watch([100, 20, 0.7], [1, 20, 0.5], [3000, 20, 0.85]);
    const run = { from: 480_101, hours: 3000 };
    expect(long.damp).toMatchObject({ longest: run, hours: 3100, now: run });
    expect(long.critical.longest).toEqual(run);
    expect(long.dose.highest).toBeGreaterThan(CRITICAL_DOSE_DAYS);
  });
  test("two damp days with a dry hour between are two runs", () => {
    expect(watch([30, 20, 0.7], [1, 20, 0.64], [30, 20, 0.7]).state).toBe("quiet");
  });
  test("an hour above the parabola asks to act, with hours and degree", () => {
    const above = watch([3, 20, 0.7776]);
    expect(above.state).toBe("act");
    expect(above.critical.excessHours).toBeCloseTo(3 * 0.02, 6);
  });
  test("three months at 78 % are seen by the damp and critical lamps while the index sees nothing", () => {
    const months = watch([2200, 24, 0.78]);
    expect(months.index.highest).toBe(0);
    expect(months).toMatchObject({
      state: "act",
      damp: { isLit: true },
      critical: { isLit: true },
      index: { isLit: false },
    });
    expect(months.cautions).toEqual(
      expect.arrayContaining(["vtt-alone-is-no-all-clear", "index-blind-below-80"]),
    );
  });
  test("index 1 comes after 249 hours at 20 °C and 97 %, index 3 after 499: a day's growth is a day's", () => {
    const wet = watch([700, 20, 0.97]);
    expect((wet.index.firstLit ?? 0) - 480_000).toBeCloseTo(250, -1);
    expect((wet.index.firstVisible ?? 0) - 480_000).toBeCloseTo(499, 0);
    expect(wet.reasons.map((each) => each.code)).toContain("index-visible");
  });
  test("a wall 5 K colder lights what the air does not", () => {
    const given = hourly([100, 20, 0.6]).map((each) => ({ ...each, wall: each.air - 5 }));
    expect(watchMould(seriesOf(given)).state).toBe("act");
    expect(watch([100, 20, 0.6]).state).toBe("quiet");
    expect(watch([100, 20, 0.6]).cautions).toContain("air-not-surface");
  });
  test("a warmer wall is not used to talk the damp away", () => {
    const given = hourly([100, 20, 0.7]).map((each) => ({ ...each, wall: each.air + 5 }));
    expect(watchMould(seriesOf(given)).damp.isLit).toBe(true);
  });
});

describe("what is not known is not filled in", () => {
  test("a gap of more than six hours ends the run, splits the series and is said", () => {
    const before = hourly([30, 20, 0.7]).slice(0, -1);
    const after = hourly([30, 20, 0.7]).map((each) => ({ ...each, at: each.at + 36 }));
    const split = watchMould(seriesOf([...before, ...after]));
    expect(split.damp).toMatchObject({ isLit: false, longest: { hours: 30 } });
    expect(split.stretches).toEqual([
      { from: 480_000, hours: 29 },
      { from: 480_036, hours: 30 },
    ]);
    expect(split.cautions).toContain("series-has-gaps");
  });
  test("a gap of six hours is a long step", () => {
    const before = hourly([30, 20, 0.7]).slice(0, -1);
    const after = hourly([30, 20, 0.7]).map((each) => ({ ...each, at: each.at + 35 }));
    expect(watchMould(seriesOf([...before, ...after])).damp.longest?.hours).toBe(65);
  });
  test("no readings, one reading and readings a day apart are unknown, not quiet", () => {
    for (const at of [[], [480_000], [480_000, 480_024, 480_048]]) {
      const watch = watchMould(seriesOf(at.map((each) => ({ at: each, air: 20, relHum: 0.4 }))));
      expect(watch).toMatchObject({ state: "unknown", stateNow: "unknown" });
      expect(watch.cautions).toContain("no-readings");
    }
  });
  test("no state is an all-clear: quiet carries its caution", () => {
    expect(watchMould(seriesOf(hourly([100, 20, 0.5]))).cautions).toContain("quiet-is-no-all-clear");
  });
});

describe("refusals name the reading", () => {
  const bad = (over: Partial<Reading>) => () =>
    watchMould(seriesOf(hourly([5, 20, 0.5]).map((each, i) => (i === 2 ? { ...each, ...over } : each))));
  test.each([[{ relHum: 56 }], [{ relHum: -0.1 }], [{ air: 120 }], [{ at: 479_000 }]])("%j", (over) => {
    expect(bad(over)).toThrow(OutOfRange);
    expect(bad(over)).toThrow(/reading 3/);
  });
  test("a logger that over-reads a little is taken as saturated, and this is said", () => {
    expect(watchMould(seriesOf(hourly([60, 20, 1.03]))).cautions).toContain("reading-above-saturation");
  });
  test("columns of different length", () => {
    const { hours, dryBulb, relHum } = seriesOf(hourly([5, 20, 0.5]));
    expect(() => watchMould({ hours, dryBulb: dryBulb.subarray(1), relHum })).toThrow(RangeError);
  });
});

test("every caution has one sentence", () => {
  for (const sentence of Object.values(CAUTIONS)) expect(sentence).toMatch(/^[A-Z].*[.]$/);
});

/** A cold attic in Finland, hourly, November 2010 to July 2012: TRH-tietokanta, CC BY 4.0; kept beside the project, not in it. */
const attic = new URL(
  "../../../../../shared/data/climate/house-r4-attic-insulation-top.csv.gz",
  import.meta.url,
);
if (existsSync(attic))
  test("twenty months of a real attic: the fast pass is the plain one, and every lamp is lit", () => {
    const lines = gunzipSync(readFileSync(attic)).toString("utf8").trim().split("\n").slice(1);
    const real = lines.map((line): Reading => {
      const [time = "", air, percent] = line.split(",");
      return {
        at: Date.parse(`${time.replace(" ", "T")}+02:00`) / 3_600_000,
        air: Number(air),
        relHum: Number(percent) / 100,
      };
    });
    const watch = watchMould(seriesOf(real));
    const stretches = stepsOf(real);
    expect(watch.index.highest).toBeCloseTo(highestIndex(stretches), 9);
    expect(watch.dose.highest).toBeCloseTo(highestDose(stretches), 6);
    expect(watch.damp.longest?.hours).toBeCloseTo(
      longestRun(stretches, (s) => s.phi >= 0.65),
      6,
    );
    expect([watch.damp.isLit, watch.critical.isLit, watch.index.isLit]).toEqual([true, true, true]);
  });
else test.skip("skipped: the attic series of ../shared/data/climate is not beside the project", () => {});
