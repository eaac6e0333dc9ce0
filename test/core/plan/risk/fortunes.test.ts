import { describe, expect, test } from "vitest";
import type { Campaign, Session } from "../../../../src/core/items/campaign.ts";
import type { Job, PlanProblem } from "../../../../src/core/plan/problem.ts";
import { EVERY_LUCK, fortunesOf } from "../../../../src/core/plan/risk/fortunes.ts";
import { EXPECTED } from "../../../../src/core/plan/walk.ts";
import { problemOf, smallCampaign } from "./small-problems.ts";

const campaign = smallCampaign();
const problem = problemOf(campaign);
const fortunes = fortunesOf(problem, 1);
const jobNamed = (of: PlanProblem, id: string): Job => of.jobs.find(({ item }) => item.id === id) as Job;
const minutesOf = (of: PlanProblem, draw: number, id: string): number[] => {
  const job = jobNamed(of, id);
  return job.tasks.map((_, at) => fortunesOf(of, 1)(draw, EVERY_LUCK).minutes(job, at));
};

describe("the luck of a campaign", () => {
  test("is the same for the same seed and draw, and another for another", () => {
    const id = problem.jobs[3]?.item.id as string;
    expect(minutesOf(problem, 4, id)).toEqual(minutesOf(problem, 4, id));
    expect(minutesOf(problem, 4, id)).not.toEqual(minutesOf(problem, 5, id));
  });
  test("falls on an item the same whatever else is in the collection", () => {
    const id = problem.jobs.at(-1)?.item.id as string;
    const fewer = problemOf({ ...campaign, items: campaign.items.filter((_, at) => at % 2 === 1) });
    expect(minutesOf(fewer, 4, id)).toEqual(minutesOf(problem, 4, id));
  });
  test("of one kind does not hang on whether other kinds are drawn", () => {
    const [alone, all] = [fortunes(6, ["waits", "absence", "deliveries"]), fortunes(6, EVERY_LUCK)];
    for (const job of problem.jobs) expect(alone.wardDays(job)).toBe(all.wardDays(job));
    for (let d = 0; d < problem.days.length; d++) expect(alone.absent(1, d)).toBe(all.absent(1, d));
    problem.stores.forEach((_, s) => expect(alone.delay(s)).toBe(all.delay(s)));
  });
  test("without any luck is the plan's own expectation", () => {
    const none = fortunes(1, []);
    for (const job of problem.jobs) {
      expect(none.wardDays(job)).toBe(EXPECTED.wardDays(job));
      job.tasks.forEach((_, at) => expect(none.minutes(job, at)).toBe(EXPECTED.minutes(job, at)));
    }
    expect(none.absent(0, 3)).toBe(false);
    expect(none.delay(0)).toBe(0);
  });
  test("keeps people away three days in a hundred, in spells, and makes one store in four late by three weeks at most", () => {
    const [days, draws] = [problem.days.length, 400];
    let [away, begins, late] = [0, 0, 0];
    for (let draw = 0; draw < draws; draw++) {
      const luck = fortunes(draw, EVERY_LUCK);
      for (let d = 0; d < days; d++) {
        if (!luck.absent(0, d)) continue;
        away++;
        if (d > 0 && !luck.absent(0, d - 1)) begins++;
      }
      if (luck.delay(0) > 0) late++;
      expect(luck.delay(0)).toBeLessThanOrEqual(21);
    }
    expect(away / (draws * days)).toBeGreaterThan(0.025);
    expect(away / (draws * days)).toBeLessThan(0.033);
    expect(away / begins).toBeGreaterThan(2.5);
    expect(late / draws).toBeGreaterThan(0.18); // 3.3 standard errors below a quarter
    expect(late / draws).toBeLessThan(0.32);
  });
});

describe("the team's own pace", () => {
  const job = problem.jobs.find(({ tasks }) => tasks.some(({ act }) => act === "image")) as Job;
  const at = job.tasks.findIndex(({ act }) => act === "image");
  const images = (count: number): Session[] =>
    Array.from({ length: count }, () => ({
      day: campaign.start,
      item: job.item.id,
      act: "image",
      person: "P1",
      minutes: 30,
      exposed: job.tasks[at]?.exposed ?? false,
    }));
  /** By how much the pace of one campaign lies off the expected minutes. */
  const off = (sessions: readonly Session[], draw: number): number => {
    const measured: Campaign = { ...campaign, sessions };
    const luck = fortunesOf({ ...problem, campaign: measured }, 1)(draw, ["pace"]);
    return luck.minutes(job, at) / EXPECTED.minutes(job, at) - 1;
  };
  // Standard deviation of a normal mean whose prior weighs k observations, after n more: √(k / (k + n)) (Gelman et al., section 2.5; from memory).
  test.each([
    [45, 1 / 2],
    [120, 1 / 3],
    [0, 1],
  ])("after %i sessions measured the spread is %f of what it was", (count, share) => {
    for (const draw of [0, 1, 2]) expect(off(images(count), draw)).toBeCloseTo(share * off([], draw), 12);
  });
  test("of a format nobody has measured stays as wide", () => {
    const other = problem.jobs.find(({ item }) => item.facts.format !== job.item.facts.format) as Job;
    const measured = fortunesOf({ ...problem, campaign: { ...campaign, sessions: images(60) } }, 1);
    for (const [s] of other.tasks.entries())
      expect(measured(3, ["pace"]).minutes(other, s)).toBe(fortunes(3, ["pace"]).minutes(other, s));
  });
});
