import type { Base, KeepWork } from "./tables.ts";

type Migration = (work: KeepWork, bytes: Base["bytes"]) => Promise<void>;

/** Step n leads from version n - 1 to version n. A step that was ever released is never changed; a file of each version lies in test/golden/keep. */
const MIGRATIONS: readonly Migration[] = [
  async ({ schema }) => {
    await schema
      .createTable("leafward_event")
      .addColumn("place", "integer", (column) => column.primaryKey())
      .addColumn("campaign", "text", (column) => column.notNull())
      .addColumn("id", "text", (column) => column.notNull())
      .addColumn("hash", "text", (column) => column.notNull())
      .addColumn("device", "text", (column) => column.notNull())
      .addColumn("number", "integer", (column) => column.notNull())
      .addColumn("body", "text", (column) => column.notNull())
      .addUniqueConstraint("leafward_event_id", ["campaign", "id"])
      .execute();
    await schema
      .createIndex("leafward_event_place")
      .on("leafward_event")
      .columns(["campaign", "place"])
      .execute();
    await schema
      .createIndex("leafward_event_chain")
      .on("leafward_event")
      .columns(["campaign", "device", "number"])
      .execute();
  },
  async ({ schema }, bytes) => {
    await schema
      .createTable("leafward_snapshot")
      .addColumn("campaign", "text", (column) => column.primaryKey())
      .addColumn("place", "integer", (column) => column.notNull())
      .addColumn("bytes", bytes, (column) => column.notNull())
      .execute();
  },
];

export const NEWEST = MIGRATIONS.length;

/** Version of the tables that are there; 0: none. */
export async function versionOf(work: Base["db"] | KeepWork): Promise<number> {
  const tables = await work.introspection.getTables();
  if (!tables.some(({ name }) => name === "leafward_version")) return 0;
  const row = await work.selectFrom("leafward_version").select("number").executeTakeFirst();
  return row?.number ?? 0;
}

/** Leads the tables to a version, all steps or none. @returns the version they have then, which a newer Leafward may have led further */
export const migrate = (base: Base, to = NEWEST): Promise<number> =>
  base.db.transaction().execute(async (work) => {
    await base.enter(work);
    const from = await versionOf(work);
    if (from >= to) return from;
    if (from === 0) {
      await work.schema
        .createTable("leafward_version")
        .addColumn("number", "integer", (column) => column.notNull())
        .execute();
      await work.insertInto("leafward_version").values({ number: 0 }).execute();
    }
    for (const step of MIGRATIONS.slice(from, to)) await step(work, base.bytes);
    await work.updateTable("leafward_version").set({ number: to }).execute();
    return to;
  });
