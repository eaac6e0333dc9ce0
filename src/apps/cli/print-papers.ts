import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { PLAN_PAPERS } from "./papers/planned-papers.ts";
import type { PlannedFolder } from "./plan-folder.ts";

/** Prints the papers of a plan into a folder and names the files: sheets and cards of the first three working days, tags of the fortnight (or cards and tags of all), orders, the plan drawn. */
export async function printPapers(
  planned: PlannedFolder,
  folder: string,
  papers: { readonly sheet: "A4" | "Letter"; readonly allCards: boolean },
): Promise<string[]> {
  const written: string[] = [];
  for (const print of Object.values(PLAN_PAPERS))
    for (const { name, bytes } of await print({ ...planned, ...papers })) {
      await writeFile(join(folder, name), bytes);
      written.push(name);
    }
  return written;
}
