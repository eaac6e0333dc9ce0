import { parseArgs } from "node:util";
import type { Route } from "../../core/care/care.ts";
import { loadNorms, type Norms } from "../../core/care/norms.ts";
import type { RuleBook } from "../../core/care/rule-book.ts";
import type { Campaign } from "../../core/items/campaign.ts";
import { campaignRoutes } from "../../core/plan/campaign-routes.ts";
import { PLAN_DEFAULTS } from "../../core/plan/make-plan.ts";
import { changedBy } from "../../core/plan/what-if/changes.ts";
import { differenceOf, outlookOf } from "../../core/plan/what-if/compare.ts";
import type { ItemsMeant } from "../../core/plan/what-if/names.ts";
import { type Refusal, readScenario, type Scenario } from "../../core/plan/what-if/read-scenario.ts";
import { type RelaxedCase, relaxedCase } from "../../core/plan/what-if/relaxed-case.ts";
import { releaseQueueOf } from "../../core/plan/what-if/release-queue.ts";
import { type Supposed, supposedPlan } from "../../core/plan/what-if/supposed-plan.ts";
import { sayCondition } from "../../core/say/conditions.ts";
import { sayExamples, sayRefusal } from "../../core/say/what-if-refusals.ts";
import { projectStores } from "../../core/stores/orders.ts";
import { dayFrom } from "../../core/units/day.ts";
import { nearestWord } from "../../edge/intake/words.ts";
import { readPublished } from "../../edge/published.ts";
import { type Solver, startSolver } from "../../edge/solve/solver.ts";
import { openFolder } from "./open-folder.ts";
import {
  type Answered,
  answerLines,
  asJson,
  type Case,
  firstLookLines,
  headLines,
  WHAT_IF_HELP,
} from "./what-if-lines.ts";
import { wrapped } from "./wrapped.ts";

type Out = (line: string) => void;

/** Simulated campaigns: as many as the plan has, fewer where each takes long; so many item-walks in all. */
const ITEM_WALKS = 300_000;
const FEWEST_DRAWS = 50;

/** @returns 0 well · 2 a scenario or the folder cannot be used, which was said */
export async function whatIf(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedFrom(args);
  if ("help" in asked) {
    (asked.help === "" ? out : complain)(
      asked.help === "" ? WHAT_IF_HELP : `${asked.help}\n\n${WHAT_IF_HELP}`,
    );
    return asked.help === "" ? 0 : 2;
  }
  // Two at work at once: while one solves, the other's answer is walked.
  const solvers = [startSolver(), startSolver()];
  try {
    return await answer(asked, solvers, { out, complain });
  } finally {
    await Promise.all(solvers.map((each) => each.close()));
  }
}

interface Asked {
  readonly folder: string;
  readonly scenarios: readonly string[];
  readonly today: string | undefined;
  readonly json: boolean;
}

/** What was asked for; `help` with why when it is not enough, empty when help is what was asked for. */
function askedFrom(args: string[]): Asked | { readonly help: string } {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        today: { type: "string" },
        json: { type: "boolean", default: false },
        help: { type: "boolean", short: "h", default: false },
      },
    });
    const [folder, ...scenarios] = positionals;
    if (values.help) return { help: "" };
    if (folder === undefined || scenarios.length === 0)
      return { help: "leafward what-if needs a campaign folder and at least one scenario in quotes." };
    if (values.today !== undefined && dayFrom(values.today) === null)
      return { help: `--today ${values.today}: expected a day such as 2026-06-01.` };
    return { folder, scenarios, today: values.today, json: values.json };
  } catch (error) {
    if (error instanceof TypeError) return { help: error.message };
    throw error;
  }
}

interface Voice {
  readonly out: Out;
  readonly complain: Out;
}

async function answer(asked: Asked, solvers: readonly Solver[], { out, complain }: Voice): Promise<number> {
  const opened = await openFolder(asked.folder, complain);
  if (!opened) return 2;
  const today = asked.today === undefined ? null : dayFrom(asked.today);
  const campaign = today ? { ...opened.campaign, planFrom: today } : opened.campaign;
  const norms = loadNorms(readPublished("norms.json"));
  const { routes } = campaignRoutes(opened.book, norms, campaign);
  const read = asked.scenarios.map((said) => readScenario(said, campaign, itemsByCare(routes)));
  const refusals = read.flatMap((each) => each.refusals);
  if (refusals.length > 0) {
    refuse(refusals, campaign, complain);
    return 2;
  }
  const cases = casesOf(
    opened.book,
    norms,
    campaign,
    routes,
    read.map((each) => each.scenario),
  );
  const say = asked.json ? () => {} : out;
  for (const line of headLines(cases)) say(line);
  const planned = cases.filter((each) => each.campaign !== campaign || each.scenario === null);
  const relaxed = await eachOf(planned, solvers, (each, { solve }) =>
    relaxedCase(each.campaign, each.routes, norms, solve),
  );
  for (const line of firstLookLines(
    planned.map((each) => each.head),
    relaxed,
  ))
    say(line);
  complain("Working out the plans, each in a few seconds …");
  const draws = drawsFor(planned);
  const plans = await plansOf(relaxed, solvers, draws);
  const answered = answeredFrom(cases, relaxed, plans);
  if (asked.json) out(JSON.stringify(asJson(answered, draws), null, 1));
  else for (const line of answerLines(answered, draws)) out(line);
  return 0;
}

/** Items by what care decided of them: "mouldy", or a condition by its name. */
function itemsByCare(routes: readonly Route[]): ItemsMeant {
  const having = (is: (condition: string) => boolean): string[] =>
    routes.filter((each) => each.destiny === "route" && each.conditions.some(is)).map((each) => each.item);
  return (words) => {
    if (/^mould(y|ed)?( ones| things)?$/.test(words)) return having((each) => each.startsWith("mould_"));
    const items = having(
      (each) => each.replaceAll("_", " ") === words || sayCondition(each).toLowerCase() === words,
    );
    return items.length > 0 ? items : null;
  };
}

function refuse(refusals: readonly Refusal[], campaign: Campaign, complain: Out): void {
  for (const each of refusals)
    for (const line of wrapped(sayRefusal(each, nearest(each)), "", "  ")) complain(line);
  if (!refusals.some(({ because: { why } }) => why === "not understood")) return;
  complain("");
  complain("What can be said here, for instance:");
  for (const example of sayExamples(campaign)) complain(`  ${example}`);
}

/** Up to three known names, the nearest first. */
function nearest({ because }: Refusal): string[] {
  if (because.why !== "unknown") return [];
  const first = nearestWord(because.got, because.known);
  const second =
    first === null
      ? null
      : nearestWord(
          because.got,
          because.known.filter((each) => each !== first),
        );
  const near = [first, second].filter((each) => each !== null);
  return near.length > 0 ? near : because.known.filter((each) => each.length <= 24).slice(0, 8);
}

/** The plan as it is, then each scenario; care is decided anew only where items are others. */
function casesOf(
  book: RuleBook,
  norms: Norms,
  campaign: Campaign,
  routes: readonly Route[],
  scenarios: readonly Scenario[],
): Case[] {
  const supposed = scenarios.map((scenario, at) => {
    const its = changedBy(campaign, scenario.changes);
    return {
      head: letter(at),
      scenario,
      campaign: its,
      routes: its.items === campaign.items ? routes : campaignRoutes(book, norms, its).routes,
    };
  });
  return [{ head: "as it is", scenario: null, campaign, routes }, ...supposed];
}

const letter = (at: number): string => (at < 26 ? String.fromCharCode(65 + at) : `S${at + 1}`);

/** Works through the list in order, as many at once as there are solvers. */
async function eachOf<A, B>(
  list: readonly A[],
  solvers: readonly Solver[],
  work: (each: A, solver: Solver) => Promise<B>,
): Promise<B[]> {
  const results: B[] = [];
  let next = 0;
  await Promise.all(
    solvers.map(async (solver) => {
      while (next < list.length) {
        const at = next++;
        results[at] = await work(list[at] as A, solver);
      }
    }),
  );
  return results;
}

/** The plan as it is first: the others may follow it. */
async function plansOf(
  [base, ...others]: readonly RelaxedCase[],
  solvers: readonly Solver[],
  draws: number,
): Promise<Supposed[]> {
  const [solver] = solvers;
  if (!base || !solver) return [];
  const asItIs = await supposedPlan(base, solver.solve, draws, null);
  const rest = await eachOf(others, solvers, (each, { solve }) => supposedPlan(each, solve, draws, asItIs));
  return [asItIs, ...rest];
}

/** The same seeds and as many draws for every case, so that luck is not what differs. */
function drawsFor(cases: readonly Case[]): number {
  const items = Math.max(1, ...cases.map((each) => each.campaign.items.length));
  return Math.min(PLAN_DEFAULTS.draws, Math.max(FEWEST_DRAWS, Math.round(ITEM_WALKS / items)));
}

/** Each case with its figures; a case that only asks has those of the plan as it is. */
function answeredFrom(
  cases: readonly Case[],
  relaxed: readonly RelaxedCase[],
  plans: readonly Supposed[],
): Answered[] {
  const outlooks = plans.map(({ problem, plan, use }) =>
    outlookOf(problem, plan, projectStores(problem.campaign, use).orders),
  );
  const [base] = outlooks;
  const known = new Set(cases[0]?.campaign.items.map((each) => each.id));
  return cases.flatMap((each) => {
    const at = plans.findIndex(({ problem }) => problem.campaign === each.campaign);
    const [look, outlook, its] = [relaxed[at]?.look, outlooks[at], plans[at]];
    if (!base || !look || !outlook || !its) return [];
    const difference = at > 0 ? differenceOf(base, outlook, known) : null;
    const alone = each.scenario?.releasesAlone ?? null;
    const queue = alone === null ? null : releaseQueueOf(its.problem, its.plan, alone);
    return [{ ...each, look, outlook, difference, queue }];
  });
}
