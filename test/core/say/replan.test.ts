import { describe, expect, test } from "vitest";
import type { Replan } from "../../../src/core/plan/replan/changes.ts";
import type { WhyChanged } from "../../../src/core/plan/replan/why-changed.ts";
import {
  sayAfresh,
  sayDueDays,
  sayKept,
  sayMoved,
  sayNearDays,
  sayPaces,
  sayWhyChanged,
} from "../../../src/core/say/replan.ts";
import type { Day } from "../../../src/core/units/day.ts";
import { campaignOf, SAMPLES } from "./sample-campaign.ts";

const words = campaignOf(SAMPLES);
const on = (text: string): Day => text as Day;
const tuesday = on("2026-06-09");
const WHYS: readonly WhyChanged[] = [
  { why: "left the team" },
  { why: "away", person: "AN", day: tuesday },
  { why: "clean work", person: "AN", day: tuesday },
  { why: "enough mould days", person: "AN" },
  { why: "behind", act: "clean", day: on("2026-06-05") },
  { why: "ward", ready: on("2026-06-12") },
  { why: "arrives later", day: on("2026-07-16") },
  { why: "closed", station: "camera", day: tuesday },
  { why: "store", store: "masks", day: tuesday },
  { why: "set aside" },
  { why: "at the Door" },
  { why: "not needed" },
  { why: "day is full" },
  { why: "there was room" },
  { why: "gains more" },
];
const essentials = { mustLeft: 0, left: 4, lastBox: on("2026-11-20"), cost: 1000, moved: 90 };
const its: Replan = {
  acceptedFrom: on("2026-06-01"),
  planFrom: on("2026-06-08"),
  until: on("2026-06-17"),
  kept: 95,
  moved: 5,
  changes: [
    {
      item: "X-7",
      act: "clean",
      from: { person: "AN", day: tuesday },
      to: { person: "BO", day: on("2026-06-11") },
      why: { why: "away", person: "AN", day: tuesday },
    },
    {
      person: "AN",
      day: tuesday,
      from: "near mould",
      to: "away",
      why: { why: "away", person: "AN", day: tuesday },
    },
  ],
  heldDays: 10,
  dueBroken: [],
  dueKept: 3,
  arrived: [],
  paces: [],
  now: essentials,
  afresh: essentials,
  churn: 12,
};

describe("what became of the accepted plan, in sentences", () => {
  test("every reason has a sentence of its own", () => {
    const said = WHYS.map((why) => sayWhyChanged(why, words));
    expect(new Set(said).size).toBe(WHYS.length);
    for (const sentence of said) expect(sentence.length).toBeGreaterThan(12);
  });
  test("of clean work the fact and the day are said and nothing else", () => {
    const said = sayWhyChanged({ why: "clean work", person: "ZZ", day: tuesday }, words);
    expect(said).toMatch(/^ZZ is on clean work on Tue,? 9 Jun$/);
  });
  test("the share kept, the reasons with their items, and the person's day", () => {
    expect(sayKept(its)).toMatch(/95 of 100 acts .* \(95 %\)/);
    expect(sayMoved(its, words)).toHaveLength(1);
    expect(sayMoved(its, words)[0]).toMatch(/^1 act, .*X-7/);
    expect(sayNearDays(its, words)).toEqual([expect.stringMatching(/away, not near mould as told\.$/)]);
  });
  test("a due day that breaks is said with what to do", () => {
    const broken = { ...its, dueBroken: [{ item: "X-7", due: on("2026-06-30"), boxed: null }] };
    expect(sayDueDays(broken)).toMatch(/tell the owners today: X-7 .*not by the end/);
  });
  test("what is worse than in a fresh plan is said", () => {
    const worse = { ...its, now: { ...essentials, mustLeft: 2, lastBox: on("2026-11-27"), cost: 1010 } };
    expect(sayAfresh(worse)).toMatch(/2 must-do items more .* and the last box .*27 Nov/);
    expect(sayAfresh(its)).toMatch(/no worse here/);
  });
  test("a pace is named when it is 5 % off the norm", () => {
    const pace = { act: "clean", format: "loose_sheets", exposed: false, count: 40, measured: 1.3 } as const;
    expect(sayPaces({ ...its, paces: [{ ...pace, factor: 1.2 }] })).toMatch(/loose sheets 20 % longer/);
    expect(sayPaces({ ...its, paces: [{ ...pace, factor: 1.02 }] })).toMatch(/none 5 % off/);
  });
});
