import { existsSync } from "node:fs";
import { cp, mkdir } from "node:fs/promises";
import { basename, join, relative, resolve } from "node:path";
import { projectFolder } from "../../edge/published.ts";

/** Where somebody looks around an invented campaign: a copy of their own, so that the demo stays as it is.
 *  @returns null when the folder is no demo of this project */
export async function copyOfDemo(folder: string): Promise<string | null> {
  const inside = relative(join(projectFolder(), "demo"), resolve(folder));
  if (inside === "" || inside.startsWith("..") || inside.includes(":")) return null;
  const copy = join(projectFolder(), "out", "look-around", basename(folder));
  if (!existsSync(copy)) {
    await mkdir(copy, { recursive: true });
    await cp(folder, copy, { recursive: true });
  }
  return copy;
}
