import { existsSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { chooseSites } from "../src/core/stores/assortment/p-median.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { firstSites } from "./assortment/first-sites.ts";
import { readMedian } from "./assortment/read-median.ts";
import { filesOf } from "./packing/read-packing.ts";

/** Chooses the sites of every p-median problem of a file or folder, beside its published optimum and the plain way, one best site after the other. */
export async function benchAssortment(path: string): Promise<void> {
  if (!existsSync(path)) {
    console.log(
      `  Skipped: there is no file ${path}. Give the path of a file or folder of p-median problems (.txt).`,
    );
    return;
  }
  const solver = startSolver();
  for (const file of filesOf(path, /\.txt$/)) {
    const name = basename(file).replace(/\.txt$/, "");
    const problem = readMedian(readFileSync(file, "utf8"));
    const optimum = publishedOptimum(file, name);
    const from = performance.now();
    const { cost, bound, proved } = await chooseSites(problem, solver.solve, { steps: 600, step: 1 });
    const seconds = (performance.now() - from) / 1000;
    const over = (of: number): string =>
      optimum === null
        ? "no optimum in the file beside it"
        : `${(100 * (of / optimum - 1)).toFixed(2)} % over the published ${optimum}`;
    console.log(
      `  ${name}: ${problem.sites} sites, ${problem.choose} chosen: ${cost}, ${over(cost)}; bound ${bound}${proved ? ", proved" : ""}; ${seconds.toFixed(2)} s; one after the other ${over(firstSites(problem))}`,
    );
    if (optimum !== null && (cost < optimum || bound > optimum)) {
      console.log(`  FAULT ${name}: ${cost} with bound ${bound}, but the optimum is ${optimum}`);
      process.exitCode = 1;
    }
  }
  await solver.close();
}

/** From the table of optima beside the file. */
function publishedOptimum(file: string, name: string): number | null {
  const table = join(dirname(file), "pmed-optima.csv");
  if (!existsSync(table)) return null;
  const row = readFileSync(table, "utf8")
    .split(/\r?\n/)
    .map((line) => line.split(","))
    .find(([instance]) => instance === name);
  return row === undefined ? null : Number(row[1]);
}
