import { readdirSync } from "node:fs";
import { join } from "node:path";
import { publishedFolder, readPublished } from "../src/edge/published.ts";
import type { SourceTables } from "./sources-page.ts";

/** The published tables that name sources; their shape is checked by the tests of `test/house/`. */
export function sourceTables(): SourceTables {
  const files = readdirSync(join(publishedFolder(), "rules"))
    .filter((name) => name.endsWith(".json"))
    .sort();
  const norms = readPublished("norms.json") as Record<string, SourceTables["norms"]>;
  return {
    sources: readPublished("sources.json") as SourceTables["sources"],
    rules: files.flatMap((name) => readPublished(join("rules", name)) as SourceTables["rules"]),
    derivations: readPublished("derivations.json") as SourceTables["derivations"],
    norms: [
      ...["times", "waits", "people", "consumables"].flatMap((group) => norms[group] ?? []),
      ...Object.values(readPublished("goods.json") as Record<string, SourceTables["norms"]>).flat(),
      ...(readPublished("substitutes.json") as { substitutes: SourceTables["norms"] }).substitutes,
    ],
  };
}
