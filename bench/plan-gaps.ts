import { careOfCampaign } from "../src/core/care/item-care.ts";
import { loadNorms } from "../src/core/care/norms.ts";
import { routeOf } from "../src/core/care/route.ts";
import { tryOut } from "../src/core/plan/improve/best-manner.ts";
import { dayPlan } from "../src/core/plan/improve/day-plan.ts";
import { plainOrder } from "../src/core/plan/improve/plain-order.ts";
import { PLAN_DEFAULTS } from "../src/core/plan/make-plan.ts";
import { type Job, type PlanProblem, planProblem } from "../src/core/plan/problem.ts";
import type { Solve } from "../src/core/plan/programme.ts";
import { finishOf } from "../src/core/plan/risk.ts";
import type { Walk } from "../src/core/plan/walk.ts";
import { gapOf } from "../src/core/plan/whole-days.ts";
import { readPublished } from "../src/edge/published.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { type CampaignSize, makeCampaign } from "./make-campaign.ts";
import { solveWithCbc } from "./peers/cbc.ts";

/** Sizes, the most the gap of the day-by-day plan may be, and the seconds the plan may take, its range of the finish left out. */
const SIZES = [
  { items: 30, people: 3, weeks: 8, gap: 0, seconds: 10 },
  { items: 300, people: 4, weeks: 26, gap: 0.02, seconds: 15 },
  { items: 1000, people: 6, weeks: 26, gap: 0.015, seconds: 20 },
  { items: 5000, people: 8, weeks: 39, gap: 0.01, seconds: 30 },
  { items: 20000, people: 12, weeks: 52, gap: 0.01, seconds: 45 },
];
const MOST_MEGABYTES = 1500;
/** Time given to cbc for the programme alone, to the same gap. */
const CBC_SECONDS = 60;
const HEAD = [
  "items/people/weeks seed",
  "classes",
  "solver",
  "rest",
  "finish",
  "programme",
  "cbc over ours",
  "cbc",
  "day by day",
  "limit",
  "plain order",
  "undone",
  "plain",
  "sooner",
  "must sooner",
  "memory",
];

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;
const secondsSince = (from: number): number => (performance.now() - from) / 1000;

/** Gaps of the day-by-day plan to the bound no such plan can beat, and beside it the plain order: earliest due first, within the same limits. */
export async function benchPlanGaps(seeds = 1, most = Number.POSITIVE_INFINITY): Promise<void> {
  console.log(
    "Weighted item-days over the bound. cbc: the same programme with whole exposed days, given to Debian's coinor-cbc to the same gap. Plain order: due day, must-do, list order, walked within the same limits. Sooner: mean weeks to the box.",
  );
  console.log(line(HEAD));
  for (const size of SIZES.filter(({ items }) => items <= most))
    for (let seed = 1; seed <= seeds; seed++) console.log(line(await row({ ...size, seed }, size)));
}

async function row(size: CampaignSize, limit: { gap: number; seconds: number }): Promise<string[]> {
  const norms = loadNorms(readPublished("norms.json"));
  const campaign = makeCampaign(size);
  const routes = careOfCampaign(publishedRuleBook(), campaign).map((each) => routeOf(norms, each));
  const problem = planProblem(campaign, routes, norms);
  const solver = startSolver();
  let solving = 0;
  const solve: Solve = async (programme, options) => {
    const from = performance.now();
    const solved = await solver.solve(programme, options);
    solving += secondsSince(from);
    return solved;
  };
  const from = performance.now();
  const made = await dayPlan(problem, solve, PLAN_DEFAULTS);
  const taken = secondsSince(from);
  await solver.close();
  const simulating = performance.now();
  finishOf(problem, made.guide, 10, 1);
  const finish = (secondsSince(simulating) * PLAN_DEFAULTS.draws) / 10;
  const plain = tryOut(problem, plainOrder(problem));
  const cbc = solveWithCbc(made.parts.programme, PLAN_DEFAULTS.gap, CBC_SECONDS);
  const gap = gapOf(made.cost, made.bound);
  const undone = problem.jobs.length - made.day.boxed;
  const plainUndone = problem.jobs.length - plain.day.boxed;
  const memory = process.resourceUsage().maxRSS / 2 ** 10;
  return [
    `${size.items}/${size.people}/${size.weeks} ${size.seed}`,
    String(made.classes.length),
    `${solving.toFixed(1)} s`,
    `${(taken - solving).toFixed(1)} s`,
    `${finish.toFixed(1)} s`,
    percent(gapOf(made.answer.objective, made.answer.bound)),
    cbc === null ? "not installed" : percent(cbc.objective / made.answer.objective - 1),
    cbc === null ? "" : `${cbc.seconds.toFixed(1)} s`,
    percent(gap),
    gap <= limit.gap + 1e-6 && taken <= limit.seconds && memory <= MOST_MEGABYTES
      ? "kept"
      : `${percent(limit.gap)} ${limit.seconds} s`,
    percent(gapOf(plain.cost, made.bound)),
    String(undone),
    String(plainUndone),
    `${weeksSooner(problem, plain.day, made.day, 0).toFixed(1)} wk`,
    `${weeksSooner(problem, plain.day, made.day, 4).toFixed(1)} wk`,
    `${memory.toFixed(0)} MB`,
  ];
}

/** Weeks by which an item of at least this weight is boxed sooner on average; one that is left counts as boxed on the last day. */
function weeksSooner(problem: PlanProblem, plain: Walk, ours: Walk, weight: number): number {
  const jobs = problem.jobs.filter((job) => job.weight >= weight);
  const boxed = (day: Walk, job: Job): number => {
    const end = day.ends.get(job)?.at(-1) ?? -1;
    return end < 0 ? problem.days.length - 1 : end;
  };
  const days = jobs.reduce((sum, job) => sum + boxed(plain, job) - boxed(ours, job), 0);
  return days / Math.max(1, jobs.length) / 7;
}

const line = (cells: readonly string[]): string =>
  `  ${cells.map((cell, at) => cell.padStart(Math.max(HEAD[at]?.length ?? 0, 8))).join("  ")}`;

const asked = (name: string, otherwise: number): number => {
  const at = process.argv.indexOf(name);
  return at < 0 ? otherwise : Number(process.argv[at + 1]);
};

if (process.argv[1]?.includes("plan-gaps"))
  await benchPlanGaps(asked("--seeds", 1), asked("--most", Number.POSITIVE_INFINITY));
