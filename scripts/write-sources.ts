import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { projectFolder } from "../src/edge/published.ts";
import { sourceTables } from "./source-tables.ts";
import { sourcesPage } from "./sources-page.ts";

writeFileSync(join(projectFolder(), "docs", "sources.md"), sourcesPage(sourceTables()));
console.log("Written: docs/sources.md");
