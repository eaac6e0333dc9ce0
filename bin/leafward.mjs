#!/usr/bin/env node
// The `leafward` command: makes the folder ready when it is a fresh clone, then runs what was built.
import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const ready = spawnSync(process.execPath, [join(root, "scripts", "ensure.mjs"), "build"], {
  stdio: ["ignore", 2, 2],
});
if (ready.status !== 0) process.exit(ready.status ?? 1);
await import("../dist/src/apps/cli/main.js");
