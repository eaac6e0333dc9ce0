import { existsSync } from "node:fs";
import { join } from "node:path";
import { type Outcome, refused } from "../../core/outcome/problem.ts";
import { tooNew } from "./failures.ts";
import type { Keep } from "./keep.ts";
import { migrate, NEWEST, versionOf } from "./migrations.ts";
import { openDatabase } from "./postgres-base.ts";
import { sqlKeep } from "./sql-keep.ts";
import { openFile } from "./sqlite-base.ts";
import type { Base } from "./tables.ts";

export const LOG_FILE = "log.leafward.db";

/** Address of the database that keeps the log instead of a file beside the campaign. */
export const databaseUrl = (): string | undefined => process.env.LEAFWARD_DATABASE_URL || undefined;

/** Whether a campaign folder has, or may have, a log. */
export const mayHaveLog = (folder: string): boolean =>
  databaseUrl() !== undefined || existsSync(join(folder, LOG_FILE));

/** The keep of a campaign folder: its file, made where there is none, or the database of LEAFWARD_DATABASE_URL. */
export async function openKeep(folder: string, wish: "write" | "read" = "write"): Promise<Outcome<Keep>> {
  const url = databaseUrl();
  return url === undefined ? openFileKeep(join(folder, LOG_FILE), wish) : openDatabaseKeep(url);
}

export async function openFileKeep(path: string, wish: "write" | "read" = "write"): Promise<Outcome<Keep>> {
  const opened = openFile(path, wish);
  if (!opened.ok) return opened;
  const { base, shut } = opened.value;
  return ready(base, shut);
}

export async function openDatabaseKeep(url: string): Promise<Outcome<Keep>> {
  const base = await openDatabase(url);
  return base.ok ? ready(base.value, null) : base;
}

/** Leads older tables to the newest version; newer ones are left alone. */
async function ready(base: Base, shut: Keep["shut"]): Promise<Outcome<Keep>> {
  try {
    const version = shut ? await versionOf(base.db) : await migrate(base);
    if (version <= NEWEST) return { ok: true, value: sqlKeep(base, shut) };
    await base.close();
    return refused(tooNew(base.where, version, NEWEST));
  } catch (error) {
    await base.close();
    const problem = base.failureOf(error);
    if (problem === null) throw error;
    return refused(problem);
  }
}
