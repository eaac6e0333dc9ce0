/** Tries every published value of a folder on our models: `npx tsx scripts/checks/run.ts <folder>`. */
import { readdirSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { type Difference, differencesFrom } from "./agree.ts";
import type { CheckModel, CheckModels } from "./model.ts";
import { type Row, rowsOfFolder } from "./rows.ts";

export type Trial =
  | { readonly row: Row; readonly outcome: "agreed" | "not modelled" }
  | { readonly row: Row; readonly outcome: "differed"; readonly differences: readonly Difference[] }
  | { readonly row: Row; readonly outcome: "threw"; readonly error: string };

export function tryRow(row: Row, model: CheckModel | undefined): Trial {
  if (!model) return { row, outcome: "not modelled" };
  try {
    const differences = differencesFrom(row.expected, model(row.inputs), row.tolerance);
    return differences.length > 0 ? { row, outcome: "differed", differences } : { row, outcome: "agreed" };
  } catch (error) {
    return {
      row,
      outcome: "threw",
      error: error instanceof Error ? `${error.name}: ${error.message}` : `${error}`,
    };
  }
}

/** The report, its last line `N passed, N failed`; rows of no model are listed and counted apart. */
export function reportOf(trials: readonly Trial[], problems: readonly string[]): string[] {
  const byModel = new Map<string, Trial[]>();
  for (const trial of trials) byModel.set(trial.row.model, [...(byModel.get(trial.row.model) ?? []), trial]);
  const count = (outcome: Trial["outcome"]) => trials.filter((t) => t.outcome === outcome).length;
  const failed = count("differed") + count("threw") + problems.length;
  return [
    ...[...byModel].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([name, tried]) => modelLines(name, tried)),
    ...problems.map((problem) => `PROBLEM ${problem}`),
    ...(count("not modelled") > 0 ? [`${count("not modelled")} not modelled`] : []),
    `${count("agreed")} passed, ${failed} failed`,
  ];
}

function modelLines(name: string, tried: readonly Trial[]): string[] {
  if (tried[0]?.outcome === "not modelled") return [`${name}: ${tried.length} not modelled`];
  const agreed = tried.filter((trial) => trial.outcome === "agreed").length;
  const differed = tried.length - agreed;
  return [
    `${name}: ${agreed} agreed${differed > 0 ? `, ${differed} differed` : ""}`,
    ...tried.flatMap(differenceLines),
  ];
}

function differenceLines(trial: Trial): string[] {
  if (trial.outcome !== "differed" && trial.outcome !== "threw") return [];
  const where = `  ${trial.row.at}, inputs ${JSON.stringify(trial.row.inputs)}`;
  if (trial.outcome === "threw") return [where, `    no answer: ${trial.error}`];
  return [
    where,
    ...trial.differences.map(
      ({ at, expected, got, allowed }) =>
        `    ${at}: expected ${JSON.stringify(expected)} (${allowed}), ours ${JSON.stringify(got) ?? "absent"}`,
    ),
    `    source: ${trial.row.source}`,
  ];
}

/** The models of every file in `models/`, and the files that cannot be used. */
async function publishedModels(): Promise<{ models: Map<string, CheckModel>; problems: string[] }> {
  const folder = new URL("models/", import.meta.url);
  const models = new Map<string, CheckModel>();
  const problems: string[] = [];
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .sort()) {
    try {
      const loaded = (await import(new URL(file, folder).href)) as { models?: CheckModels };
      if (!loaded.models) problems.push(`models/${file} exports no \`models\`.`);
      for (const [name, model] of Object.entries(loaded.models ?? {})) {
        if (models.has(name)) problems.push(`models/${file}: "${name}" is in an earlier file too. Keep one.`);
        models.set(name, model);
      }
    } catch (error) {
      problems.push(`models/${file} cannot be loaded: ${error instanceof Error ? error.message : error}`);
    }
  }
  return { models, problems };
}

async function main(folder: string | undefined): Promise<number> {
  if (folder === undefined) {
    console.error("Which folder? npx tsx scripts/checks/run.ts <folder of check files>");
    return 2;
  }
  let read: ReturnType<typeof rowsOfFolder>;
  try {
    read = rowsOfFolder(folder);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return 2;
  }
  const known = await publishedModels();
  const trials = read.rows.map((row) => tryRow(row, known.models.get(row.model)));
  const problems = [...read.problems, ...known.problems];
  for (const line of reportOf(trials, problems)) console.log(line);
  return problems.length > 0 || trials.some((t) => t.outcome === "differed" || t.outcome === "threw") ? 1 : 0;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  process.exitCode = await main(process.argv[2]);
