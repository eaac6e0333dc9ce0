import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { allTables } from "../src/edge/intake/tables/all.ts";
import { projectFolder } from "../src/edge/published.ts";
import { withTables } from "./folder-guide.ts";

const page = join(projectFolder(), "docs", "campaign-folder.md");
writeFileSync(page, withTables(readFileSync(page, "utf8"), allTables));
console.log("Written: the tables of docs/campaign-folder.md");
