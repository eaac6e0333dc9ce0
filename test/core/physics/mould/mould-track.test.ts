import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ClimateSeries } from "../../../../src/core/physics/mould/climate-series.ts";
import { criticalRelHum } from "../../../../src/core/physics/mould/mould-limits.ts";
import { mouldTrack } from "../../../../src/core/physics/mould/mould-track.ts";
import { watchMould } from "../../../../src/core/physics/mould/mould-watch.ts";

/** Steps from reading to reading in hours, gaps among them; a reading in ten is missing. */
const climates = fc
  .array(
    fc.record({
      step: fc.oneof(
        { arbitrary: fc.integer({ min: 1, max: 6 }), weight: 9 },
        { arbitrary: fc.constant(40), weight: 1 },
      ),
      air: fc.double({ min: 2, max: 35, noNaN: true }),
      relHum: fc.oneof(
        { arbitrary: fc.double({ min: 0.55, max: 1.04, noNaN: true }), weight: 9 },
        { arbitrary: fc.constant(Number.NaN), weight: 1 },
      ),
      colder: fc.double({ min: -2, max: 6, noNaN: true }),
    }),
    { minLength: 1, maxLength: 1500 },
  )
  .map((rows): ClimateSeries => {
    let at = 490_000;
    return {
      hours: Float64Array.from(rows, ({ step }) => (at += step)),
      dryBulb: Float64Array.from(rows, ({ air }) => air),
      relHum: Float64Array.from(rows, ({ relHum }) => relHum),
      surface: Float64Array.from(rows, ({ air, colder }) => air - colder),
    };
  });

/** Hourly readings of one climate from hour 480,000 on. */
const steady = (count: number, air: number, relHum: number): ClimateSeries => ({
  hours: { start: 480_000, step: 1 },
  dryBulb: new Float64Array(count).fill(air),
  relHum: new Float64Array(count).fill(relHum),
});

describe("the track is the way of the watch", () => {
  test("its last index is the watch's index at the end, its highest the watch's highest", () =>
    fc.assert(
      fc.property(climates, (series) => {
        const [track, watch] = [mouldTrack(series), watchMould(series)];
        expect(track.hours.length).toBe(watch.readings.used);
        expect(track.index.at(-1) ?? 0).toBe(watch.index.atEnd);
        expect(Math.max(0, ...track.index)).toBe(watch.index.highest);
      }),
      { numRuns: 60 },
    ));

  test("each lamp is lit on it first when the watch says, and at all only if the watch says so", () =>
    fc.assert(
      fc.property(climates, (series) => {
        const [{ lit }, watch] = [mouldTrack(series), watchMould(series)];
        for (const lamp of ["damp", "critical", "index"] as const) {
          expect(lit[lamp].length > 0).toBe(watch[lamp].isLit);
          expect(lit[lamp][0]?.from ?? null).toBe(watch[lamp].firstLit);
        }
      }),
      { numRuns: 60 },
    ));

  test("the humidity stands above the critical one by the watch's excess where that is largest", () =>
    fc.assert(
      fc.property(climates, (series) => {
        const { relHum, criticalRelHum: critical } = mouldTrack(series);
        const excess = relHum.map((value, i) => value - (critical[i] ?? Number.NaN));
        expect(Math.max(...excess)).toBe(watchMould(series).furthest?.excess ?? Number.NEGATIVE_INFINITY);
      }),
      { numRuns: 60 },
    ));
});

describe("what it draws", () => {
  test("a damp lamp goes on two days after the damp began and stays on as long as it lasts", () => {
    expect(mouldTrack(steady(73, 20, 0.7)).lit.damp).toEqual([{ from: 480_048, hours: 24 }]);
  });

  test("the critical humidity is the parabola's at the colder of air and surface", () => {
    const series = { ...steady(3, 20, 0.7), surface: Float64Array.of(20, 15, 25) };
    expect([...mouldTrack(series).criticalRelHum]).toEqual([
      criticalRelHum(20, "a"),
      criticalRelHum(15, "a"),
      criticalRelHum(20, "a"),
    ]);
  });

  test("a missing reading has no place on it; after a gap the index starts anew", () => {
    const relHum = new Float64Array(800).fill(0.97);
    relHum.fill(Number.NaN, 600, 610);
    const { hours, index } = mouldTrack({ ...steady(800, 20, 0.97), relHum });
    expect(hours.length).toBe(790);
    expect([hours[599], hours[600]]).toEqual([480_599, 480_610]);
    expect(index[599]).toBeGreaterThan(3);
    expect(index[600]).toBe(0);
  });
});
