import { tableSchemaOf } from "./table-schema.ts";
import { allTables } from "./tables/all.ts";

/** The published schemas: file name in `data/schemas/` → text. */
export const schemaFiles = (): ReadonlyMap<string, string> =>
  new Map(
    allTables.map((table) => [`${table.name}.json`, `${JSON.stringify(tableSchemaOf(table), null, 2)}\n`]),
  );
