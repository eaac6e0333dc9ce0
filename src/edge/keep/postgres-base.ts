import { Kysely, PostgresDialect, sql } from "kysely";
import { Pool } from "pg";
import { type Outcome, type Problem, refused } from "../../core/outcome/problem.ts";
import { damaged, diskFull, notDurable, readOnly, unreachable } from "./failures.ts";
import type { Base, KeepTables } from "./tables.ts";

/** One lock for all writers of this log, of any program: "LFWD". */
const LOCK = 0x4c465744;
const CONNECTIONS = 4;
const PATIENCE_MS = 5000;

/** Opens the database of LEAFWARD_DATABASE_URL, once it is sure that it waits for its disk. */
export async function openDatabase(url: string): Promise<Outcome<Base>> {
  const where = nameOf(url);
  const pool = new Pool({ connectionString: url, max: CONNECTIONS, connectionTimeoutMillis: PATIENCE_MS });
  pool.on("error", () => {}); // a line that breaks while nobody uses it is opened anew by the next who does
  pool.on("connect", (line) => line.on("error", () => {})); // one that breaks in use fails the query on it, and must not end the program
  const db = new Kysely<KeepTables>({ dialect: new PostgresDialect({ pool }) });
  const base: Base = {
    db,
    where,
    bytes: "bytea",
    enter: async (work) => {
      await sql`set local synchronous_commit to on`.execute(work);
      await sql`select pg_advisory_xact_lock(${sql.lit(LOCK)})`.execute(work);
    },
    failureOf: (error) => databaseFailure(where, error),
    close: () => db.destroy(),
  };
  try {
    const { rows } = await sql<{ fsync: string }>`show fsync`.execute(db);
    if (rows[0]?.fsync === "on") return { ok: true, value: base };
    await base.close();
    return refused(notDurable(where));
  } catch (error) {
    await base.close();
    return refused(databaseFailure(where, error) ?? unreachable(where, wordsOf(error)));
  }
}

/** The database's name; whatever else the address holds, a password among it, is not repeated. */
function nameOf(url: string): string {
  try {
    return `database ${new URL(url).pathname.slice(1)}`;
  } catch {
    return "database";
  }
}

/** Source: PostgreSQL, "Error Codes", appendix A. Lines that fail have codes of the system: ECONNREFUSED. */
function databaseFailure(where: string, error: unknown): Problem | null {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (code === "53100" || code === "53000") return diskFull(where);
  if (code === "25006") return readOnly(where);
  if (code.startsWith("XX00")) return damaged(where, wordsOf(error));
  if (/^(?:08|28|3D|57|53)|^E[A-Z]+$/.test(code) || /terminated|timeout|not queryable/.test(wordsOf(error)))
    return unreachable(where, wordsOf(error));
  return null;
}

const wordsOf = (error: unknown): string =>
  error instanceof Error ? error.message || error.name : "no reason given";
