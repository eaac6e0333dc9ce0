import { expect, test } from "vitest";
import { sourceTables } from "../../scripts/source-tables.ts";
import { sourcesPage } from "../../scripts/sources-page.ts";
import { textOf } from "./source-files.ts";

test("docs/sources.md says what data/ says; if not: npx tsx scripts/write-sources.ts", () => {
  expect(textOf("docs/sources.md").replaceAll("\r\n", "\n")).toBe(sourcesPage(sourceTables()));
});

test("no rule claims to be read in a source that nobody has read", () => {
  const { rules, sources } = sourceTables();
  const claimed = rules.filter(
    ({ source, sourceStatus }) =>
      sourceStatus === "seen" && ["from memory", "common practice"].includes(sources[source]?.status ?? ""),
  );
  expect(claimed.map((rule) => rule.id)).toEqual([]);
});
