import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Campaign, ClimateSeries, Item, WardNote } from "../../../src/core/items/campaign.ts";
import { sayMouldOutlook } from "../../../src/core/say/mould-outlook.ts";
import { addDays, type Day } from "../../../src/core/units/day.ts";
import { firstGrowth } from "../../../src/core/ward/mould-ahead/first-growth.ts";
import type { StoreAir } from "../../../src/core/ward/mould-ahead/store-air.ts";
import {
  type MouldDays,
  type MouldOutlook,
  mouldFactor,
  mouldOutlooks,
  soonerDue,
} from "../../../src/core/ward/mould-outlook.ts";
import { campaignOf } from "../say/sample-campaign.ts";

const today = "2026-06-01" as Day;
const HORIZON = 200;
const file: Item = {
  id: "F-1",
  title: "A file of letters",
  facts: { format: "loose_sheets", support: "paper_rag", cover: "none" },
  parts: [],
  priority: "want",
  foundIn: "Rack 1 shelf 2",
};
const ledger: Item = {
  ...file,
  id: "L-1",
  facts: { ...file.facts, format: "bound_volume", cover: "leather_calf" },
};
const lookedAt = (item: string, answer: string) => ({ item, part: "", test: "growth_visible", answer });

/** Hourly readings of so many days up to the plan's morning. */
const readings = (
  name: string,
  at: (hour: number) => readonly [dryBulb: number, relHum: number],
  days = 28,
): ClimateSeries => ({
  name,
  readings: Array.from({ length: days * 24 }, (_, hour) => {
    const [dryBulb, relHum] = at(hour);
    return {
      at: `${addDays(today, Math.floor(hour / 24) - days)}T${String(hour % 24).padStart(2, "0")}:00:00`,
      dryBulb,
      relHum,
    };
  }),
});
/** A real reader's last digit moves. */
const steady = (name: string, dryBulb: number, relHum: number): ClimateSeries =>
  readings(name, (hour) => [dryBulb + (hour % 2) * 1e-6, relHum]);
const campaign = (climate: readonly ClimateSeries[], more: Partial<Campaign> = {}): Campaign => ({
  ...campaignOf([]),
  items: [file, ledger],
  findings: [lookedAt("F-1", "no"), lookedAt("L-1", "no")],
  planFrom: today,
  end: addDays(today, HORIZON - 1),
  climate,
  ...more,
});
const outlook = (of: Campaign, item = "L-1"): MouldOutlook | undefined => mouldOutlooks(of).get(item);
const daysIn = (of: Campaign, item = "L-1"): MouldDays => {
  const found = outlook(of, item);
  if (!found?.known) throw new Error(`nothing is known of ${item}`);
  return found.days;
};
const late = (day: number | null): number => day ?? Number.POSITIVE_INFINITY;

describe("when the first growth comes in a steady climate", () => {
  const air = (dryBulb: number, relHum: number): StoreAir => ({
    start: 0,
    dryBulb: new Float64Array(9000).fill(dryBulb),
    relHum: new Float64Array(9000).fill(relHum),
    recent: { dryBulb, relHum },
    isSeasonal: false,
  });
  // Hukka & Viitanen 1999 with the classes of Ojanen, Viitanen et al. 2010, worked by two independent programs: test/reference/physics
  const { checks } = JSON.parse(
    readFileSync(new URL("../../reference/physics/mould-growth.json", import.meta.url), "utf8"),
  ) as {
    checks: {
      model: string;
      inputs: Record<string, number | string>;
      expected: { hoursToM1: number | null };
    }[];
  };
  const rows = checks.filter(
    ({ model, inputs }) =>
      model === "vtt.constant" && (inputs.class === "vs" || inputs.class === "s") && inputs.M0 === 0,
  );
  test.each(
    rows.map(({ inputs, expected }) => [inputs.tC, inputs.rhPct, inputs.class, expected.hoursToM1] as const),
  )("the index at %s °C and %s %%, class %s, is at 1 after %s h", (tC, rhPct, kind, hours) => {
    const { byIndex } = firstGrowth(
      air(Number(tC), Number(rhPct) / 100),
      kind === "vs" ? "very-sensitive" : "sensitive",
      0,
      0,
    );
    if (hours === null) expect(byIndex).toBe(Number.POSITIVE_INFINITY);
    else expect(Math.abs(byIndex - hours)).toBeLessThanOrEqual(1 + 0.002 * hours); // whole hours, and the rows' own tolerance
  });
  // Isaksson, Thelandersson, Ekstrand-Tobin & Johansson 2010: 1, 2.3156 and 0.4855 a day; the 17 days that are enough are from memory
  test.each([
    [20, 0.9, 17],
    [20, 0.95, 7.5],
    [25, 0.85, 35.5],
  ])("the dose at %s °C and %s is full after %s days", (dryBulb, relHum, days) => {
    const { byDose } = firstGrowth(air(dryBulb, relHum + 1e-9), "very-sensitive", 0, 0);
    expect(byDose).toBe(days * 24);
  });
});

describe("what the climate of a store means for what waits in it", () => {
  const hours = fc.array(
    fc.tuple(fc.double({ min: 5, max: 35, noNaN: true }), fc.double({ min: 0.4, max: 1, noNaN: true })),
    {
      minLength: 5,
      maxLength: 40,
    },
  );
  test("a drier store is never sooner, whatever the hours were", () => {
    fc.assert(
      fc.property(hours, fc.double({ min: 0, max: 0.2, noNaN: true }), (air, less) => {
        const store = (drier: number) =>
          campaign([
            readings("store", (hour) => {
              const [dryBulb, relHum] = air[hour % air.length] ?? [0, 0];
              return [dryBulb, Math.max(0, relHum - drier)];
            }),
          ]);
        const [damp, dry] = [daysIn(store(0)), daysIn(store(less))];
        for (const end of ["low", "typical", "high"] as const)
          expect(late(dry[end])).toBeGreaterThanOrEqual(late(damp[end]));
        expect(mouldFactor(outlook(store(less)))).toBeLessThanOrEqual(mouldFactor(outlook(store(0))));
      }),
      { numRuns: 12 },
    );
  });
  test("a warmer store is never later, from 1 to 30 °C", () => {
    for (const relHum of [0.76, 0.8, 0.86, 0.95]) {
      const found = [1, 6, 12, 18, 24, 30].map((dryBulb) =>
        daysIn(campaign([steady("store", dryBulb, relHum)])),
      );
      for (const end of ["low", "typical", "high"] as const)
        found.slice(1).forEach((warmer, at) => {
          expect(late(warmer[end])).toBeLessThanOrEqual(late(found[at]?.[end] ?? null));
        });
    }
  });
  test("the early end is never after what is likely, nor that after the late end", () => {
    for (const relHum of [0.5, 0.74, 0.78, 0.82, 0.9]) {
      const { low, typical, high } = daysIn(campaign([steady("store", 27, relHum)]));
      expect(late(low)).toBeLessThanOrEqual(late(typical));
      expect(late(typical)).toBeLessThanOrEqual(late(high));
    }
  });
  test("a dry store moves nothing, and that is no all-clear", () => {
    const dry = outlook(campaign([steady("store", 28, 0.55)]));
    expect(mouldFactor(dry)).toBe(1);
    expect(soonerDue(null, dry)).toBeNull();
    expect(dry && sayMouldOutlook(dry, today).join(" ")).toMatch(/neither model .* no all-clear/);
  });
  test("plain paper that was looked at takes longer than leather; paper nobody looked at, or an unsure look, is taken as readily mouldy", () => {
    const damp = [steady("store", 27, 0.8)];
    const plain = daysIn(campaign(damp), "F-1");
    expect(late(plain.low)).toBeGreaterThan(late(daysIn(campaign(damp)).low));
    for (const findings of [[], [lookedAt("F-1", "unsure")], [lookedAt("F-1", "no"), lookedAt("F-1", "yes")]])
      expect(daysIn(campaign(damp, { findings }), "F-1")).toEqual(daysIn(campaign(damp)));
  });
  test("what arrives later begins to count on its day of arrival", () => {
    const arrives = addDays(today, 40);
    const of = campaign([steady("store", 27, 0.85)], { items: [ledger, { ...ledger, id: "L-2", arrives }] });
    expect(late(daysIn(of, "L-2").low)).toBeGreaterThanOrEqual(40);
    expect(late(daysIn(of, "L-2").low)).toBeGreaterThan(late(daysIn(of).low));
  });
});

describe("which reader speaks for an item", () => {
  const dry = (name: string) => steady(name, 25, 0.5);
  const readerOf = (climate: readonly ClimateSeries[], foundIn?: string, more: Partial<Campaign> = {}) => {
    const item = { ...ledger, ...(foundIn === undefined ? {} : { foundIn }) };
    const found = outlook(campaign(climate, { items: [item], ...more }));
    return found && (found.known ? found.reader : found.because);
  };
  test("the one named like the place it was found in", () => {
    const climate = [dry("plate-room"), dry("film-room"), dry("press-attic")];
    expect(readerOf(climate, "Film room rack 3")).toBe("film-room");
    expect(readerOf(climate, "Attic bay 2")).toBe("press-attic");
    expect(readerOf(climate, "Shop window")).toBe("no-reader");
  });
  test("the only one in a store, where none is named like it; never one at the benches, in the Ward or outdoors", () => {
    expect(readerOf([dry("clean-room"), dry("upstairs-store"), dry("ward")])).toBe("upstairs-store");
    expect(readerOf([dry("clean-room"), dry("ward"), dry("weather")])).toBe("no-reader");
  });
  test("without readings nothing moves; where a reader fell silent or stands still, that is said", () => {
    expect(mouldOutlooks(campaign([])).size).toBe(0);
    const stuck = readings("store", () => [27, 0.9]);
    expect(readerOf([stuck])).toBe("no-readings-of-late");
    const found = outlook(campaign([stuck]));
    expect(mouldFactor(found)).toBe(1);
    expect(found && sayMouldOutlook(found, today)[0]).toMatch(/Not measured is not dry/);
  });
  test("in a closed bag it follows its bag; once the bag is open, the Ward's reader", () => {
    const admit = {
      day: addDays(today, -9),
      item: "L-1",
      act: "admit",
      person: "A",
      minutes: 7,
      exposed: true,
    } as const;
    const note = (what: WardNote["what"], daysBefore: number): WardNote => ({
      item: "L-1",
      day: addDays(today, -daysBefore),
      minute: 600,
      what,
    });
    const climate = [dry("store"), dry("ward")];
    const inWard = (ward: readonly WardNote[]) => readerOf(climate, undefined, { sessions: [admit], ward });
    expect(inWard([note("closed", 9), note("gel in", 9)])).toBeUndefined();
    expect(inWard([note("closed", 9), note("opened", 2)])).toBe("ward");
    expect(readerOf(climate, undefined, { sessions: [{ ...admit, act: "clean" }] })).toBeUndefined();
  });
});

describe("what the plan makes of it", () => {
  test("a day of waiting counts 1 to 2 times, 2 where mould has begun by every reading", () => {
    const soaked = outlook(campaign([steady("store", 28, 0.99)]));
    expect(mouldFactor(soaked)).toBe(2);
    expect(mouldFactor(outlook(campaign([steady("store", 27, 0.8)])))).toBeGreaterThan(1);
    expect(mouldFactor(undefined)).toBe(1);
  });
  test("only growth that is sure makes a due day, and never puts off the custodian's", () => {
    const sure = outlook(campaign([steady("store", 28, 0.97)], { items: [{ ...ledger, arrives: today }] }));
    const day = sure?.known ? sure.days.low : null;
    expect(day).toBeGreaterThan(0);
    expect(soonerDue(null, sure)).toBe(day);
    expect(soonerDue(HORIZON, sure)).toBe(day);
    expect(soonerDue(1, sure)).toBe(1);
    expect(soonerDue(30, outlook(campaign([steady("store", 27, 0.8)])))).toBe(30);
  });
  test("the day, the store and its climate are said", () => {
    const arrives = today;
    const found = outlook(
      campaign([steady("upstairs-store", 27, 0.78)], { items: [{ ...ledger, arrives }] }),
    );
    expect(found && sayMouldOutlook(found, today)[0]).toBe(
      "Mould could begin on it in 'upstairs-store' from 10 August 2026: 70 days at 27 °C and 78 %.",
    );
  });
});

describe("a year of weather beside the store's reader", () => {
  const DAYS_OF_MONTH = 28;
  /** The same climate on 28 days of each month, the months from July on drier by some g of vapour. */
  const weather = (drier: number): ClimateSeries => ({
    name: "weather",
    readings: Array.from({ length: 12 * DAYS_OF_MONTH }, (_, at) => {
      const month = Math.floor(at / DAYS_OF_MONTH) + 1;
      const date = `2025-${String(month).padStart(2, "0")}-${String((at % DAYS_OF_MONTH) + 1).padStart(2, "0")}`;
      return { at: `${date}T12:00:00`, dryBulb: 27, relHum: month >= 7 ? 0.8 - drier : 0.8 };
    }),
  });
  const damp = steady("store", 27, 0.82);
  test("the same months all year change nothing but the error allowed for", () => {
    const [plain, same] = [daysIn(campaign([damp])), daysIn(campaign([damp, weather(0)]))];
    expect(same.typical).toBe(plain.typical);
    expect(late(same.low)).toBeLessThanOrEqual(late(plain.low));
  });
  test("dry months to come put mould off, and the words say where that is from", () => {
    const of = campaign([damp, weather(0.3)]);
    expect(late(daysIn(of, "F-1").typical)).toBeGreaterThan(late(daysIn(campaign([damp]), "F-1").typical));
    const found = outlook(of);
    expect(found && sayMouldOutlook(found, today).join(" ")).toMatch(/months of the weather file/);
  });
});
