import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { projectFolder } from "../../src/edge/published.ts";
import { writeFolder } from "./folder.ts";
import { marabelle } from "./marabelle/campaign.ts";
import { nineLamps } from "./nine-lamps/campaign.ts";
import { saltmere } from "./saltmere/campaign.ts";

/** Writes the three invented campaigns into a folder. */
export function makeAll(into: string): void {
  for (const make of [saltmere, nineLamps, marabelle]) writeFolder(into, make());
}

if (process.argv[1] === fileURLToPath(import.meta.url)) makeAll(join(projectFolder(), "demo"));
