import { loadNorms } from "../src/core/care/norms.ts";
import { campaignRoutes } from "../src/core/plan/campaign-routes.ts";
import { checkPlan } from "../src/core/plan/checker/check-plan.ts";
import { dayPlan } from "../src/core/plan/improve/day-plan.ts";
import { PLAN_DEFAULTS, plannedFrom } from "../src/core/plan/make-plan.ts";
import { planProblem } from "../src/core/plan/problem.ts";
import { replan } from "../src/core/plan/replan/replan.ts";
import { projectStores } from "../src/core/stores/orders.ts";
import { readPublished } from "../src/edge/published.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { makeCampaign } from "./make-campaign.ts";
import { afterAWeek, usualLuck, type WeekLuck } from "./week-of-work.ts";

const SMALL = { items: 300, people: 4, weeks: 26 };
const USUAL = { items: 1480, people: 6, weeks: 40 };
const LARGE = { items: 5000, people: 8, weeks: 39 };
const CASES: readonly { size: typeof SMALL; seed: number; week: string; luck: WeekLuck }[] = [
  { size: SMALL, seed: 1, week: "usual", luck: usualLuck(5) },
  { size: USUAL, seed: 1, week: "usual", luck: usualLuck(5) },
  { size: USUAL, seed: 2, week: "usual", luck: usualLuck(6) },
  { size: USUAL, seed: 1, week: "bad", luck: { seed: 5, slower: 1.15, absence: 0.1 } },
  { size: LARGE, seed: 1, week: "usual", luck: usualLuck(5) },
];
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
const secondsSince = (from: number): string => `${((performance.now() - from) / 1000).toFixed(1)} s`;
const WIDTHS = [23, 7, 9, 11, 8, 9, 13, 17, 8];
const line = (cells: readonly string[]): string =>
  `  ${cells.map((cell, at) => cell.padStart(WIDTHS[at] ?? 0)).join(" ")}`;

/** Plans made anew after a week's work, against what the accepted plan said: how long it takes, and how much of the next ten days is changed. */
export async function benchReplan(): Promise<void> {
  console.log(
    "A week worked with luck, written down, planned anew (limits: 10 s; 5 % of the acts promised for the next ten days begun by another person or on another day)",
  );
  console.log(
    "Usual week: every task's minutes over its own norm from low to high. Bad week: all work 15 % longer, one person-day in ten lost.",
  );
  console.log(
    line([
      "items/people/weeks seed",
      "week",
      "promised",
      "re-planned",
      "moved",
      "share",
      "a fresh plan",
      "dearer than fresh",
      "faults",
    ]),
  );
  for (const each of CASES) console.log(line(await row(each)));
}

async function row({ size, seed, week, luck }: (typeof CASES)[number]): Promise<string[]> {
  const norms = loadNorms(readPublished("norms.json"));
  const book = publishedRuleBook();
  const solver = startSolver();
  const campaign = makeCampaign({ ...size, seed });
  const { routes } = campaignRoutes(book, norms, campaign);
  const problem = planProblem(campaign, routes, norms);
  const made = await dayPlan(problem, solver.solve, PLAN_DEFAULTS);
  const accepted = plannedFrom(problem, routes, norms, made, { draws: 1, seed: 1 }).plan;
  const later = afterAWeek(campaign, made, luck);
  const from = performance.now();
  const { planned, replan: its } = await replan(
    later,
    campaignRoutes(book, norms, later),
    norms,
    solver.solve,
    accepted,
  );
  const taken = secondsSince(from);
  await solver.close();
  const { orders, lines } = projectStores(later, planned.use);
  const faults = checkPlan(later, book, norms, { ...planned.plan, orders, stores: lines });
  const promised = its.kept + its.moved;
  return [
    `${size.items}/${size.people}/${size.weeks} ${seed}`,
    week,
    String(promised),
    taken,
    String(its.moved),
    percent(its.moved / promised),
    `${percent(its.afresh.moved / promised)} moved`,
    percent(its.now.cost / its.afresh.cost - 1),
    String(faults.length),
  ];
}
