import { mkdir, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { drawPlanPicture } from "../../core/plan/picture/draw-plan-picture.ts";
import { planPicture } from "../../core/plan/picture/plan-picture.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { PICTURE_WORDS } from "../../core/say/plan-picture.ts";
import { planTables } from "../../edge/handover/plan-tables.ts";
import type { PlannedFolder } from "./plan-folder.ts";
import { printPapers } from "./print-papers.ts";

export interface PaperChoice {
  readonly sheet: "A4" | "Letter";
  /** Bench cards for every item, not of the coming days alone. */
  readonly allCards: boolean;
}

/** A plan as plan.json holds it. */
export const planText = (plan: Plan): string => `${JSON.stringify(plan, null, 1)}\n`;

/** Plan, picture, tables and papers into a folder; the names of the papers. */
export async function writePlan(
  planned: PlannedFolder,
  folder: string,
  papers: PaperChoice,
): Promise<string[]> {
  await rm(join(folder, "papers"), { recursive: true, force: true });
  await mkdir(join(folder, "papers"), { recursive: true });
  await mkdir(join(folder, "tables"), { recursive: true });
  await writeFile(join(folder, "plan.json"), planText(planned.plan));
  await writeFile(join(folder, "picture.svg"), pictureOf(planned));
  for (const { name, text } of planTables(planned.plan))
    await writeFile(join(folder, "tables", `${name}.csv`), text);
  return printPapers(planned, join(folder, "papers"), papers);
}

/** The plan drawn, as SVG. */
const pictureOf = (planned: PlannedFolder): string => drawPlanPicture(planPicture(planned), PICTURE_WORDS);
