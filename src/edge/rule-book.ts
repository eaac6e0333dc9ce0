import { readdirSync } from "node:fs";
import { join } from "node:path";
import { loadRuleBook, type RuleBook } from "../core/care/rule-book.ts";
import { publishedFolder, readPublished } from "./published.ts";

/** The rule book of `data/`. A fault in it is a fault of ours, so it throws and names every one. */
export function publishedRuleBook(): RuleBook {
  const files = readdirSync(join(publishedFolder(), "rules"))
    .filter((name) => name.endsWith(".json"))
    .sort();
  const book = loadRuleBook({
    rules: files.flatMap((name) => readPublished(join("rules", name)) as unknown[]),
    derivations: readPublished("derivations.json"),
    actions: readPublished("actions.json"),
    endings: readPublished("endings.json"),
    vocabulary: readPublished("vocabulary.json"),
    sources: readPublished("sources.json"),
  });
  if (!book.ok)
    throw new Error(
      book.problems.map((each) => `${each.column}: got ${each.got}, expected ${each.expected}`).join("\n"),
    );
  return book.value;
}
