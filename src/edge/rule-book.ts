import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { loadRuleBook } from "../core/care/load-rules.ts";
import type { RuleBook, RuleTables } from "../core/care/rule-book.ts";
import { type Outcome, refused } from "../core/outcome/problem.ts";
import { publishedFolder, readPublished } from "./published.ts";

/** A campaign folder may add its own rules in this file. */
export const LOCAL_RULES = "rules.json";

/** The rule tables of `data/`. */
export function publishedTables(): RuleTables {
  const themes = readdirSync(join(publishedFolder(), "rules"))
    .filter((name) => name.endsWith(".json"))
    .sort();
  return {
    rules: Object.fromEntries(
      themes.map((name) => [name.replace(".json", ""), readPublished(join("rules", name))]),
    ),
    derivations: readPublished("derivations.json"),
    actions: readPublished("actions.json"),
    endings: readPublished("endings.json"),
    vocabulary: readPublished("vocabulary.json"),
    sources: readPublished("sources.json"),
    facts: readPublished("facts.json"),
    rests: readPublished("resting.json"),
    severities: readPublished("severities.json"),
  };
}

/** The rule book of `data/`. A fault in it is a fault of ours, so it throws and names every one. */
export function publishedRuleBook(): RuleBook {
  const book = loadRuleBook(publishedTables());
  if (!book.ok)
    throw new Error(
      book.problems.map((each) => `${each.rule}: got ${each.got}, expected ${each.expected}`).join("\n"),
    );
  return book.value;
}

/** The published rules and the campaign folder's own, where it has some; a fault in those is the campaign's to mend. */
export function ruleBookOf(folder: string): Outcome<RuleBook> {
  const path = join(folder, LOCAL_RULES);
  if (!existsSync(path)) return { ok: true, value: publishedRuleBook() };
  try {
    const rules: unknown = JSON.parse(readFileSync(path, "utf8").replace(/^\uFEFF/, ""));
    return loadRuleBook(publishedTables(), { file: LOCAL_RULES, rules });
  } catch (error) {
    return refused({
      code: "rule-fault",
      severity: "stop",
      file: LOCAL_RULES,
      got: String(error).replace(/^SyntaxError: /, ""),
      expected: "a list of rules as JSON",
      remedy: "Mend the file, or take it away to work by the published rules alone.",
    });
  }
}
