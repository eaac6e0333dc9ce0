// Writes data/schemas/<table>.json from the descriptions the reader uses. Run it after a change of a table.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { schemaFiles } from "../src/edge/intake/schema-files.ts";
import { publishedFolder } from "../src/edge/published.ts";

const folder = join(publishedFolder(), "schemas");
mkdirSync(folder, { recursive: true });
for (const [name, text] of schemaFiles()) writeFileSync(join(folder, name), text);
