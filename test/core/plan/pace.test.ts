import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import type { Campaign, Session } from "../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../src/core/plan/campaign-routes.ts";
import { atOwnPace, pacesOf } from "../../../src/core/plan/pace.ts";
import { expected } from "../../../src/core/plan/work.ts";
import { addDays } from "../../../src/core/units/day.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();
const campaign = makeCampaign({ items: 60, people: 4, weeks: 20, seed: 3 });
const whole = campaignRoutes(book, norms, campaign).routes;
const files = whole.filter(
  (route) =>
    campaign.items.find((item) => item.id === route.item)?.facts.format === "loose_sheets" &&
    route.steps.some((step) => step.act === "image"),
);
const none = { low: 0, typical: 0, high: 0 };
/** Past the first three weeks, which run slower by themselves. */
const practised = addDays(campaign.start, 30);
const imaged = (count: number, share: number): Session[] =>
  files.slice(0, count).map((route) => ({
    day: practised,
    item: route.item,
    act: "image",
    person: campaign.people[0]?.code ?? "",
    minutes: expected(route.steps.find((step) => step.act === "image")?.minutes ?? none) * share,
    exposed: false,
  }));
const paceOf = (sessions: readonly Session[]) =>
  pacesOf({ ...campaign, sessions } as Campaign, whole).find((each) => each.act === "image");

describe("the team's own pace", () => {
  test("where nothing was measured nothing is changed", () => {
    expect(pacesOf(campaign, whole)).toEqual([]);
    expect(atOwnPace(campaign, whole, [])).toEqual(whole);
  });
  test("a few sessions move the norm a little, many move it far", () => {
    const [few, many] = [paceOf(imaged(3, 0.5)), paceOf(imaged(15, 0.5))];
    expect(few?.measured).toBeCloseTo(0.5, 6);
    expect(few?.factor).toBeGreaterThan(many?.factor ?? 1);
    expect(many?.factor).toBeCloseTo(Math.exp(Math.log(0.5) / 2), 6); // fifteen sessions weigh as much as the norm
  });
  test("one slip of the pen among many does not move the median", () => {
    const sessions = imaged(9, 1);
    const slipped = sessions.map((each, at) => (at === 0 ? { ...each, minutes: each.minutes * 100 } : each));
    expect(paceOf(slipped)?.measured).toBeCloseTo(1, 6);
  });
  test("the factor lies between the norm and what was measured, and never beyond three times", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 15 }),
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        (count, share) => {
          const pace = paceOf(imaged(count, share));
          if (!pace) return;
          const [low, high] = [Math.min(1, share), Math.max(1, share)];
          expect(pace.factor).toBeGreaterThanOrEqual(Math.max(low, 1 / 3) - 1e-9);
          expect(pace.factor).toBeLessThanOrEqual(Math.min(high, 3) + 1e-9);
        },
      ),
      { numRuns: 50 },
    );
  });
  test("in a campaign's first week, which runs at half speed, work that takes twice as long is at the norm", () => {
    const sessions = imaged(20, 2).map((each) => ({ ...each, day: addDays(campaign.start, 3) }));
    expect(paceOf(sessions)?.measured).toBeCloseTo(1, 6);
  });
  test("a team that had ten days of work before the campaign began is slow in no week of it", () => {
    const early = Array.from({ length: 10 }, (_, n) => ({
      ...(imaged(1, 1)[0] as Session),
      item: "unknown",
      day: addDays(campaign.start, -20 + n),
    }));
    const sessions = imaged(20, 2).map((each) => ({ ...each, day: addDays(campaign.start, 3) }));
    expect(paceOf([...early, ...sessions])?.measured).toBeCloseTo(2, 6);
  });
  test("only the act and format that were measured are changed", () => {
    const paces = pacesOf({ ...campaign, sessions: imaged(10, 2) } as Campaign, whole);
    const paced = atOwnPace(campaign, whole, paces);
    for (const [at, route] of whole.entries())
      for (const [s, step] of route.steps.entries()) {
        const now = paced[at]?.steps[s]?.minutes.typical ?? 0;
        const isFile = campaign.items.find((item) => item.id === route.item)?.facts.format === "loose_sheets";
        if (step.act === "image" && isFile) expect(now).toBeGreaterThan(step.minutes.typical);
        else expect(now).toBe(step.minutes.typical);
      }
  });
});
