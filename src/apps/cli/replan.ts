import { readdir, readFile, writeFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { parseArgs } from "node:util";
import type { AcceptedPlan } from "../../core/plan/replan/accepted.ts";
import type { Replan } from "../../core/plan/replan/changes.ts";
import { replan } from "../../core/plan/replan/replan.ts";
import { type CampaignWords, REPLAN_HELP, REPLAN_REFUSALS } from "../../core/say/replan.ts";
import { type Day, dayFrom } from "../../core/units/day.ts";
import { replanTable } from "../../edge/handover/replan-table.ts";
import { acceptedPlanFrom } from "../../edge/intake/accepted-plan.ts";
import { projectFolder } from "../../edge/published.ts";
import { finishedPlan, readyFolder } from "../../edge/solve/ready-folder.ts";
import { startSolver } from "../../edge/solve/solver.ts";
import { BrokenPlan } from "./broken-plan.ts";
import { mustMend, type PlanRequest, sayProblems } from "./plan.ts";
import type { PlannedFolder } from "./plan-folder.ts";
import { replanLines } from "./replan-lines.ts";
import { writePlan } from "./write-plan.ts";

type Out = (line: string) => void;

interface Asked {
  readonly folder: string;
  readonly from: string | undefined;
  readonly today: Day | undefined;
  readonly outFolder: string | undefined;
  readonly papers: PlanRequest["papers"];
  readonly json: boolean;
}

/** `leafward replan`: @returns 0 well · 1 something must be mended · 2 it could not be done, which was said */
export async function replanCommand(args: string[], out: Out, complain: Out): Promise<number> {
  const asked = askedFrom(args);
  if ("help" in asked) {
    const wanted = asked.help === "";
    (wanted ? out : complain)(wanted ? REPLAN_HELP : `${asked.help}\n\n${REPLAN_HELP}`);
    return wanted ? 0 : 2;
  }
  const planned = await replanFolder(asked, complain);
  if (!planned) return 2;
  const { folder, replan: its, words } = planned;
  if (asked.json) {
    out(JSON.stringify(its, null, 1));
    return 0;
  }
  complain("Setting the papers …");
  const papers = await writePlan(folder, planned.target, asked.papers);
  await writeFile(join(planned.target, "changes.csv"), replanTable(its, words));
  for (const line of replanLines(folder.plan, its, words)) out(line);
  out("");
  out(
    `Written to ${planned.target}: changes.csv (all ${its.changes.length}), plan.json, picture.svg, papers/ (${papers.length}), tables/.`,
  );
  return mustMend(folder.problems) ? 1 : 0;
}

/** What was asked for; `help` with why when it is not enough, empty when help is what was asked for. */
function askedFrom(args: string[]): Asked | { readonly help: string } {
  try {
    const { values, positionals } = parseArgs({
      args,
      allowPositionals: true,
      options: {
        from: { type: "string" },
        today: { type: "string" },
        out: { type: "string" },
        sheet: { type: "string", default: "A4" },
        cards: { type: "string", default: "soon" },
        json: { type: "boolean", default: false },
        help: { type: "boolean", short: "h", default: false },
      },
    });
    const [folder, ...more] = positionals;
    if (values.help) return { help: "" };
    if (folder === undefined || more.length > 0)
      return { help: "leafward replan needs one campaign folder." };
    const today = values.today === undefined ? undefined : dayFrom(values.today);
    if (today === null) return { help: `--today ${values.today}: expected a day such as 2026-06-01.` };
    const { sheet, cards, from, out: outFolder, json } = values;
    if (sheet !== "A4" && sheet !== "Letter") return { help: `--sheet ${sheet}: expected A4 or Letter.` };
    if (cards !== "soon" && cards !== "all") return { help: `--cards ${cards}: expected soon or all.` };
    return { folder, from, today, outFolder, papers: { sheet, allCards: cards === "all" }, json };
  } catch (error) {
    if (error instanceof TypeError) return { help: error.message };
    throw error;
  }
}

interface Replanned {
  readonly folder: PlannedFolder;
  readonly replan: Replan;
  readonly words: CampaignWords;
  /** Folder the new plan goes to. */
  readonly target: string;
}

async function replanFolder(asked: Asked, complain: Out): Promise<Replanned | null> {
  complain("Reading the campaign folder …");
  const ready = await readyFolder(asked.folder, asked.today);
  sayProblems(ready.problems, { complain, folder: asked.folder });
  if (ready.campaign === null) return null;
  const { campaign, problems, norms, care, routes, stock } = ready;
  const written = join(projectFolder(), "out", basename(resolve(asked.folder)));
  const accepted = await acceptedPlan(asked.from, written, campaign.planFrom, campaign.name);
  if (typeof accepted === "string") {
    complain(accepted);
    return null;
  }
  complain("Planning anew …");
  const solver = startSolver();
  try {
    const { planned, replan: its } = await replan(campaign, ready, norms, solver.solve, accepted);
    const { plan, broken } = finishedPlan(ready, planned);
    if (broken !== null) throw new BrokenPlan(broken);
    return {
      folder: { campaign, problems, care, routes, plan, use: planned.use, stock },
      replan: its,
      words: campaign,
      target: resolve(asked.outFolder ?? join(written, `replan-${campaign.planFrom}`)),
    };
  } finally {
    await solver.close();
  }
}

/** The plan named, else the last written before the morning; a sentence when there is none. */
async function acceptedPlan(
  named: string | undefined,
  written: string,
  today: Day,
  campaign: string,
): Promise<AcceptedPlan | string> {
  if (named !== undefined) {
    const plan = await planAt(named);
    if (!plan) return REPLAN_REFUSALS.unread(named);
    if (plan.campaign !== campaign) return REPLAN_REFUSALS.other(named, plan.campaign, campaign);
    return plan.planFrom > today ? REPLAN_REFUSALS.later(named, plan.planFrom, today) : plan;
  }
  const folders = (await readdir(written).catch(() => []))
    .filter((name) => name.startsWith("replan-") && name < `replan-${today}`)
    .sort();
  const plans = await Promise.all(["", ...folders].map((name) => planAt(join(written, name, "plan.json"))));
  const known = plans.filter((plan) => plan !== null && plan.campaign === campaign && plan.planFrom <= today);
  const last = known.reduce(
    (one, other) => (one && other && one.planFrom > other.planFrom ? one : other),
    null,
  );
  return last ?? REPLAN_REFUSALS.noPlan;
}

const planAt = async (path: string): Promise<ReturnType<typeof acceptedPlanFrom>> =>
  readFile(path, "utf8").then(acceptedPlanFrom, () => null);
