import { expect, test } from "vitest";
import { withTables } from "../../scripts/folder-guide.ts";
import { decideCase } from "../../src/core/care/decide-case.ts";
import { newCampaignFiles } from "../../src/edge/intake/new-campaign.ts";
import { allTables } from "../../src/edge/intake/tables/all.ts";
import { publishedRuleBook } from "../../src/edge/rule-book.ts";
import { textOf } from "./source-files.ts";

const page = textOf("docs/campaign-folder.md").replaceAll("\r\n", "\n");
const block = (name: string): Record<string, unknown> =>
  JSON.parse(new RegExp(`\`\`\`json ${name}\n([\\s\\S]*?)\`\`\``).exec(page)?.[1] ?? "");

test("the guide shows every table and column as they are read; if not: npx tsx scripts/write-folder-guide.ts", () => {
  expect(page).toBe(withTables(page, allTables));
});

test("the worked case gives the answer printed under it", () => {
  expect(decideCase(publishedRuleBook(), block("case"))).toMatchObject({
    ...block("answer"),
    reasons: expect.arrayContaining(block("answer").reasons as unknown[]),
  });
});

test("the guide explains every setting of a new campaign", () => {
  const settings = Object.keys(JSON.parse(newCampaignFiles().get("campaign.json") ?? "{}"));
  expect(settings.length).toBeGreaterThan(5);
  const rows = page
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) => line.split("|")[1] ?? "");
  expect(settings.filter((name) => !rows.some((cell) => new RegExp(`\`${name}[\`.[]`).test(cell)))).toEqual(
    [],
  );
});
