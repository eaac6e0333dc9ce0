import { expect, test } from "vitest";
import { rulesPage } from "../../scripts/rules-page.ts";
import { publishedRuleBook } from "../../src/edge/rule-book.ts";
import { textOf } from "./source-files.ts";

const page = textOf("docs/rules.md").replaceAll("\r\n", "\n");
const book = publishedRuleBook();

test("docs/rules.md says what the rule tables say; if not: npx tsx scripts/write-rules.ts", () => {
  expect(page).toBe(rulesPage(book));
});

test("no name of the code is left in the page: every fact, act and condition has words", () => {
  const lines = page.split("\n").filter((line) => !line.includes("`"));
  expect(lines.filter((line) => /[a-z]_[a-z]/.test(line))).toEqual([]);
});
