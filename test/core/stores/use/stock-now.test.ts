import { describe, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import type { Campaign, Session, StockCount } from "../../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { planProblem } from "../../../../src/core/plan/problem.ts";
import { stockNow } from "../../../../src/core/stores/use/stock-now.ts";
import { addDays } from "../../../../src/core/units/day.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();
const made = makeCampaign({ items: 40, people: 2, weeks: 20, seed: 1 });
const store = (id: string, use: string, onHand: number) => ({
  ...{ id, name: id, use, unit: "pc", onHand, pack: 20, leadDays: 42, route: "air" },
});
const count = (day: number, quantity: number, came = 0, of = "masks"): StockCount => ({
  ...{ store: of, day: addDays(made.start, day), quantity, came },
});
/** One person near mould on each of so many days from the first. */
const exposedDays = (from: number, days: number): Session[] =>
  Array.from({ length: days }, (_, d) => ({
    ...{ day: addDays(made.start, from + d), item: made.items[0]?.id ?? "", act: "clean" as const },
    ...{ person: "P1", minutes: 60, exposed: true },
  }));
const campaign = (
  stockCounts: readonly StockCount[],
  sessions: readonly Session[],
  onHand: number,
): Campaign => ({
  ...made,
  planFrom: addDays(made.start, 60),
  stores: [store("masks", "k-mask", onHand)],
  ...{ stockCounts, sessions },
});
const now = (its: Campaign) => stockNow(its, campaignRoutes(book, norms, its).worked, norms);

describe("what is on hand this morning", () => {
  test("what ten days near mould took since the count is taken off: two masks a day by the norm", () => {
    expect(now(campaign([count(0, 100)], exposedDays(5, 10), 100)).campaign.stores[0]?.onHand).toBeCloseTo(
      80,
      9,
    );
  });
  test("work of the days before the count is not taken off again; the day's own is", () => {
    const { counts } = now(campaign([count(10, 100)], exposedDays(5, 10), 100));
    expect(counts.get("masks")?.usedSince).toBeCloseTo(2 * 5, 9);
  });
  test("two people on one day put on two masks each; one person at two items on one day two in all", () => {
    const [first] = exposedDays(5, 1) as [Session];
    const both = [first, { ...first, person: "P2" }, { ...first, item: made.items[1]?.id ?? "" }];
    expect(now(campaign([count(0, 100)], both, 100)).campaign.stores[0]?.onHand).toBeCloseTo(96, 9);
  });
  test("never less than nothing", () => {
    expect(now(campaign([count(0, 3)], exposedDays(5, 10), 3)).campaign.stores[0]?.onHand).toBe(0);
  });
  test("without a count it is what is written, and what is worked out once is not taken off twice", () => {
    expect(now(campaign([], exposedDays(5, 10), 100)).campaign.stores[0]?.onHand).toBe(100);
    const once = now(campaign([count(0, 100)], exposedDays(5, 10), 100)).campaign;
    expect(now(once).campaign).toEqual(once);
  });
});

describe("the team's own use", () => {
  /** Twice the norm over so many days: four masks a day. */
  const twice = (days: number) =>
    now(campaign([count(0, 500), count(30, 500 - 4 * days)], exposedDays(1, days), 500)).measured[0];
  test("three sessions move the norm a little, fifteen as far as the norm itself holds back, none not at all", () => {
    expect(twice(3)?.factor).toBeCloseTo(2 ** (3 / 18), 9);
    expect(twice(15)?.factor).toBeCloseTo(Math.SQRT2, 9);
    expect(now(campaign([count(0, 500)], [], 500)).measured).toEqual([]);
  });
  test("what came between two counts is counted as used where it is gone", () => {
    const { measured } = now(campaign([count(0, 50), count(30, 70, 60)], exposedDays(1, 10), 70));
    expect(measured[0]).toMatchObject({ used: 40, atNorm: 20, sessions: 10 });
  });
  test("more there than can be, a delivery nobody wrote down: nothing is learnt from it", () => {
    expect(now(campaign([count(0, 50), count(30, 70)], exposedDays(1, 10), 70)).measured).toEqual([]);
  });
  test("a count a hundred times too low does not take the use beyond three times the norm", () => {
    const { measured } = now(campaign([count(0, 5000), count(30, 50)], exposedDays(1, 25), 50));
    expect(measured[0]?.factor).toBeLessThan(3);
  });
  test("the plan reckons with it, in what a person takes a day", () => {
    const its = now(campaign([count(0, 500), count(30, 440)], exposedDays(1, 15), 440)).campaign;
    const { sessionUses } = planProblem(its, campaignRoutes(book, norms, its).routes, norms);
    expect([...sessionUses.values()][0]).toBeCloseTo(2 * Math.SQRT2, 9);
  });
  test("what an item takes is learnt from the items, not from the days", () => {
    const box = made.items.filter(({ facts }) => facts.format === "bound_volume").slice(0, 4);
    const sessions = box.map(
      ({ id }, at): Session => ({
        ...{
          day: addDays(made.start, at + 1),
          item: id,
          act: "box" as const,
          person: "P1",
          minutes: 9,
          exposed: false,
        },
      }),
    );
    const its = {
      ...campaign([count(0, 100, 0, "labels"), count(30, 92, 0, "labels")], sessions, 92),
      stores: [store("labels", "k-label", 92)],
    };
    expect(now(its).measured[0]).toMatchObject({
      use: "k-label",
      sessions: 4,
      used: 8,
      atNorm: 8,
      factor: 1,
    });
  });
});
