import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder of the project, found upward from here, whether run from the sources or from `dist/`. */
export function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "package.json"))) folder = dirname(folder);
  return folder;
}

/** `data/`: the published tables, rules, norms and words. */
export const publishedFolder = (): string => join(projectFolder(), "data");

/** One table of `data/`, parsed as JSON; its shape is checked by whoever loads it. */
export const readPublished = (name: string): unknown =>
  JSON.parse(readFileSync(join(publishedFolder(), name), "utf8"));
