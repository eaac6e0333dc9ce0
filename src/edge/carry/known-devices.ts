import { existsSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import type { Reached } from "../../core/log/state.ts";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { diskFailure } from "../keep/backup.ts";
import { syncFolder } from "../keep/sqlite-base.ts";
import { carryFolder, wordsOf } from "./device-key.ts";
import type { Manifest } from "./manifest.ts";

const FILE = "known.json";
const known = z.array(
  z.object({
    key: z.string(),
    reach: z.array(z.object({ device: z.string(), number: z.number(), hash: z.string() })),
  }),
);

/** A device whose files are taken, and how far it held each device's events when it last wrote to us. */
export type KnownDevice = z.infer<typeof known>[number];

export function knownDevices(folder: string): Outcome<readonly KnownDevice[]> {
  const path = join(folder, "carry", FILE);
  if (!existsSync(path)) return { ok: true, value: [] };
  try {
    return { ok: true, value: known.parse(JSON.parse(readFileSync(path, "utf8"))) };
  } catch {
    return refused(unreadable(path));
  }
}

/** Keeps the writer of a file as known, in the place of what was known of it. @returns what went wrong */
export function remember(
  folder: string,
  { key, reach }: Manifest,
  others: readonly KnownDevice[],
): Problem[] {
  const path = join(folder, "carry", FILE);
  const kept: KnownDevice = {
    key,
    reach: reach.map(({ device, number, hash }) => ({ device, number, hash })),
  };
  const all = [...others.filter((each) => each.key !== key), kept];
  try {
    const own = carryFolder(folder);
    writeFileSync(`${path}.part`, `${JSON.stringify(all, null, 2)}\n`, { mode: 0o600, flush: true });
    renameSync(`${path}.part`, path);
    syncFolder(own);
    return [];
  } catch (error) {
    return [diskFailure(path, error)];
  }
}

export const reachOf = ({ reach }: Pick<KnownDevice, "reach">): ReadonlyMap<string, Reached> =>
  new Map(reach.map(({ device, ...reached }) => [device, reached]));

/** The known device whose words begin so. */
export function deviceCalled(start: string, among: readonly KnownDevice[]): Outcome<KnownDevice> {
  const found = among.filter(({ key }) => wordsOf(key).startsWith(asWords(start)));
  const [only] = found;
  if (only && found.length === 1 && asWords(start) !== "") return { ok: true, value: only };
  return refused({
    code: "carry-for-nobody",
    severity: "stop",
    got: start,
    expected: among.map(({ key }) => wordsOf(key)).join(", ") || "nobody yet",
    remedy: "Name one of them by its first word, or leave --for away: then everything is carried.",
  });
}

/** Words as they were heard: in capitals, with spaces. */
export const asWords = (said: string): string =>
  said
    .trim()
    .toLowerCase()
    .replaceAll(/[^a-z]+/g, "-");

const unreadable = (file: string): Problem => ({
  code: "carry-known-unreadable",
  severity: "stop",
  file,
  remedy:
    "Nothing was taken. Move that file away; then each device must be trusted again by its words, once.",
});
