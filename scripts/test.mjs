// `npm test`: style, types, then every claim, the browser's among them.
import { spawnSync } from "node:child_process";

const steps = [
  ["style", ["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."]],
  ["types", ["node_modules/typescript/bin/tsc", "-p", "tsconfig.json"]],
  ["claims", ["node_modules/vitest/vitest.mjs", "run", ...process.argv.slice(2)]],
];
for (const [name, args] of steps) {
  const run = spawnSync(process.execPath, args, { stdio: "inherit" });
  if (run.status !== 0) {
    console.error(`\nThe ${name} check failed.`);
    process.exit(run.status ?? 1);
  }
}
