import { existsSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { projectFolder } from "../../src/edge/published.ts";

/** `npm test` builds first; a single test run by hand may not have. */
export async function buildPageIfMissing(): Promise<void> {
  if (existsSync(join(projectFolder(), "dist", "web", "index.html"))) return;
  await build({ configFile: join(projectFolder(), "vite.config.ts"), logLevel: "error" });
}
