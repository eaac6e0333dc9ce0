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

/** Devices that were let in and acts that were refused; made where there is none. */
export function openServerFile(folder: string): DatabaseSyncInstance {
  const path = join(serverFolder(folder), "devices.db");
  const file = new DatabaseSync(path, { timeout: 2000 });
  chmodSync(path, 0o600);
  file.exec("pragma journal_mode = wal; pragma synchronous = full");
  file.exec(TABLES);
  return file;
}
