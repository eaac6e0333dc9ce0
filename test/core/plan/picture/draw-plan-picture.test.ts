import { describe, expect, test } from "vitest";
import type { Route } from "../../../../src/core/care/care.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { drawPlanPicture } from "../../../../src/core/plan/picture/draw-plan-picture.ts";
import { steps } from "../../../../src/core/plan/picture/marks.ts";
import { type PictureInput, planPicture } from "../../../../src/core/plan/picture/plan-picture.ts";
import type { Plan } from "../../../../src/core/plan/plan.ts";
import { PICTURE_WORDS } from "../../../../src/core/say/plan-picture.ts";
import type { Day } from "../../../../src/core/units/day.ts";

const day = (text: string): Day => text as Day;
const limit = (value: number) => ({ value, source: "common practice, no source" });

/** Three weeks from Monday 1 June 2026: one bag, one camera, one store that runs out and one that lasts. */
const campaign: Campaign = {
  name: "Ferry & Ford <papers>",
  place: { name: "Ostermere", climate: "temperate", freezer: false, fineFilterVacuum: true },
  start: day("2026-06-01"),
  end: day("2026-06-21"),
  planFrom: day("2026-06-01"),
  wardLitres: 50,
  stations: [{ id: "camera", kind: "camera", places: 2, minutesADay: 300 }],
  limits: {
    exposedMinutesADay: limit(180),
    exposedDaysAWeek: limit(3),
    exposedDaysInARow: limit(2),
    maskMinutes: limit(75),
    maskBreakMinutes: limit(30),
  },
  items: [],
  findings: [],
  people: [
    {
      code: "AB",
      name: "Ada Brook",
      role: "cleaner",
      skills: ["clean"],
      mouldWork: true,
      weekdays: [0, 1, 2, 3, 4],
      hoursADay: 7,
    },
    {
      code: "CD",
      name: "Cai Dell",
      role: "boxer",
      skills: ["box"],
      mouldWork: false,
      weekdays: [0, 1, 2, 3, 4],
      hoursADay: 7,
    },
  ],
  calendar: [
    { from: day("2026-06-02"), to: day("2026-06-19"), who: "camera", what: "open" },
    { from: day("2026-06-04"), to: day("2026-06-05"), who: "everyone", what: "closed" },
    { from: day("2026-06-08"), to: day("2026-06-10"), who: "AB", what: "away" },
    { from: day("2026-06-15"), to: day("2026-06-19"), who: "AB", what: "clean work" },
  ],
  stores: [
    {
      id: "masks",
      name: "Masks, folded",
      use: "k-mask",
      unit: "pc",
      onHand: 10,
      pack: 5,
      leadDays: 40,
      route: "air",
    },
    { id: "tape", name: "Tape", use: "k-tape", unit: "m", onHand: 90, pack: 50, leadDays: 7, route: "local" },
  ],
  deliveries: [{ store: "masks", day: day("2026-06-12"), quantity: 4 }],
  sessions: [],
  ward: [],
  climate: [],
};
const step = (act: string) => ({ act });
const routes = [
  {
    item: "A",
    steps: [step("admit"), step("release")],
    wardLitres: 12,
    wardDays: { low: 1, typical: 2, high: 3 },
  },
  { item: "B", steps: [step("release")], wardLitres: 7, wardDays: { low: 1, typical: 2, high: 3 } },
  { item: "C", steps: [step("image")], wardLitres: 30, wardDays: null },
] as unknown as Route[];
const plan = {
  campaign: campaign.name,
  place: campaign.place.name,
  end: campaign.end,
  planFrom: campaign.planFrom,
  finish: {
    p10: day("2026-06-11"),
    p50: day("2026-06-15"),
    p90: null,
    boxed: { p10: 1, p50: 2, p90: 3 },
    draws: 200,
  },
  assignments: [
    { day: day("2026-06-02"), act: "image", minutes: 240 },
    { day: day("2026-06-02"), act: "box", minutes: 55 },
  ],
  personDays: [{ day: day("2026-06-01"), person: "AB", exposedMinutes: 150 }],
  itemDays: [
    { item: "A", days: { admit: day("2026-06-02"), release: day("2026-06-04") } },
    { item: "B", days: { release: day("2026-06-03") } },
  ],
  orders: [{ store: "masks", orderBy: day("2026-06-01") }],
  people: [
    { code: "AB", mouldLimit: { minutesADay: 180, daysAWeek: 3 } },
    { code: "CD", mouldLimit: null },
  ],
} as unknown as Plan;
const use = new Map([
  ["k-mask", Float64Array.from({ length: 21 }, (_, d) => (d % 3 === 0 ? 3 : 0))],
  ["k-tape", Float64Array.from({ length: 21 }, () => 2)],
]);
const input: PictureInput = { campaign, routes, plan, use };
const picture = planPicture(input);
const svg = drawPlanPicture(picture, PICTURE_WORDS);

describe("what the picture shows", () => {
  test("bags lie in the Ward from closing to release, those there already from the first morning", () => {
    expect(picture.ward.slice(0, 6)).toEqual([7, 19, 19, 12, 0, 0]);
  });
  test("the camera is open for both places on its own days, and not when the house is closed", () => {
    expect(picture.cameraOpen.slice(0, 5)).toEqual([0, 600, 600, 0, 0]);
    expect(picture.camera[1]).toBe(240);
  });
  test("a store runs down, is filled by its delivery, and is gone on the first day it falls short", () => {
    const [masks, tape] = picture.stores;
    expect(masks).toMatchObject({ name: "Masks, folded", full: 10, out: 9, orderBy: 0 });
    expect(masks?.level.slice(0, 13)).toEqual([7, 7, 7, 4, 4, 4, 1, 1, 1, 0, 0, 2, 0]);
    expect(tape).toMatchObject({ out: null, full: 90, orderBy: null });
  });
  test("days off are stretches, weekends are not; clean work is shown and no cause", () => {
    const [ada, cai] = picture.people;
    expect(ada?.away).toEqual([
      { from: 3, to: 4 },
      { from: 7, to: 9 },
    ]);
    expect(ada?.clean).toEqual([{ from: 14, to: 18 }]);
    expect(cai).toMatchObject({ limit: null });
  });
});

describe("how it is drawn", () => {
  test("it is one well-formed drawing the size of A4 landscape", () => {
    expect(svg).toMatch(/^<svg [^>]*width="297mm" height="210mm"/);
    const open: string[] = [];
    for (const [, close, name, alone] of svg.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g))
      if (close) expect(open.pop()).toBe(name);
      else if (!alone) open.push(name ?? "");
    expect(open).toEqual([]);
    expect(svg).not.toContain("NaN");
    expect(svg).toContain("Ferry &amp; Ford &lt;papers&gt;");
  });
  test("black, white and one grey: nothing is told by colour", () => {
    const colours = new Set([...svg.matchAll(/(?:fill|stroke)="(#[0-9a-f]+)"/g)].map(([, colour]) => colour));
    expect([...colours].sort()).toEqual(["#000", "#999", "#fff"]);
  });
  test("every pattern used is there", () => {
    const there = new Set([...svg.matchAll(/<pattern id="([^"]+)"/g)].map(([, id]) => id));
    for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(there).toContain(id);
  });
  test("a title and sentences stand for the picture", () => {
    expect(svg).toContain('role="img" aria-labelledby="plan-title plan-words"');
    const words = /<desc[^>]*>([^<]+)</.exec(svg)?.[1] ?? "";
    expect(words).toContain("Ada Brook 2.5 hours on 1 day, at most 150 of 180 minutes a day");
    expect(words).toContain("The Ward is fullest on 2 June 2026: 19 of 50 litres");
    expect(words).toContain("Masks, folded would be gone on 10 June 2026; order by 1 June 2026");
    expect(words).toContain("half by 15 Jun, 9 in 10 after the end");
  });
  test("units, limits, the end and the finish stand in words", () => {
    for (const words of [
      "180 min a day",
      "holds 50 L",
      "10 h",
      "10 pc",
      "End 21 Jun",
      "gone 10 Jun",
      "+4",
      "clean work",
      "Finish: 1 in 10 by 11 Jun",
    ])
      expect(svg, words).toContain(words);
  });
  test("nothing is drawn outside the sheet", () => {
    for (const [, x] of svg.matchAll(/ x="([\d.-]+)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(1123);
    }
    for (const [, y] of svg.matchAll(/ y="([\d.-]+)"/g)) expect(Number(y)).toBeLessThanOrEqual(794);
  });
  test("twelve people and five stores still fit the sheet", () => {
    const crowd = {
      ...picture,
      people: Array.from({ length: 12 }, () => picture.people[0] as (typeof picture.people)[number]),
      stores: Array.from({ length: 5 }, () => picture.stores[0] as (typeof picture.stores)[number]),
    };
    for (const [, y] of drawPlanPicture(crowd, PICTURE_WORDS).matchAll(/ y="([\d.-]+)"/g))
      expect(Number(y)).toBeLessThanOrEqual(794);
  });
  test("a plan with nothing in it is drawn all the same", () => {
    const empty = {
      ...plan,
      assignments: [],
      personDays: [],
      itemDays: [],
      finish: { ...plan.finish, p10: null, p50: null },
    };
    const drawn = drawPlanPicture(
      planPicture({ ...input, plan: empty, use: new Map(), routes: [] }),
      PICTURE_WORDS,
    );
    expect(drawn).not.toContain("NaN");
    expect(drawn).toContain("something is left over at the end");
  });
});

test("steps go up and down at their days and close on the ground", () => {
  const path = steps(
    [0, 3, 3, 0, 2],
    (d) => d * 10,
    (v) => 100 - v,
  );
  expect(path).toBe("M10 100V97H30V100ZM40 100V98H50V100Z");
});
