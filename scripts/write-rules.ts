// Writes docs/rules.md from the rule tables. Run it after a change of a rule.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { projectFolder } from "../src/edge/published.ts";
import { publishedRuleBook } from "../src/edge/rule-book.ts";
import { rulesPage } from "./rules-page.ts";

writeFileSync(join(projectFolder(), "docs", "rules.md"), rulesPage(publishedRuleBook()));
console.log("Written: docs/rules.md");
