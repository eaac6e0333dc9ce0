import { basename, join, resolve } from "node:path";
import type { Problem } from "../../core/outcome/problem.ts";
import { sayProblem } from "../../core/say/problems.ts";
import type { Day } from "../../core/units/day.ts";
import { watchStores } from "../../core/ward/store-watch.ts";
import { mayHaveLog } from "../../edge/keep/open-keep.ts";
import { projectFolder } from "../../edge/published.ts";
import { answerLines } from "./answer.ts";
import { backupLines } from "./keep.ts";
import { mouldAhead } from "./mould-ahead.ts";
import { machineNow } from "./now.ts";
import { type PlannedFolder, planFolder } from "./plan-folder.ts";
import { type PaperChoice, writePlan } from "./write-plan.ts";

export interface PlanRequest {
  readonly folder: string;
  readonly today: Day | undefined;
  readonly outFolder: string | undefined;
  readonly papers: PaperChoice;
  readonly out: (line: string) => void;
  readonly complain: (line: string) => void;
}

/** Plans a folder and writes everything; the exit code says whether the folder must be mended. */
export async function planCommand(request: PlanRequest): Promise<number> {
  const written = await planAndWrite(request);
  if (!written) return 2;
  const { plan, campaign } = written.planned;
  for (const line of answerLines(plan, watchStores(campaign.climate), mouldAhead(written.planned)))
    request.out(line);
  request.out("");
  request.out(
    `Written to ${written.folder}: plan.json, picture.svg, papers/ (${written.papers.join(", ")}), tables/.`,
  );
  return mustMend(written.planned.problems) ? 1 : 0;
}

export const mustMend = (problems: readonly Problem[]): boolean =>
  problems.some((each) => each.severity !== "note");

/** The shared part of `plan` and `start`. */
export async function planAndWrite(
  request: PlanRequest,
): Promise<{ planned: PlannedFolder; folder: string; papers: string[] } | null> {
  const { complain } = request;
  const planned = await planFolder(request.folder, request.today, complain);
  sayProblems(planned.problems, request);
  if (planned.campaign === null) return null;
  const folder = resolve(
    request.outFolder ?? join(projectFolder(), "out", basename(resolve(request.folder))),
  );
  complain("Setting the papers …");
  if (mayHaveLog(request.folder))
    for (const line of await backupLines(request.folder, machineNow().today)) complain(line);
  return { planned, folder, papers: await writePlan(planned, folder, request.papers) };
}

export function sayProblems(
  problems: readonly Problem[],
  { complain, folder }: Pick<PlanRequest, "complain" | "folder">,
): void {
  const serious = problems.filter((each) => each.severity !== "note" || each.code === "sheets-differ");
  for (const problem of serious.slice(0, 8)) complain(`  ${sayProblem(problem)}`);
  if (serious.length > 8)
    complain(`  … and ${serious.length - 8} more. See them all: npx leafward check "${folder}"`);
}
