import { careOfCampaign } from "../src/core/care/item-care.ts";
import { loadNorms } from "../src/core/care/norms.ts";
import { routeOf } from "../src/core/care/route.ts";
import { campaignProgramme } from "../src/core/plan/campaign-programme.ts";
import { classesOf } from "../src/core/plan/classes.ts";
import { makePlan, PLAN_DEFAULTS } from "../src/core/plan/make-plan.ts";
import { periodsOf } from "../src/core/plan/periods.ts";
import { planProblem } from "../src/core/plan/problem.ts";
import { gapOf } from "../src/core/plan/whole-days.ts";
import { readPublished } from "../src/edge/published.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { makeCampaign } from "./make-campaign.ts";

const seconds = (s: number): string => `${s.toFixed(2)} s`;
const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;

const SIZES = [
  { items: 300, people: 4, weeks: 26, seed: 1 },
  { items: 1480, people: 6, weeks: 40, seed: 1 },
  { items: 1480, people: 6, weeks: 40, seed: 2 },
  { items: 1480, people: 6, weeks: 40, seed: 3 },
];

async function timed<T>(work: () => T | Promise<T>): Promise<[T, number]> {
  const from = performance.now();
  const value = await work();
  return [value, (performance.now() - from) / 1000];
}

/** Plans of seeded campaigns, and the mixed-integer search of the same programme in the same run. */
export async function benchPlan(): Promise<void> {
  console.log(
    "Plan (limit: gap 2 % for 1,480 items); the mixed-integer search of the same programme in the same run as peer",
  );
  console.log(
    "  items people weeks seed | classes columns | whole plan   gap   day-by-day gap | search time  its gap",
  );
  const norms = loadNorms(readPublished("norms.json"));
  const book = publishedRuleBook();
  for (const size of SIZES) {
    const campaign = makeCampaign(size);
    const routes = careOfCampaign(book, campaign).map((each) => routeOf(norms, each));
    const solver = startSolver();
    const [planned, time] = await timed(() => makePlan(campaign, routes, norms, solver.solve));
    const problem = planProblem(campaign, routes, norms);
    const classes = classesOf(problem, PLAN_DEFAULTS.classes);
    const { programme } = campaignProgramme(problem, classes, periodsOf(problem));
    const [searched, searching] = await timed(() =>
      solver.solve(programme, { relaxed: false, gap: PLAN_DEFAULTS.gap }),
    );
    await solver.close();
    const { proof } = planned.plan;
    console.log(
      `  ${String(size.items).padStart(5)} ${String(size.people).padStart(6)} ${String(size.weeks).padStart(5)} ${String(size.seed).padStart(4)} | ${String(proof.classes).padStart(7)} ${String(proof.columns).padStart(7)} | ${seconds(time).padStart(10)} ${percent(proof.gap).padStart(7)} ${percent(proof.itemGap).padStart(12)}    | ${seconds(searching).padStart(9)} ${percent(gapOf(searched.objective, searched.bound)).padStart(9)}`,
    );
  }
  console.log(
    `\nMemory at the end: ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB resident, ${(process.resourceUsage().maxRSS / 2 ** 10).toFixed(0)} MB at most.`,
  );
}
