import { existsSync } from "node:fs";
import { mkdir, open, rename, rm, stat, writeFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { backup as copyPages } from "@photostructure/sqlite";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import type { Day } from "../../core/units/day.ts";
import { diskFull, unopened } from "./failures.ts";
import { databaseUrl, LOG_FILE, openDatabaseKeep, openFileKeep } from "./open-keep.ts";
import { pour } from "./pour.ts";
import { closeUp, openFile, syncFolder } from "./sqlite-base.ts";
import { sumFileOf, sumLine, sumOf } from "./sums.ts";
import { type Verified, verifyFile } from "./verify.ts";

export interface Backup {
  readonly path: string;
  readonly sum: string;
  readonly verified: Verified;
}

/** Where backups go that were given no other place. It is on the disk of the log itself. */
export const ownBackups = (folder: string): string => join(folder, "backups");
const ENDING = ".leafward.db";
/** Copied in steps it begins anew whenever somebody writes between them, and might never end. Source: SQLite, "Using the SQLite Online Backup API". */
const ALL_AT_ONCE = -1;

/** Name of a backup: the campaign's folder and when it was made, `saltmere.2026-06-19.leafward.db`. */
export const backupName = (folder: string, when: string): string =>
  `${basename(resolve(folder))}.${when}${ENDING}`;

/**
 * Copies the log of a campaign while others may go on writing, reads the copy from end to end, and only then gives it its name, with its sum
 * beside it. @param to an existing folder   @param when as it stands in the name
 */
export async function backUp(folder: string, to: string, when: string, today: Day): Promise<Outcome<Backup>> {
  const path = join(to, backupName(folder, when));
  const part = `${path}.part`;
  const place = await placeFault(to, path);
  if (place !== null) return refused(place);
  try {
    const copied = await copyLog(folder, part);
    const faults = copied.length > 0 ? copied : await closed(part);
    if (faults.length > 0) return refused(...faults);
    const read = await verifyFile(part, today);
    if (!read.ok) return read;
    const stops = read.value.problems.filter(({ severity }) => severity === "stop");
    if (stops.length > 0) return refused(...stops);
    const sum = await sumOf(part);
    await writeWhole(sumFileOf(path), sumLine(path, sum));
    await rename(part, path);
    syncFolder(to);
    return { ok: true, value: { path, sum, verified: { ...read.value, where: basename(path) } } };
  } catch (error) {
    return refused(diskFailure(to, error));
  } finally {
    await rm(part, { force: true });
  }
}

async function placeFault(to: string, path: string): Promise<Problem | null> {
  const found = await stat(to).catch(() => null);
  if (!found?.isDirectory())
    return {
      code: "backup-no-place",
      severity: "ask",
      got: to,
      remedy: "Plug in the stick, or name a folder that is there. Nothing was copied.",
    };
  if (!existsSync(path)) return null;
  return {
    code: "backup-there",
    severity: "note",
    got: path,
    remedy: "A backup is never written over. Nothing was copied.",
  };
}

/** A file page by page, whatever its pages hold; a database entry by entry into a file. @returns what went wrong */
async function copyLog(folder: string, part: string): Promise<readonly Problem[]> {
  const url = databaseUrl();
  if (url !== undefined) return copyEntries(url, part);
  const opened = openFile(join(folder, LOG_FILE), "read");
  if (!opened.ok) return opened.problems;
  const { base, file } = opened.value;
  try {
    await copyPages(file, part, { rate: ALL_AT_ONCE });
    return [];
  } catch (error) {
    return [base.failureOf(error) ?? diskFailure(part, error)];
  } finally {
    await base.close();
  }
}

async function copyEntries(url: string, part: string): Promise<readonly Problem[]> {
  const from = await openDatabaseKeep(url);
  if (!from.ok) return from.problems;
  const to = await openFileKeep(part);
  if (to.ok) {
    const { problems } = await pour(from.value, to.value);
    await Promise.all([from.value.close(), to.value.close()]);
    return problems;
  }
  await from.value.close();
  return to.problems;
}

async function closed(part: string): Promise<Problem[]> {
  const fault = closeUp(part);
  if (fault === null) await syncFile(part);
  return fault === null ? [] : [fault];
}

/** Waits until a file is on its disk. */
export async function syncFile(path: string): Promise<void> {
  const handle = await open(path, "r+");
  await handle.sync();
  await handle.close();
}

async function writeWhole(path: string, text: string): Promise<void> {
  await writeFile(path, text, { flush: true });
}

/** What a failing file system means. */
export function diskFailure(where: string, error: unknown): Problem {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (["ENOSPC", "EDQUOT", "EFBIG", "EIO"].includes(code)) return diskFull(basename(where));
  return unopened(basename(where), error instanceof Error ? error.message : code);
}

export const makeOwnBackups = async (folder: string): Promise<string> => {
  const place = ownBackups(folder);
  await mkdir(place, { recursive: true });
  return place;
};
