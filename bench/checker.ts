import { careOfCampaign } from "../src/core/care/item-care.ts";
import { loadNorms } from "../src/core/care/norms.ts";
import { routeOf } from "../src/core/care/route.ts";
import { checkPlan } from "../src/core/plan/checker/check-plan.ts";
import { makePlan, PLAN_DEFAULTS } from "../src/core/plan/make-plan.ts";
import type { Solve } from "../src/core/plan/programme.ts";
import { projectStores } from "../src/core/stores/orders.ts";
import { readPublished } from "../src/edge/published.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { type CampaignSize, makeCampaign } from "./make-campaign.ts";

/* How long it takes to check a plan before it is shown, care decided anew. */

const SIZES: readonly (readonly [CampaignSize, limitSeconds: number])[] = [
  [{ items: 1480, people: 6, weeks: 41, seed: 1 }, 1],
  [{ items: 20000, people: 12, weeks: 52, seed: 1 }, 5],
];
const TURNS = 5;

const book = publishedRuleBook();
const norms = loadNorms(readPublished("norms.json"));
const solver = startSolver();
console.log("Checking a plan (limits: 1 s for 1,480 items, 5 s for 20,000)");
console.log("   items   lines of work   first time   median of 5   limit   faults by code");
for (const [size, limit] of SIZES) await benchSize(size, limit, solver.solve);
await solver.close();

async function benchSize(size: CampaignSize, limit: number, solve: Solve): Promise<void> {
  const campaign = makeCampaign(size);
  const routes = careOfCampaign(book, campaign).map((each) => routeOf(norms, each));
  const { plan, use } = await makePlan(campaign, routes, norms, solve, { ...PLAN_DEFAULTS, draws: 1 });
  const { orders, lines } = projectStores(campaign, use);
  const whole = { ...plan, orders, stores: lines };
  const times: number[] = [];
  const codes = new Map<string, number>();
  for (let turn = 0; turn < TURNS; turn++) {
    const from = performance.now();
    const faults = checkPlan(campaign, book, norms, whole);
    times.push((performance.now() - from) / 1000);
    if (turn === 0) for (const { code } of faults) codes.set(code, (codes.get(code) ?? 0) + 1);
  }
  const [first = 0] = times;
  const median = [...times].sort((a, b) => a - b)[Math.floor(TURNS / 2)] ?? 0;
  const found = [...codes].map(([code, count]) => `${code} ${count}`).join(", ") || "none";
  console.log(
    `  ${String(size.items).padStart(6)} ${String(plan.assignments.length).padStart(15)} ${first.toFixed(2).padStart(10)} s ${median.toFixed(2).padStart(11)} s ${String(limit).padStart(5)} s   ${found}`,
  );
}
