import { writeFileSync } from "node:fs";
import { startSolver } from "../../../../src/edge/solve/solver.ts";
import { fullCampaign, KEPT, planOf } from "./good-plan.ts";

/* Keeps a good plan and its campaign, one row a line, for the checker's claims: npx tsx test/core/plan/checker/keep-good-plan.ts */

const solver = startSolver();
const campaign = fullCampaign();
const plan = await planOf(campaign, solver.solve);
await solver.close();
for (const [name, whole] of Object.entries({ campaign, plan })) {
  const fields = Object.entries(whole).map(([field, value]) => `${JSON.stringify(field)}: ${rows(value)}`);
  writeFileSync(new URL(`${name}.json`, KEPT), `{\n${fields.join(",\n")}\n}\n`);
}

function rows(value: unknown): string {
  if (!Array.isArray(value) || value.length === 0) return JSON.stringify(value);
  return `[\n${value.map((row) => JSON.stringify(row)).join(",\n")}\n]`;
}
