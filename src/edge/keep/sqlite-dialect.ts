import type { DatabaseSyncInstance } from "@photostructure/sqlite";
import {
  type Dialect,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from "kysely";

const MOST_STATEMENTS = 64;

/** Kysely over a SQLite file with the programming interface of `node:sqlite`. */
export const sqliteDialect = (file: DatabaseSyncInstance): Dialect => ({
  createAdapter: () => new SqliteAdapter(),
  createDriver: () => new FileDriver(file),
  createQueryCompiler: () => new SqliteQueryCompiler(),
  createIntrospector: (kysely) => new SqliteIntrospector(kysely),
});

class FileDriver extends SqliteDriver {
  readonly #file: DatabaseSyncInstance;

  constructor(file: DatabaseSyncInstance) {
    super({ database: statementsOf(file) });
    this.#file = file;
  }

  /** A transaction takes the writer's lock at once: one that began by reading could be turned away at its first write. */
  override async beginTransaction(): Promise<void> {
    this.#file.exec("begin immediate");
  }

  /** A full disk has rolled it back already. */
  override async rollbackTransaction(): Promise<void> {
    if (this.#file.isTransaction) this.#file.exec("rollback");
  }
}

/** Statements as Kysely asks for them; those asked for again are found again. */
function statementsOf(file: DatabaseSyncInstance): SqliteDatabase {
  const known = new Map<string, ReturnType<SqliteDatabase["prepare"]>>();
  return {
    close: () => file.close(),
    prepare: (sql) => {
      const found = known.get(sql);
      if (found) return found;
      const statement = file.prepare(sql);
      const made = {
        reader: statement.columns().length > 0,
        all: (values: readonly unknown[]) => statement.all(...values),
        run: (values: readonly unknown[]) => statement.run(...values),
        iterate: (values: readonly unknown[]) => statement.iterate(...values),
      };
      if (known.size >= MOST_STATEMENTS) known.clear();
      known.set(sql, made);
      return made;
    },
  };
}
