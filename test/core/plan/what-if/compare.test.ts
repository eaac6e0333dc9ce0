import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { planProblem } from "../../../../src/core/plan/problem.ts";
import type { Change } from "../../../../src/core/plan/what-if/change.ts";
import { changed } from "../../../../src/core/plan/what-if/changes.ts";
import {
  type Difference,
  differenceOf,
  type Outlook,
  outlookOf,
} from "../../../../src/core/plan/what-if/compare.ts";
import { type FirstLook, relaxedCase } from "../../../../src/core/plan/what-if/relaxed-case.ts";
import { releaseQueueOf } from "../../../../src/core/plan/what-if/release-queue.ts";
import { type Supposed, supposedPlan } from "../../../../src/core/plan/what-if/supposed-plan.ts";
import { NOISE_DAYS, sayDifference } from "../../../../src/core/say/what-if.ts";
import { daysBetween } from "../../../../src/core/units/day.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";
import { type Solver, startSolver } from "../../../../src/edge/solve/solver.ts";
import { day } from "./small-campaign.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();
const DRAWS = 20;
let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

interface Made {
  readonly look: FirstLook;
  readonly outlook: Outlook;
  readonly supposed: Supposed;
}
async function made(campaign: Campaign, asItIs: Made | null): Promise<Made> {
  const { routes } = campaignRoutes(book, norms, campaign);
  const relaxed = await relaxedCase(planProblem(campaign, routes, norms), routes, solver.solve);
  const supposed = await supposedPlan(relaxed, solver.solve, DRAWS, asItIs?.supposed ?? null);
  return {
    look: relaxed.look,
    outlook: outlookOf(supposed, relaxed.look, []),
    supposed,
  };
}
async function against(
  campaign: Campaign,
  base: Made,
  change: Change,
): Promise<Made & { difference: Difference }> {
  const other = await made(changed(campaign, change), base);
  const known = new Set(campaign.items.map((each) => each.id));
  return { ...other, difference: differenceOf(base.outlook, other.outlook, known) };
}

const campaigns = [3, 4].map((seed) => makeCampaign({ items: 60, people: 5, weeks: 20, seed }));
const whole = {
  from: campaigns[0]?.planFrom ?? day("2026-06-01"),
  to: campaigns[0]?.end ?? day("2026-11-29"),
};
const july = { from: day("2026-07-06"), to: day("2026-07-31") };
/** The solver's own tolerance, in days an item. */
const TINY = 1e-4;

describe.each(campaigns)("seeded campaign $#", (campaign) => {
  let base: Made;
  beforeAll(async () => {
    base = await made(campaign, null);
  });

  test.each<[string, Change]>([
    ["one more fit person", { change: "more people", role: "cleaner", count: 1, mouldWork: true, ...whole }],
    [
      "one more person on clean work",
      { change: "more people", role: "cleaner", count: 1, mouldWork: false, ...whole },
    ],
    ["a second camera", { change: "more stations", kind: "camera", count: 1, ...whole }],
    ["boxes earlier", { change: "late", stores: ["boxes"], days: -14 }],
    ["a bigger Ward", { change: "ward", litres: 2 * campaign.wardLitres }],
  ])(
    "%s never makes the wait longer, nor the finish later beyond noise, nor boxes fewer",
    async (_, change) => {
      const { look, difference } = await against(campaign, base, change);
      expect(look.waitingDays).toBeLessThanOrEqual(base.look.waitingDays + TINY);
      expect(look.boxed).toBeGreaterThanOrEqual(base.look.boxed);
      expect(difference.days.p50 ?? 0).toBeLessThanOrEqual(NOISE_DAYS);
      expect(difference.boxed).toBeGreaterThanOrEqual(0);
    },
  );

  test.each<[string, Change]>([
    ["a person away for a month", { change: "away", person: "P0", ...july }],
    ["a person on clean work", { change: "clean work", person: "P0", ...whole }],
    ["the camera away for a month", { change: "closed", station: "camera", ...july }],
    ["shorter days for a month", { change: "hours", who: "everyone", hours: 4, ...july }],
    ["a later delivery", { change: "late", stores: ["masks", "boxes"], days: 30 }],
    ["a smaller Ward", { change: "ward", litres: campaign.wardLitres / 4 }],
    ["fewer mould minutes a day", { change: "tighter", limit: "exposedMinutesADay", value: 140 }],
    ["fewer exposed days a week", { change: "tighter", limit: "exposedDaysAWeek", value: 2 }],
  ])(
    "%s never makes the wait shorter, nor the finish earlier beyond noise, nor boxes more",
    async (_, change) => {
      const { look, difference } = await against(campaign, base, change);
      expect(look.waitingDays).toBeGreaterThanOrEqual(base.look.waitingDays - TINY);
      expect(look.boxed).toBeLessThanOrEqual(base.look.boxed);
      expect(difference.days.p50 ?? 0).toBeGreaterThanOrEqual(-NOISE_DAYS);
      expect(difference.boxed).toBeLessThanOrEqual(0);
    },
  );

  test("a change that touches nothing changes nothing, to the day: the luck is the same", async () => {
    const { difference } = await against(campaign, base, { change: "ward", litres: campaign.wardLitres + 1 });
    expect(difference.days).toEqual({ p10: 0, p50: 0, p90: 0 });
  });
});

test("a campaign cut short names what falls out, must-do items first, and says so first of all", async () => {
  const campaign = campaigns[0] as Campaign;
  const base = await made(campaign, null);
  const { outlook, difference } = await against(campaign, base, { change: "end", day: day("2026-07-05") });
  expect(difference.fallOut.length).toBeGreaterThan(10);
  const must = difference.fallOut.map((each) => each.must);
  expect(must).toEqual([...must].sort((a, b) => Number(b) - Number(a)));
  const [first, second] = sayDifference(base.outlook, outlook, difference);
  expect(first).toContain("No longer finishes");
  expect(second).toMatch(/^Falls out: \d+ items.*…$/);
  expect(difference.comeIn).toEqual([]);
});

test("added items never count among those that fall out", async () => {
  const campaign = campaigns[1] as Campaign;
  const base = await made(campaign, null);
  const like = campaign.items.map((each) => each.id);
  const { outlook, difference } = await against(campaign, base, {
    change: "more items",
    like,
    words: "items",
    count: 60,
    day: day("2026-10-12"),
  });
  expect(outlook.routed).toBeGreaterThan(base.outlook.routed);
  expect(difference.fallOut).toEqual([]);
  expect(difference.addedLeft.length).toBeGreaterThan(0);
});

test("the same question twice gives the same answer, to the letter", async () => {
  const campaign = campaigns[1] as Campaign;
  const [one, two] = [await made(campaign, null), await made(campaign, null)];
  expect(JSON.stringify(one.outlook)).toBe(JSON.stringify(two.outlook));
});

describe("one person who releases", () => {
  test("is nobody's queue when she is there every day, and a longer one when she is away a fortnight", async () => {
    const campaign = campaigns[0] as Campaign;
    const { supposed } = await made(campaign, null);
    const { plan, problem } = supposed;
    const all = releaseQueueOf(problem, plan, "P0");
    expect(all.releases).toBe(plan.assignments.filter((each) => each.act === "release").length);
    expect(all.releases).toBeGreaterThan(0);
    const hand = problem.hands.findIndex((each) => each.person.code === "P0");
    const firstRelease = Math.min(
      ...plan.assignments
        .filter((each) => each.act === "release")
        .map((each) => daysBetween(plan.planFrom, each.day)),
    );
    expect(firstRelease).toBeGreaterThanOrEqual(0);
    const away = problem.hands.map((each, p) =>
      p === hand
        ? {
            ...each,
            minutes: each.minutes.map((minutes, d) =>
              d >= firstRelease && d < firstRelease + 14 ? 0 : minutes,
            ),
          }
        : each,
    );
    const waits = releaseQueueOf({ ...problem, hands: away }, plan, "P0").waits;
    expect(waits.longest).toBeGreaterThanOrEqual(14);
    expect(waits.longest).toBeGreaterThan(all.waits.longest);
  });
});
