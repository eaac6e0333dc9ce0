import { afterAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import type { CalendarEntry, Campaign } from "../../../../src/core/items/campaign.ts";
import { seeded } from "../../../../src/core/plan/chance.ts";
import { sayPlanFault } from "../../../../src/core/say/plan-faults.ts";
import { addDays } from "../../../../src/core/units/day.ts";
import { startSolver } from "../../../../src/edge/solve/solver.ts";
import { faultsOf, planOf } from "./good-plan.ts";

const SEEDS = [11, 12, 13];
const SIZE = { items: 60, people: 5, weeks: 8 };
type Twist = (campaign: Campaign, draw: () => number) => Campaign;
const upTo = (draw: () => number, most: number): number => Math.floor(draw() * most);

/** What campaigns meet, each from a seed. */
const TWISTS: Readonly<Record<string, Twist>> = {
  "as it comes": (campaign) => campaign,
  "people away and on clean work, days closed, the camera gone for a while": (campaign, draw) => {
    const spells = campaign.people.map(({ code }): CalendarEntry => {
      const from = addDays(campaign.start, upTo(draw, 45));
      return {
        from,
        to: addDays(from, upTo(draw, 9)),
        who: code,
        what: draw() < 0.5 ? "away" : "clean work",
      };
    });
    const shut = (who: string, day: number, days: number): CalendarEntry => ({
      from: addDays(campaign.start, day),
      to: addDays(campaign.start, day + days - 1),
      who,
      what: "closed",
    });
    const rows = [...spells, shut("everyone", upTo(draw, 30), 2), shut("camera", upTo(draw, 30), 9)];
    return { ...campaign, calendar: [...campaign.calendar, ...rows] };
  },
  "a Ward for a few items": (campaign, draw) => ({ ...campaign, wardLitres: 20 + upTo(draw, 20) }),
  "due days": (campaign, draw) => ({
    ...campaign,
    items: campaign.items.map((item) =>
      draw() < 0.3 ? { ...item, due: addDays(campaign.start, upTo(draw, 60)) } : item,
    ),
  }),
  "stores nearly empty, one that can no longer be ordered": (campaign, draw) => ({
    ...campaign,
    stores: [
      ...campaign.stores.map((store) => ({ ...store, onHand: upTo(draw, 30) })),
      { ...pack("bags", "k-bag"), onHand: upTo(draw, 5), leadDays: 30 },
      { ...pack("tape", "k-tape"), onHand: 3, leadDays: 20, orderBy: addDays(campaign.start, -1) },
      { ...pack("masks of another make", "k-mask"), onHand: upTo(draw, 9), leadDays: 60 },
    ],
  }),
  "stricter limits": (campaign, draw) => ({
    ...campaign,
    limits: {
      ...campaign.limits,
      exposedMinutesADay: { value: 100 + upTo(draw, 80), source: "the house" },
      exposedDaysAWeek: { value: 2, source: "the house" },
      exposedDaysInARow: { value: 1, source: "the house" },
    },
  }),
  "two people, and one of them not every day": (campaign) => ({
    ...campaign,
    people: campaign.people
      .slice(0, 2)
      .map((person, at) => (at === 1 ? { ...person, weekdays: [0, 1, 3] } : person)),
  }),
};
const pack = (name: string, use: string) => ({ id: name, name, use, unit: "pc", pack: 10, route: "air" });

const solver = startSolver();
afterAll(() => solver.close());

describe("the planner's plans break no limit", () => {
  test.each(Object.entries(TWISTS))("%s", async (_, twist) => {
    for (const seed of SEEDS) {
      const campaign = twist(makeCampaign({ ...SIZE, seed }), seeded(seed));
      const faults = faultsOf(campaign, await planOf(campaign, solver.solve));
      expect(
        faults.map((fault) => sayPlanFault(fault)),
        `seed ${seed}`,
      ).toEqual([]);
    }
  });
});
