import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { projectFolder } from "../../src/edge/published.ts";
import { writeFolder } from "./folder.ts";
import { saltmere } from "./saltmere/campaign.ts";

/** Writes the three invented campaigns into a folder. */
export function makeAll(into: string): void {
  for (const make of [saltmere]) writeFolder(into, make());
}

if (process.argv[1] === fileURLToPath(import.meta.url)) makeAll(join(projectFolder(), "demo"));
