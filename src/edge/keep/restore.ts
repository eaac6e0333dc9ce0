import { existsSync } from "node:fs";
import { copyFile, mkdir, rename, rm } from "node:fs/promises";
import { basename, join } from "node:path";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import type { Day } from "../../core/units/day.ts";
import { diskFailure, syncFile } from "./backup.ts";
import { type Keep, KeepFault } from "./keep.ts";
import { databaseUrl, LOG_FILE, openDatabaseKeep, openFileKeep } from "./open-keep.ts";
import { type Poured, pour } from "./pour.ts";
import { closeUp, syncFolder } from "./sqlite-base.ts";
import { type Verified, verifyFile } from "./verify.ts";

export interface Restored {
  readonly verified: Verified;
  /** What the log that was there had beyond the backup and was taken over; null: none was there, or nothing of it could be read. */
  readonly takenOver: Poured | null;
  /** The log that was there, as it was; null: none was there, or the log is in a database. */
  readonly beside: string | null;
}

/**
 * Puts a backup in the place of a log. The log that was there stays beside it, and whatever is whole in it and newer than the backup is taken
 * over. Into a database goes what is missing there. @param when as it stands in the name of the old one
 */
export async function restore(
  backup: string,
  folder: string,
  when: string,
  today: Day,
): Promise<Outcome<Restored>> {
  const read = await verifyFile(backup, today);
  if (!read.ok) return read;
  const stops = read.value.problems.filter(({ severity }) => severity === "stop");
  if (stops.length > 0) return refused(...stops);
  const url = databaseUrl();
  return url === undefined
    ? intoFolder(backup, folder, when, read.value)
    : intoDatabase(backup, url, read.value);
}

async function intoDatabase(backup: string, url: string, verified: Verified): Promise<Outcome<Restored>> {
  const to = await openDatabaseKeep(url);
  if (!to.ok) return to;
  const poured = await pourFile(backup, to.value);
  await to.value.close();
  if (!poured.ok) return poured;
  const [fault] = poured.value.problems;
  return fault ? refused(fault) : { ok: true, value: { verified, takenOver: null, beside: null } };
}

async function intoFolder(
  backup: string,
  folder: string,
  when: string,
  verified: Verified,
): Promise<Outcome<Restored>> {
  const log = join(folder, LOG_FILE);
  const part = `${log}.part`;
  try {
    await mkdir(folder, { recursive: true });
    await copyFile(backup, part);
    const old = existsSync(log) ? await setBeside(log, join(folder, `log.leafward.before-${when}.db`)) : null;
    if (old && !old.ok) return old;
    const beside = old?.value ?? null;
    const takenOver = beside === null ? null : await takeOver(beside, part, verified);
    const fault = takenOver && !takenOver.ok ? takenOver : whole(part);
    if (fault !== null) {
      if (beside !== null)
        await Promise.all(["", "-wal"].map((end) => rm(`${beside}${end}`, { force: true }))); // a copy of what stays
      return fault;
    }
    await syncFile(part);
    await Promise.all(["-wal", "-shm"].map((end) => rm(`${log}${end}`, { force: true }))); // of the old one, and copied
    await rename(part, log);
    syncFolder(folder);
    return { ok: true, value: { verified, takenOver: takenOver?.ok ? takenOver.value : null, beside } };
  } catch (error) {
    return refused(diskFailure(log, error));
  } finally {
    await Promise.all(["", "-wal", "-shm"].map((end) => rm(`${part}${end}`, { force: true })));
  }
}

/** Null: all of it stands in the one file. */
function whole(part: string): Outcome<never> | null {
  const fault = closeUp(part);
  return fault && refused(fault);
}

/** Copies the old log with whatever stands beside it. One that is in use is refused; a damaged one is copied as it is. */
async function setBeside(log: string, beside: string): Promise<Outcome<string>> {
  const fault = closeUp(log);
  if (fault?.code === "keep-in-use") return refused(fault);
  for (const end of ["", "-wal"])
    if (existsSync(`${log}${end}`)) {
      await copyFile(`${log}${end}`, `${beside}${end}`);
      await syncFile(`${beside}${end}`);
    }
  return { ok: true, value: beside };
}

async function takeOver(
  beside: string,
  part: string,
  { campaigns }: Verified,
): Promise<Outcome<Poured | null>> {
  const old = await openFileKeep(beside, "read");
  if (!old.ok) return { ok: true, value: null };
  const names = await old.value.campaigns().catch((error: unknown) => {
    if (error instanceof KeepFault) return [];
    throw error;
  });
  await old.value.close();
  const known = new Set(campaigns.map(({ campaign }) => campaign));
  const other = names.find((name) => !known.has(name));
  if (other !== undefined && known.size > 0) return refused(ofAnother(other, [...known].join(", ")));
  const to = await openFileKeep(part);
  if (!to.ok) return to;
  const poured = await pourFile(beside, to.value);
  await to.value.close();
  const full = poured.ok && poured.value.problems.find(({ file }) => file === basename(part)); // of the new one: the old may well be damaged
  return full ? refused(full) : poured;
}

async function pourFile(path: string, to: Keep): Promise<Outcome<Poured>> {
  const from = await openFileKeep(path, "read");
  if (!from.ok) return from;
  const poured = await pour(from.value, to);
  await from.value.close();
  return { ok: true, value: poured };
}

const ofAnother = (got: string, expected: string): Problem => ({
  code: "backup-of-another",
  severity: "stop",
  got,
  expected,
  remedy: "Nothing was changed. Name the folder of that campaign, or an empty one.",
});
