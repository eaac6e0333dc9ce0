import { chmodSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync, type DatabaseSyncInstance } from "@photostructure/sqlite";

/** What a server keeps for itself, beside the log and never part of it: it is not carried, and nobody else may read it. */
export function serverFolder(folder: string): string {
  const own = join(folder, "server");
  mkdirSync(own, { recursive: true, mode: 0o700 });
  return own;
}

const TABLES = `
create table if not exists device (
  device text primary key, role text not null, person text, token text not null unique,
  paired integer not null, seen integer not null, ended integer
) strict;
create table if not exists former (
  device text not null, role text not null, person text, until integer not null
) strict;
create table if not exists refusal (
  who text not null, what text not null, code text not null, minute integer not null, times integer not null,
  primary key (who, what, code, minute)
) strict;`;

/** Devices that were let in and acts that were refused; made where there is none. In a folder that cannot be written it lasts as long as the
 *  server stands, and begins empty: nobody's token can be held against what was written there. */
export function openServerFile(folder: string): DatabaseSyncInstance {
  try {
    const path = join(serverFolder(folder), "devices.db");
    return prepared(new DatabaseSync(path, { timeout: 2000 }), path);
  } catch (error) {
    if (!cannotBeWritten(error)) throw error;
    return prepared(new DatabaseSync(":memory:"));
  }
}

function prepared(file: DatabaseSyncInstance, path?: string): DatabaseSyncInstance {
  try {
    if (path !== undefined) chmodSync(path, 0o600);
    file.exec("pragma journal_mode = wal; pragma synchronous = full");
    file.exec(TABLES);
    return file;
  } catch (error) {
    file.close();
    throw error;
  }
}

/** Of the file system, or SQLITE_READONLY and SQLITE_CANTOPEN. Source: SQLite, "Result and Error Codes" (sqlite.org/rescode.html). */
export function cannotBeWritten(error: unknown): boolean {
  const { code, errcode } = error as { readonly code?: unknown; readonly errcode?: unknown };
  return (
    code === "EACCES" ||
    code === "EPERM" ||
    code === "EROFS" ||
    (typeof errcode === "number" && [8, 14].includes(errcode & 0xff))
  );
}
