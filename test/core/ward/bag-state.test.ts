import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CAUTIONS, RELEASE_CONDITIONS, RELEASE_MISSING } from "../../../src/core/say/cautions/ward.ts";
import {
  type BagEvent,
  type BagLog,
  type BagReading,
  bagStateFromLog,
  type ReleaseCondition,
} from "../../../src/core/ward/bag-state.ts";

/** Closed at hour 100 with the gel out; read at closing and on the next days. */
const events: BagEvent[] = [
  { hours: 0, what: "closed" },
  { hours: 0, what: "gel put in" },
  { hours: 100, what: "opened" },
  { hours: 100, what: "gel taken out" },
  { hours: 100, what: "closed" },
];
const reading = (hours: number, percent: number, more: Partial<BagReading> = {}): BagReading => ({
  hours,
  relHum: percent / 100,
  ...more,
});
const good = [reading(104, 52), reading(128, 53), reading(152, 53.5)];
const log = (readings: readonly BagReading[], more: Partial<BagLog> = {}): BagLog => ({
  material: "paper",
  events,
  readings,
  asks48HoursBelow50: false,
  ...more,
});
const state = (readings: readonly BagReading[], more: Partial<BagLog> = {}, now = 160) =>
  bagStateFromLog(log(readings, more), now);
const missing = (readings: readonly BagReading[], more: Partial<BagLog> = {}, now = 160): string[] =>
  state(readings, more, now)
    .release.checks.filter((check) => !check.met)
    .map((check) => check.missing);

describe("release is earned", () => {
  test("by two readings of 55 % or less a day apart, in a closed bag without gel, that does not come back", () => {
    expect(state(good).release.earned).toBe(true);
    expect(missing(good)).toEqual([]);
  });
  test("at 55 % itself", () => {
    expect(state([reading(104, 54), reading(128, 55), reading(152, 55)]).release.earned).toBe(true);
  });
});

describe("release is not earned", () => {
  test("by waiting: no date alone does it", () => {
    expect(state([], {}, 100_000).release.earned).toBe(false);
    expect(missing([], {}, 100_000)).toContain("read-it");
  });
  test("by one reading", () => {
    expect(missing([reading(104, 50)])).toContain("read-again-a-day-later");
  });
  test("by two readings 23 hours apart", () => {
    expect(missing([reading(104, 50), reading(127, 50)])).toContain("read-again-a-day-later");
  });
  test("when a reading between or after was damper", () => {
    expect(missing([...good, reading(156, 56)])).toContain("still-too-damp");
    expect(missing([reading(104, 52), reading(140, 56), reading(155, 54)])).toContain(
      "read-again-a-day-later",
    );
  });
  test("while gel lies in the bag, whatever it shows", () => {
    const beside = [reading(4, 40), reading(40, 39), reading(80, 38)];
    expect(missing(beside, {}, 90)).toContain("take-the-gel-out");
    expect(state(beside, {}, 90).cautions).toContain("gel-speaks-first");
  });
  test("by readings from before the bag was opened", () => {
    const reopened: BagEvent[] = [...events, { hours: 155, what: "opened" }, { hours: 155, what: "closed" }];
    expect(missing(good, { events: reopened })).toContain("read-it");
  });
  test("while the bag is open", () => {
    expect(missing(good, { events: [...events, { hours: 158, what: "opened" }] })).toContain("close-the-bag");
  });
  test("when the core gives damp back: more than 2 % above what it showed at closing", () => {
    const back = [reading(104, 48), reading(128, 50), reading(152, 50.5)];
    expect(missing(back)).toEqual(["it-came-back"]);
    expect(state(back).rebound).toBeCloseTo(0.025, 9);
  });
  test("before 48 hours of rebound, or without a reading at closing", () => {
    expect(missing([reading(104, 52), reading(130, 52)])).toEqual(["read-after-two-days"]);
    expect(missing([reading(120, 52), reading(152, 52)])).toEqual(["read-at-closing"]);
  });
  test("when the reader's error could carry it over 60 %", () => {
    const coarse = good.map((each) => ({ ...each, error: 0.08 }));
    expect(missing(coarse)).toEqual(["reader-too-coarse"]);
  });
  test("by a reading made low by a cold room", () => {
    const cold = [
      reading(104, 54, { dryBulb: 26 }),
      reading(128, 54, { dryBulb: 17 }),
      reading(152, 54, { dryBulb: 17 }),
    ];
    expect(missing(cold)).toContain("still-too-damp");
    expect(state(cold).cautions).toContain("temperature-moved");
  });
});

describe("the stricter floor, where it is asked for", () => {
  const strict = { asks48HoursBelow50: true };
  test("wants 48 hours below 50 %", () => {
    expect(missing(good, strict)).toEqual(["stay-below-50-longer"]);
    const low = [reading(104, 48), reading(128, 48.5), reading(152, 49)];
    expect(state(low, strict).release.earned).toBe(true);
  });
  test("is broken by one reading at 50 %", () => {
    expect(missing([reading(104, 49), reading(128, 50), reading(153, 49)], strict)).toEqual([
      "stay-below-50-longer",
    ]);
  });
});

describe("what drying must spare", () => {
  test.each(["skin", "palm leaf", "wood", "lacquer", "image layer"] as const)(
    "%s stops at 45 %% and is over-dried below 40 %%",
    (material) => {
      expect(state([reading(104, 45.5)], { material }).drying).toBe("go on");
      expect(state([reading(104, 45)], { material }).drying).toBe("stop");
      expect(state([reading(104, 39.9)], { material }).drying).toBe("over-dried");
      expect(state([reading(104, 39.9)], { material }).cautions).toContain("over-dried");
    },
  );
  test("nothing is known without a reading", () => {
    expect(state([]).drying).toBe("not known");
  });
});

describe("whatever is written down", () => {
  const anyReading = fc.record({
    hours: fc.integer({ min: 0, max: 300 }),
    relHum: fc.double({ min: 0.3, max: 0.8, noNaN: true }),
  });
  const anyEvent = fc.record({
    hours: fc.integer({ min: 0, max: 300 }),
    what: fc.constantFrom<BagEvent["what"]>("closed", "opened", "gel put in", "gel taken out"),
  });
  test("the order of readings and events does not matter", () => {
    fc.assert(
      fc.property(fc.array(anyReading), fc.array(anyEvent), (readings, some) => {
        const forward = bagStateFromLog(log(readings, { events: some }), 300);
        const back = bagStateFromLog(log([...readings].reverse(), { events: [...some].reverse() }), 300);
        expect(back.release).toEqual(forward.release);
        expect(back.latest?.relHum).toBe(forward.latest?.relHum);
      }),
    );
  });
  test("a damper bag never earns a release that a drier one did not", () => {
    fc.assert(
      fc.property(
        fc.array(anyReading, { minLength: 2 }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (readings, more) => {
          const damper = readings.map((each) => ({ ...each, relHum: each.relHum + more }));
          if (state(damper, {}, 300).release.earned)
            expect(state(readings, {}, 300).release.earned).toBe(true);
        },
      ),
    );
  });
  test("an earned release shows two readings of the closed bag that pass", () => {
    fc.assert(
      fc.property(fc.array(anyReading), fc.array(anyEvent), (readings, some) => {
        const { release, closedSince } = bagStateFromLog(log(readings, { events: some }), 300);
        if (!release.earned) return;
        const passing = readings.filter((each) => each.hours >= (closedSince ?? 1e9) && each.relHum <= 0.55);
        expect(
          Math.max(...passing.map((p) => p.hours)) - Math.min(...passing.map((p) => p.hours)),
        ).toBeGreaterThanOrEqual(24);
      }),
    );
  });
  test("what comes later than now is not known yet", () => {
    expect(state(good, {}, 130).release.earned).toBe(false);
  });
});

test("every condition, every missing thing and every caution has its sentence", () => {
  const texts = [RELEASE_CONDITIONS, RELEASE_MISSING, CAUTIONS].flatMap((table) => Object.values(table));
  for (const text of texts) expect(text).toMatch(/\.$/);
  const conditions: ReleaseCondition[] = state(good, { asks48HoursBelow50: true }).release.checks.map(
    (c) => c.condition,
  );
  expect(Object.keys(RELEASE_CONDITIONS).sort()).toEqual([...conditions].sort());
});
