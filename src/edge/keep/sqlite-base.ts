import { closeSync, fsyncSync, openSync } from "node:fs";
import { basename, dirname } from "node:path";
import { DatabaseSync, type DatabaseSyncInstance } from "@photostructure/sqlite";
import { Kysely } from "kysely";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { damaged, diskFull, inUse, notALog, readOnly, unopened } from "./failures.ts";
import { sqliteDialect } from "./sqlite-dialect.ts";
import type { Base, KeepTables } from "./tables.ts";

/** "LFWD" in the head of the file says whose it is. */
const APPLICATION_ID = 0x4c465744;
const PATIENCE_MS = 2000;

export interface OpenedFile {
  readonly base: Base;
  readonly file: DatabaseSyncInstance;
  /** Why it was opened for reading alone; null: it can be written. */
  readonly shut: Problem | null;
}

/** Opens a log file, or makes it where there is none. Where it cannot be written, or is damaged, it is opened for reading. */
export function openFile(path: string, wish: "write" | "read"): Outcome<OpenedFile> {
  if (wish === "read") return opened(path, readOnly(basename(path)));
  const first = opened(path, null);
  if (first.ok) return first;
  const [why] = first.problems;
  return why?.code === "keep-read-only" || why?.code === "keep-damaged" ? opened(path, why) : first;
}

function opened(path: string, shut: Problem | null): Outcome<OpenedFile> {
  let file: DatabaseSyncInstance | null = null;
  try {
    file = new DatabaseSync(path, { readOnly: shut !== null, timeout: PATIENCE_MS });
    if (shut === null && numberOf(file, "page_count") === 0) begin(file, path);
    if (numberOf(file, "application_id") !== APPLICATION_ID) {
      file.close();
      return refused(notALog(basename(path)));
    }
    if (shut === null) prepareToWrite(file);
    return { ok: true, value: { base: baseOf(file, path), file, shut } };
  } catch (error) {
    file?.close();
    return refused(fileFailure(path, error) ?? unopened(basename(path), wordsOf(error)));
  }
}

/** WAL: reading never waits for writing. FULL: the disk has it before a commit answers. */
function prepareToWrite(file: DatabaseSyncInstance): void {
  const found = soundness(file);
  if (found !== "ok") throw new Unsound(found);
  file.exec("pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on");
}

class Unsound extends Error {}

function begin(file: DatabaseSyncInstance, path: string): void {
  file.exec(`pragma application_id = ${APPLICATION_ID}`);
  syncFolder(dirname(path));
}

/** So that a new name outlives a power cut; not every system lets a folder be opened, and those that do not need none of it. */
export function syncFolder(folder: string): void {
  if (process.platform === "win32") return;
  const handle = openSync(folder, "r");
  fsyncSync(handle);
  closeSync(handle);
}

const numberOf = (file: DatabaseSyncInstance, pragma: string): number =>
  Number(Object.values(file.prepare(`pragma ${pragma}`).get() ?? {})[0]);

/** All pages of a file up to this size are looked through whenever it is opened to be written; of a larger one `verify` and the backup of the day do so. */
const LOOKED_THROUGH_BYTES = 64 * 1024 * 1024;

/** `ok`, or the first thing that is wrong with the pages of the file. That it was cut short is seen at any size: its head tells how many pages it has. */
function soundness(file: DatabaseSyncInstance): string {
  const isSmall = numberOf(file, "page_count") * numberOf(file, "page_size") <= LOOKED_THROUGH_BYTES;
  const found = file.prepare(`pragma quick_check(${isSmall ? 1 : "leafward_version"})`).get();
  return String(Object.values(found ?? {})[0]);
}

const MOST_FAULTS = 20;

/** What is wrong with the pages of the file, index against table among it; this reads all of it. */
export function pageFaults(file: DatabaseSyncInstance): string[] {
  try {
    const rows = file.prepare(`pragma integrity_check(${MOST_FAULTS})`).all();
    return rows.map((row) => String(Object.values(row)[0])).filter((fault) => fault !== "ok");
  } catch (error) {
    return [wordsOf(error)];
  }
}

/** A name by itself: what stood beside it is taken in. @returns what stands in the way; null when it is done */
export function closeUp(path: string): Problem | null {
  let file: DatabaseSyncInstance | null = null;
  try {
    file = new DatabaseSync(path, { timeout: 0 });
    file.exec("pragma journal_mode = delete");
    return null;
  } catch (error) {
    return fileFailure(path, error) ?? unopened(basename(path), wordsOf(error));
  } finally {
    file?.close();
  }
}

const baseOf = (file: DatabaseSyncInstance, path: string): Base => ({
  db: new Kysely<KeepTables>({ dialect: sqliteDialect(file) }),
  where: basename(path),
  bytes: "blob",
  enter: async () => {}, // the transaction has begun as the writer
  failureOf: (error) => fileFailure(path, error),
  close: async () => leaveOneFile(file),
});

/** Nobody else there: the file becomes whole by itself again, with nothing beside it, and can be copied as it lies. */
function leaveOneFile(file: DatabaseSyncInstance): void {
  try {
    file.exec("pragma busy_timeout = 0; pragma journal_mode = delete");
  } catch {
    // somebody else is there, or the disk is full: what stands beside it is taken in at the next opening
  }
  file.close();
}

/** What a failure means for people; null: not of the file. */
function fileFailure(path: string, error: unknown): Problem | null {
  const where = basename(path);
  if (error instanceof Unsound) return damaged(where, error.message);
  switch (primaryCode(error)) {
    case 5: // SQLITE_BUSY
    case 6: // SQLITE_LOCKED
      return inUse(where);
    case 8: // SQLITE_READONLY
      return readOnly(where);
    case 10: // SQLITE_IOERR: a stick pulled out, a limit on the size of files
    case 13: // SQLITE_FULL
      return diskFull(where);
    case 11: // SQLITE_CORRUPT
      return damaged(where, wordsOf(error));
    case 14: // SQLITE_CANTOPEN
      return unopened(where, wordsOf(error));
    case 26: // SQLITE_NOTADB
      return notALog(where);
    default:
      return null;
  }
}

/** Source: SQLite, "Result and Error Codes" (sqlite.org/rescode.html): the low byte is the primary code. */
const primaryCode = (error: unknown): number =>
  error instanceof Error && "errcode" in error && typeof error.errcode === "number"
    ? error.errcode & 0xff
    : (CODE_OF[wordsOf(error)] ?? -1);

/** While rows are read the driver throws without a code. Source: SQLite, sqlite3_errstr() of version 3.50, from memory. */
const CODE_OF: Readonly<Record<string, number>> = {
  "database is locked": 5,
  "disk I/O error": 10,
  "database disk image is malformed": 11,
  "database or disk is full": 13,
  "file is not a database": 26,
};

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : "no reason given");
