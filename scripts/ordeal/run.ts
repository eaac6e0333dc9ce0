/** `npm run ordeal`: everything that may go wrong with a log, for real. `--short` is what the claims run;
 *  `--kills n` other than a thousand; `--seed n`; words from the names of trials pick some. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { FULL, killsOf, SHORT, TRIALS } from "./trials.ts";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    short: { type: "boolean", default: false },
    seed: { type: "string", default: "1" },
    kills: { type: "string" },
  },
});
const kills = values.kills === undefined ? {} : killsOf(Number(values.kills));
const size = { ...(values.short ? SHORT : FULL), ...kills };
let failed = 0;
for (const trial of TRIALS.filter(
  ({ name }) => positionals.length === 0 || positionals.some((word) => name.includes(word)),
)) {
  const folder = mkdtempSync(join(tmpdir(), "leafward-ordeal-"));
  const began = performance.now();
  const { line, faults, skipped } = await trial.run({ folder, size, seed: Number(values.seed) });
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  const verdict = skipped ? "SKIPPED" : faults.length === 0 ? "passed" : "FAILED";
  console.log(`${verdict.padEnd(7)}  ${trial.name}: ${line} (${seconds} s)`);
  for (const fault of faults.slice(0, 10)) console.log(`         ${fault}`);
  if (faults.length > 0) failed++;
  rmSync(folder, { recursive: true, force: true });
}
process.exit(failed > 0 ? 1 : 0);
