import { describe, expect, test } from "vitest";
import type { Route } from "../../../src/core/care/care.ts";
import type { Campaign, Item, WardNote } from "../../../src/core/items/campaign.ts";
import { addDays, type Day } from "../../../src/core/units/day.ts";
import { forecastsOf, wardRoomOf, withForecasts } from "../../../src/core/ward/forecast.ts";
import { campaignOf, SAMPLES } from "../say/sample-campaign.ts";

const today = "2026-06-01" as Day;
const sample = campaignOf(SAMPLES);
const file: Item = {
  id: "F-1",
  title: "A damp file",
  facts: { format: "loose_sheets", leaves: 90 },
  parts: [],
  priority: "want",
  heightMm: 320,
  widthMm: 230,
  thicknessMm: 15,
};
const route: Route = {
  item: "F-1",
  destiny: "route",
  steps: [],
  wardDays: { low: 4, typical: 8, high: 15 },
  wardWhy: "drying",
  wardLitres: 12,
  images: 0,
  stoppedBy: [],
  askWho: [],
  conditions: ["mould_active", "damp"],
};
const note = (daysBefore: number, what: WardNote["what"], value?: number, minute = 600): WardNote => ({
  item: "F-1",
  day: addDays(today, -daysBefore),
  minute,
  what,
  ...(value === undefined ? {} : { value }),
});
const campaign = (ward: readonly WardNote[], more: Partial<Campaign> = {}): Campaign => ({
  ...sample,
  items: [file],
  sessions: [],
  climate: [],
  planFrom: today,
  ward,
  ...more,
});
const forecast = (ward: readonly WardNote[], more: Partial<Campaign> = {}) =>
  forecastsOf(campaign(ward, more), [route]).get("F-1");

describe("how long an item still lies in the Ward", () => {
  test("an item nobody has admitted keeps the norm", () => {
    expect(forecast([])).toBeUndefined();
  });
  test("admitted, but nothing measured: the norm less the days behind, never under a day", () => {
    const session = { item: "F-1", act: "admit", person: "AN", minutes: 7, exposed: true } as const;
    const found = (daysBefore: number) =>
      forecast([], { sessions: [{ ...session, day: addDays(today, -daysBefore) }] });
    expect(found(3)).toMatchObject({
      from: "norm less the days behind",
      days: { low: 1, typical: 5, high: 12 },
    });
    expect(found(30)?.days).toEqual({ low: 1, typical: 1, high: 1 });
  });
  test("two passing readings a day apart, no gel, no rebound: the release is earned", () => {
    const found = forecast([
      note(4, "closed", 12),
      note(4, "read", 0.49, 620),
      note(2, "read", 0.5, 640),
      note(1, "read", 0.5),
    ]);
    expect(found?.from).toBe("earned");
    expect(found?.days.typical).toBe(0);
  });
  test("a bag that still reads 70 % after one look has no date; the plan falls back and says so", () => {
    const found = forecast([note(1, "closed", 12), note(1, "read", 0.7, 620)]);
    expect(found?.from).not.toBe("readings");
    expect(found?.bag?.ready.ok).toBe(false);
  });
  test("what was written on or after the plan's morning is not known yet", () => {
    expect(forecast([note(0, "closed", 12), note(-1, "read", 0.5)])).toBeUndefined();
  });
  test("a watch of 14 days is not shortened by a dry reading", () => {
    const watched = {
      ...route,
      wardWhy: "second look after 14 days",
      wardDays: { low: 14, typical: 15, high: 16 },
    };
    const notes = [
      note(4, "closed", 12),
      note(4, "read", 0.49, 620),
      note(2, "read", 0.5, 640),
      note(1, "read", 0.5),
    ];
    const found = forecastsOf(campaign(notes), [watched]).get("F-1");
    expect(found?.days.typical).toBe(11);
  });
});

describe("the room of the Ward", () => {
  const reader = (name: string, relHum: number) => ({
    name,
    readings: [1, 2, 3].map((days) => ({ at: `${addDays(today, -days)}T10:00:00`, relHum, dryBulb: 26 })),
  });
  test("is what its own reader showed in the week before", () => {
    const room = wardRoomOf(campaign([], { climate: [reader("store", 0.8), reader("ward", 0.48)] }));
    expect(room.relHum).toBeCloseTo(0.48, 10);
  });
  test("without a reader of its own is the climate's usual air", () => {
    expect(wardRoomOf(campaign([], { place: { ...sample.place, climate: "hot_humid" } })).relHum).toBe(0.75);
  });
});

test("the papers say where a wait comes from", () => {
  const notes = [
    note(4, "closed", 12),
    note(4, "read", 0.49, 620),
    note(2, "read", 0.5, 640),
    note(1, "read", 0.5),
  ];
  const [told] = withForecasts([route], forecastsOf(campaign(notes), [route]), today);
  expect(told?.wardWhy).toBe("release earned by readings");
});
