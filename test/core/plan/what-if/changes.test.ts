import { describe, expect, test } from "vitest";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { planProblem } from "../../../../src/core/plan/problem.ts";
import type { Change } from "../../../../src/core/plan/what-if/change.ts";
import { changed, changedBy } from "../../../../src/core/plan/what-if/changes.ts";
import { whyNot } from "../../../../src/core/plan/what-if/why-not.ts";
import { daysBetween } from "../../../../src/core/units/day.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { day, smallCampaign } from "./small-campaign.ts";

const norms = loadNorms(readPublished("norms.json"));
const base = smallCampaign();
/** A person's minutes, and whether mould work may be given, on a day. */
function handOn(campaign: Campaign, code: string, on: string): { minutes: number; mayMould: boolean } {
  const problem = planProblem(campaign, [], norms);
  const hand = problem.hands.find((each) => each.person.code === code);
  const d = daysBetween(campaign.planFrom, day(on));
  return { minutes: hand?.minutes[d] ?? -1, mayMould: hand?.mayMould[d] === 1 };
}
function minutesAt(campaign: Campaign, kind: "camera" | "mould bench", on: string): number {
  const minutes = planProblem(campaign, [], norms).stations.get(kind);
  return minutes?.[daysBetween(campaign.planFrom, day(on))] ?? -1;
}
const span = (from: string, to: string) => ({ from: day(from), to: day(to) });

describe("people", () => {
  test("on clean work: no mould work in those days, the same hours, and mould work again after", () => {
    const supposed = changed(base, {
      change: "clean work",
      person: "P0",
      ...span("2026-07-06", "2026-07-10"),
    });
    expect(handOn(supposed, "P0", "2026-07-08").mayMould).toBe(false);
    expect(handOn(supposed, "P0", "2026-07-08").minutes).toBe(handOn(base, "P0", "2026-07-08").minutes);
    expect(handOn(supposed, "P0", "2026-07-13").mayMould).toBe(true);
  });
  test("away: no minutes in those days, the others untouched", () => {
    const supposed = changed(base, { change: "away", person: "P0", ...span("2026-07-06", "2026-07-10") });
    expect(handOn(supposed, "P0", "2026-07-08").minutes).toBe(0);
    expect(handOn(supposed, "P0", "2026-07-13").minutes).toBeGreaterThan(0);
    expect(handOn(supposed, "P1", "2026-07-08").minutes).toBe(handOn(base, "P1", "2026-07-08").minutes);
  });
  test("one more cleaner is there from the day, with a cleaner's work and the hours of the cleaners here", () => {
    const more = { change: "more people", role: "cleaner", count: 2, mouldWork: true } as const;
    const supposed = changed(base, { ...more, ...span("2026-07-06", base.end) });
    const added = supposed.people.slice(base.people.length);
    expect(added.map((each) => each.code)).toEqual(["new-1", "new-2"]);
    expect(added[0]?.skills).toEqual(["clean", "box"]);
    expect(handOn(supposed, "new-1", "2026-07-03").minutes).toBe(0);
    expect(handOn(supposed, "new-1", "2026-07-06")).toEqual(handOn(base, "P4", "2026-07-06"));
  });
  test("without mould work the new person is never near mould", () => {
    const more = { change: "more people", role: "cleaner", count: 1, mouldWork: false } as const;
    expect(
      handOn(changed(base, { ...more, ...span("2026-06-01", base.end) }), "new-1", "2026-07-06").mayMould,
    ).toBe(false);
  });
  test("shorter days shorten everyone's, and a day that was shorter already stays so", () => {
    const hot = smallCampaign({
      calendar: [
        ...base.calendar,
        { ...span("2026-06-08", "2026-06-12"), who: "everyone", what: "hours", hours: 4 },
      ],
    });
    const supposed = changed(hot, {
      change: "hours",
      who: "everyone",
      hours: 5,
      ...span("2026-06-08", "2026-06-19"),
    });
    expect(handOn(supposed, "P0", "2026-06-10")).toEqual(handOn(hot, "P0", "2026-06-10"));
    expect(handOn(base, "P0", "2026-06-17").minutes - handOn(supposed, "P0", "2026-06-17").minutes).toBe(120);
  });
});

describe("goods", () => {
  test("late: what is on its way and an order sent today come later; other stores do not", () => {
    const supposed = changed(base, { change: "late", stores: ["masks"], days: 21 });
    expect(supposed.deliveries.find((each) => each.store === "masks")?.day).toBe("2026-08-10");
    expect(supposed.stores.find((each) => each.id === "masks")?.leadDays).toBe(63);
    expect(supposed.deliveries.filter((each) => each.store === "boxes")).toEqual(
      base.deliveries.filter((each) => each.store === "boxes"),
    );
  });
  test("early: never before today, and an order takes as long as before", () => {
    const supposed = changed(base, { change: "late", stores: ["masks"], days: -90 });
    expect(supposed.deliveries.find((each) => each.store === "masks")?.day).toBe(base.planFrom);
    expect(supposed.stores).toEqual(base.stores);
  });
  test("what has come already does not come later", () => {
    const come = smallCampaign({ planFrom: day("2026-08-01") });
    expect(changed(come, { change: "late", stores: ["masks", "boxes"], days: 7 }).deliveries).toEqual(
      come.deliveries,
    );
  });
  test("forty more boxes on a day are a delivery more", () => {
    const supposed = changed(base, {
      change: "delivery",
      store: "boxes",
      day: day("2026-07-06"),
      quantity: 40,
    });
    expect(supposed.deliveries.at(-1)).toMatchObject({ store: "boxes", day: "2026-07-06", quantity: 40 });
  });
});

describe("stations", () => {
  const hired = smallCampaign({
    calendar: [
      { ...span("2026-06-01", "2026-06-03"), who: "camera", what: "open" },
      { ...span("2026-06-08", "2026-06-10"), who: "camera", what: "open" },
      { ...span("2026-06-09", "2026-06-09"), who: "camera", what: "closed", note: "nobody beside it" },
    ],
  });
  test("closed: no minutes in those days", () => {
    const supposed = changed(base, {
      change: "closed",
      station: "camera",
      ...span("2026-07-06", "2026-07-10"),
    });
    expect(minutesAt(supposed, "camera", "2026-07-08")).toBe(0);
    expect(minutesAt(supposed, "camera", "2026-07-13")).toBe(minutesAt(base, "camera", "2026-07-13"));
  });
  test("every weekday instead of hired days, within the weeks it is there; a closed day stays closed", () => {
    const supposed = changed(hired, { change: "weekdays", station: "camera", weekdays: [0, 1, 2, 3, 4] });
    expect(minutesAt(hired, "camera", "2026-06-04")).toBe(0);
    expect(minutesAt(supposed, "camera", "2026-06-04")).toBeGreaterThan(0);
    expect(minutesAt(supposed, "camera", "2026-06-09")).toBe(0);
    expect(minutesAt(supposed, "camera", "2026-06-15")).toBe(0);
  });
  test("days more are added; a station without days of its own keeps all days", () => {
    const more = { change: "open", station: "camera", ...span("2026-07-06", "2026-07-07") } as const;
    expect(minutesAt(changed(hired, more), "camera", "2026-07-07")).toBeGreaterThan(0);
    expect(changed(base, more)).toBe(base);
    expect(whyNot(base, more)?.why).toBe("open already");
  });
  test("a second camera is there on the first one's days, and counts only as far as somebody is there to work it", () => {
    const supposed = changed(hired, {
      change: "more stations",
      kind: "camera",
      count: 1,
      ...span("2026-06-01", hired.end),
    });
    expect(supposed.stations.at(-1)).toMatchObject({ id: "camera-2", kind: "camera", places: 1 });
    expect(minutesAt(supposed, "camera", "2026-06-04")).toBe(0);
    expect(minutesAt(supposed, "camera", "2026-06-02")).toBeGreaterThan(
      minutesAt(hired, "camera", "2026-06-02"),
    );
    const photographers = supposed.people.filter((each) => each.skills.includes("image")).length;
    expect(minutesAt(supposed, "camera", "2026-06-02")).toBeLessThanOrEqual(photographers * 420);
  });
});

describe("items, Ward and end", () => {
  test("more items are copies with findings and nothing done, arriving on the day, spread over those they are like", () => {
    const like = base.items.filter((each) => each.facts.format === "loose_sheets").map((each) => each.id);
    const supposed = changed(base, {
      change: "more items",
      like,
      words: "loose_sheets",
      count: 10,
      day: day("2026-06-15"),
    });
    const added = supposed.items.slice(base.items.length);
    expect(added).toHaveLength(10);
    expect(new Set(supposed.items.map((each) => each.id)).size).toBe(base.items.length + 10);
    expect(new Set(added.map((each) => each.title)).size).toBe(10);
    for (const { id, facts, arrives, due } of added) {
      expect([facts.format, arrives, due]).toEqual(["loose_sheets", "2026-06-15", undefined]);
      expect(supposed.findings.some((each) => each.item === id)).toBe(true);
      expect(supposed.sessions.some((each) => each.item === id)).toBe(false);
    }
  });
  test("held back: workable from the day on, not the day before; one that comes later anyway still does", () => {
    const items = [base.items[0]?.id ?? "", base.items.find((each) => each.arrives)?.id ?? ""];
    const supposed = changed(base, { change: "hold back", items, words: "two", until: day("2026-06-10") });
    const arrives = (id: string) => supposed.items.find((each) => each.id === id)?.arrives;
    expect(arrives(items[0] ?? "")).toBe("2026-06-09");
    expect(arrives(items[1] ?? "")).toBe("2026-07-15");
  });
  test("the Ward has the litres said", () => {
    expect(changed(base, { change: "ward", litres: 800 }).wardLitres).toBe(800);
  });
  test("an earlier end cuts the days off", () => {
    expect(changed(base, { change: "end", day: day("2026-07-31") }).end).toBe("2026-07-31");
  });
  test("a later end frees nobody: who is on clean work at the end stays so, and hired days do not grow", () => {
    const loan = smallCampaign({
      calendar: [
        ...base.calendar,
        { from: base.planFrom, to: base.end, who: "camera", what: "open" },
        { ...span("2026-08-10", "2026-08-21"), who: "P4", what: "hours", hours: 3 },
      ],
    });
    const later = changed(loan, { change: "end", day: day("2026-10-30") });
    expect(handOn(later, "P2", "2026-10-28").mayMould).toBe(false);
    expect(handOn(later, "P4", "2026-10-28").minutes).toBeLessThan(180);
    expect(minutesAt(later, "camera", "2026-10-28")).toBe(0);
  });
});

describe("limits that guard people", () => {
  const limits = ["exposedMinutesADay", "exposedDaysAWeek", "exposedDaysInARow"] as const;
  test.each(limits)("%s can be tighter, never looser, whoever calls it", (limit) => {
    const now = base.limits[limit].value;
    expect(changed(base, { change: "tighter", limit, value: now - 1 }).limits[limit].value).toBe(now - 1);
    expect(changed(base, { change: "tighter", limit, value: now + 1 })).toBe(base);
    expect(whyNot(base, { change: "tighter", limit, value: now + 1 })).toEqual({
      why: "looser limit",
      limit,
      now,
    });
  });
  test("no change of any kind gives a person of the campaign more mould days, longer hours or looser limits", () => {
    const whole = span(base.planFrom, base.end);
    const changes: Change[] = [
      { change: "more people", role: "cleaner", count: 1, mouldWork: true, ...whole },
      { change: "more stations", kind: "camera", count: 1, ...whole },
      { change: "hours", who: "everyone", hours: 24, ...whole },
      { change: "hours", who: "P2", hours: 1, ...whole },
      { change: "weekdays", station: "camera", weekdays: [0, 1, 2, 3, 4, 5, 6] },
      { change: "ward", litres: 5000 },
      { change: "end", day: day("2026-12-31") },
      ...limits.map((limit): Change => ({ change: "tighter", limit, value: 1000 })),
    ];
    for (const supposed of [...changes.map((each) => changed(base, each)), changedBy(base, changes)]) {
      expect(supposed.limits).toEqual(base.limits);
      const [before, after] = [planProblem(base, [], norms), planProblem(supposed, [], norms)];
      before.hands.forEach((hand, p) => {
        before.days.forEach((_, d) => {
          expect(after.hands[p]?.mayMould[d]).toBeLessThanOrEqual(hand.mayMould[d] ?? 0);
          expect(after.hands[p]?.minutes[d]).toBeLessThanOrEqual(hand.minutes[d] ?? 0);
        });
      });
    }
  });
  test("a longer day than anybody has is refused", () => {
    expect(
      whyNot(base, { change: "hours", who: "everyone", hours: 9, ...span("2026-06-08", "2026-06-12") }),
    ).toEqual({
      why: "longer day",
      most: 7,
    });
  });
});

test("the campaign given stays as it was", () => {
  const before = JSON.stringify(base);
  changedBy(base, [
    { change: "away", person: "P0", ...span("2026-07-06", "2026-07-10") },
    { change: "late", stores: ["masks"], days: 21 },
    { change: "end", day: day("2026-12-31") },
  ]);
  expect(JSON.stringify(base)).toBe(before);
});
