import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import { afterAWeek, usualLuck } from "../../../../bench/week-of-work.ts";
import { loadNorms } from "../../../../src/core/care/norms.ts";
import type { CalendarEntry, Campaign } from "../../../../src/core/items/campaign.ts";
import { campaignRoutes } from "../../../../src/core/plan/campaign-routes.ts";
import { checkPlan } from "../../../../src/core/plan/checker/check-plan.ts";
import { type DayPlan, dayPlan } from "../../../../src/core/plan/improve/day-plan.ts";
import { PLAN_DEFAULTS, plannedFrom } from "../../../../src/core/plan/make-plan.ts";
import { planProblem } from "../../../../src/core/plan/problem.ts";
import { type AcceptedPlan, begunFrom } from "../../../../src/core/plan/replan/accepted.ts";
import { replan } from "../../../../src/core/plan/replan/replan.ts";
import { projectStores } from "../../../../src/core/stores/orders.ts";
import { addDays } from "../../../../src/core/units/day.ts";
import { readPublished } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";
import { type Solver, startSolver } from "../../../../src/edge/solve/solver.ts";

const norms = loadNorms(readPublished("norms.json"));
const book = publishedRuleBook();
const before = makeCampaign({ items: 120, people: 5, weeks: 12, seed: 2 });
let solver: Solver;
let made: DayPlan;
let accepted: AcceptedPlan;
let later: Campaign;

beforeAll(async () => {
  solver = startSolver();
  const { routes } = campaignRoutes(book, norms, before);
  const problem = planProblem(before, routes, norms);
  made = await dayPlan(problem, solver.solve, PLAN_DEFAULTS);
  accepted = plannedFrom(problem, routes, norms, made, { draws: 1, seed: 1 }).plan;
  later = afterAWeek(before, made, usualLuck(3));
});
afterAll(() => solver.close());

const anew = (campaign: Campaign, from = accepted) =>
  replan(campaign, campaignRoutes(book, norms, campaign), norms, solver.solve, from);
const withRow = (row: Omit<CalendarEntry, "from" | "to">, from: number, to: number): Campaign => ({
  ...later,
  calendar: [
    ...later.calendar,
    { ...row, from: addDays(later.planFrom, from), to: addDays(later.planFrom, to) },
  ],
});

/** Counted from the two plans as printed, with nothing of the planner's. */
function sharedBeginnings(campaign: Campaign, now: AcceptedPlan): { kept: number; moved: number } {
  const firstOf = (plan: AcceptedPlan): Map<string, string> => {
    const first = new Map<string, string>();
    for (const each of [...plan.assignments].sort((a, b) => a.day.localeCompare(b.day)))
      if (each.day >= campaign.planFrom && !first.has(`${each.item}|${each.act}`))
        first.set(`${each.item}|${each.act}`, `${each.person}|${each.day}`);
    return first;
  };
  const done = new Set(campaign.sessions.map((each) => `${each.item}|${each.act}`));
  const [told, planned] = [firstOf(accepted), firstOf(now)];
  const end = addDays(campaign.planFrom, 10);
  const soon = [...told].filter(([key, at]) => !done.has(key) && (at.split("|")[1] ?? "") < end);
  const kept = soon.filter(([key, at]) => planned.get(key) === at).length;
  return { kept, moved: soon.length - kept };
}

describe("after a week with the usual luck", () => {
  test("nearly everything that was told for the next ten days is kept, far more than by a plan made afresh", async () => {
    const { planned, replan: its } = await anew(later);
    expect(its.moved / (its.kept + its.moved)).toBeLessThan(0.2); // a small team feels each slip more than a large one
    expect(its.moved * 3).toBeLessThan(its.afresh.moved);
    expect(sharedBeginnings(later, planned.plan)).toEqual({ kept: its.kept, moved: its.moved });
  });
  test("the new plan breaks no limit", async () => {
    const { planned } = await anew(later);
    const { orders, lines } = projectStores(later, planned.use);
    expect(checkPlan(later, book, norms, { ...planned.plan, orders, stores: lines })).toEqual([]);
  });
  test("each change is named once, with what was told, what holds now and why", async () => {
    const { replan: its } = await anew(later);
    const items = its.changes.filter((each) => "item" in each);
    expect(items.length).toBe(its.moved);
    expect(new Set(items.map((each) => `${each.item} ${each.act}`)).size).toBe(items.length);
    for (const { from, to } of items) expect(from).not.toEqual(to);
  });
  test("the same records give the same plan, to the letter", async () => {
    const [one, other] = [await anew(later), await anew(later)];
    expect(JSON.stringify(one.planned.plan)).toBe(JSON.stringify(other.planned.plan));
    expect(JSON.stringify(one.replan)).toBe(JSON.stringify(other.replan));
  });
});

test("when nothing happened at all and nothing was done, nothing is changed", async () => {
  const { replan: its } = await anew(before);
  expect(its.moved).toBe(0);
  expect(its.churn).toBe(0);
});

test("a person away hands on that day's work, and is named as the reason", async () => {
  const [code] = busiest(accepted, later, (each) => !each.exposed);
  const { planned, replan: its } = await anew(withRow({ who: code, what: "away" }, 1, 1));
  const day = addDays(later.planFrom, 1);
  expect(planned.plan.assignments.some((each) => each.person === code && each.day === day)).toBe(false);
  const told = [...begunFrom(accepted, later.planFrom).values()].filter(
    (each) => each.person === code && each.day === 1,
  );
  const named = its.changes.filter(({ why }) => why.why === "away" && why.person === code);
  expect(told.length).toBeGreaterThan(0);
  expect(named.length).toBeGreaterThanOrEqual(told.length / 2);
  expect(its.moved).toBeLessThan(its.afresh.moved);
});

test("a person on clean work is near mould no more, and the reason is just that", async () => {
  const [code] = busiest(accepted, later, (each) => each.exposed);
  const { planned, replan: its } = await anew(withRow({ who: code, what: "clean work" }, 0, 13));
  const end = addDays(later.planFrom, 13);
  expect(
    planned.plan.assignments.some((each) => each.person === code && each.exposed && each.day <= end),
  ).toBe(false);
  const days = its.changes.flatMap((each) => ("person" in each && each.person === code ? [each] : []));
  expect(days.length).toBeGreaterThan(0);
  for (const each of days) {
    expect(each).toMatchObject({ from: "near mould", to: "clean work" });
    expect(each.why.why).toBe("clean work");
  }
});

test("an item whose new finding sets it aside is named with that", async () => {
  const told = [...begunFrom(accepted, later.planFrom).values()].find(
    ({ item, act, day }) =>
      day >= 0 && day < 10 && !later.sessions.some((each) => each.item === item && each.act === act),
  );
  const item = told?.item ?? "";
  const label = { item, part: "", test: "poison_label", answer: "yes" };
  const { replan: its } = await anew({ ...later, findings: [...later.findings, label] });
  const changes = its.changes.filter((each) => "item" in each && each.item === item);
  expect(changes.length).toBeGreaterThan(0);
  for (const each of changes) expect(each).toMatchObject({ to: null, why: { why: "set aside" } });
});

test("an item that came in since is planned and named as new", async () => {
  const [like] = later.items;
  if (!like) throw new Error("The campaign has no items.");
  const { arrives: _, ...here } = like;
  const items = [...later.items, { ...here, id: "NEW-1" }];
  const findings = [
    ...later.findings,
    ...later.findings.filter((each) => each.item === like.id).map((each) => ({ ...each, item: "NEW-1" })),
  ];
  const { planned, replan: its } = await anew({ ...later, items, findings });
  expect(its.arrived).toEqual(["NEW-1"]);
  expect(planned.plan.itemDays.some(({ item }) => item === "NEW-1")).toBe(true);
});

/** The person with most work of a kind in the plan's first days from the new morning on. */
function busiest(
  plan: AcceptedPlan,
  { planFrom }: Campaign,
  is: (each: AcceptedPlan["assignments"][number]) => boolean,
): [string] {
  const minutes = new Map<string, number>();
  for (const each of plan.assignments)
    if (each.day >= planFrom && each.day < addDays(planFrom, 10) && is(each))
      minutes.set(each.person, (minutes.get(each.person) ?? 0) + each.minutes);
  const [first] = [...minutes].sort((a, b) => b[1] - a[1]);
  return [first?.[0] ?? ""];
}
