import { type Answer, answersTo, asItIs } from "../src/core/plan/what-if/answers.ts";
import { readScenario } from "../src/core/plan/what-if/read-scenario.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { openDesk } from "../src/edge/solve/what-if-desk.ts";
import { makeCampaign } from "./make-campaign.ts";

const SIZE = { items: 5000, people: 8, weeks: 39, seed: 1 };
const SCENARIOS = [
  "one more cleaner from 2026-07-06",
  "P0 away from 2026-07-01 to 2026-08-31",
  "masks 21 days late",
  "camera closed 2026-09-01 to 2026-09-14",
  "400 more like loose_sheets from 2026-08-01",
  "end 2027-01-31",
];
const LIMIT_FIRST = 3;
const LIMIT_PROVED = 20;

/** Seconds from a question to its first and to its proved answer, the plan as it is being known, each scenario asked alone. */
export async function benchWhatIf(): Promise<void> {
  console.log(
    `What if, ${SIZE.items} items, ${SIZE.people} people, ${SIZE.weeks} weeks (limits: first answer ${LIMIT_FIRST} s, proved ${LIMIT_PROVED} s after the plan as it is)`,
  );
  const solver = startSolver();
  const { campaign, routes, means, caseOf } = openDesk(makeCampaign(SIZE), publishedRuleBook(), solver.solve);
  const since = (from: number): string => `${((performance.now() - from) / 1000).toFixed(2)} s`;
  const started = performance.now();
  const base = await asItIs(campaign, routes, means);
  console.log(
    `  plan as it is ${since(started)}, ${base.draws} simulated campaigns, ${(100 * base.outlook.proof.itemGap).toFixed(2)} % over its bound`,
  );
  console.log(
    "  scenario                                     |  first |  proved | boxed first proved |    gap",
  );
  for (const said of SCENARIOS) {
    const { scenario, refusals } = readScenario(said, campaign, () => null);
    if (refusals.length > 0) throw new Error(`"${said}" was not understood.`);
    const from = performance.now();
    const times: string[] = [];
    const answers: Answer[] = [];
    for await (const each of answersTo(base, [caseOf(scenario)], means)) {
      times.push(since(from));
      answers.push(each);
    }
    const boxed = answers.map((each) => String(each.outlook.finish.boxed.p50).padStart(6));
    const last = answers.at(-1);
    const gap = last?.step === "proved" ? `${(100 * last.outlook.proof.itemGap).toFixed(2)} %` : "";
    console.log(
      `  ${said.padEnd(44)} | ${times.map((each) => each.padStart(6)).join(" | ")} |      ${boxed.join(" ")} | ${gap.padStart(6)}`,
    );
  }
  await solver.close();
}
