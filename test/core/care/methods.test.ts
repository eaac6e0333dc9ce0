import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { decideCase } from "../../../src/core/care/decide-case.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

// What a team may do by material and condition: common practice, no source (test/reference/README.md).
interface Row {
  what: string;
  item: Record<string, unknown>;
  obs: Record<string, unknown>;
  dry?: boolean;
  may: ("yes" | "no")[];
  also?: string[];
}
const { columns, rows } = JSON.parse(
  readFileSync(new URL("../../reference/methods-by-format.json", import.meta.url), "utf8"),
) as { columns: string[]; rows: Row[] };
const book = publishedRuleBook();
const sound = Object.fromEntries(
  ["wet", "damp_to_touch", "growth_visible", "live_insects", "rodent_signs", "guano", "powder_between"]
    .concat(["fragments_fall", "rusted_fasteners", "media_flakes"])
    .map((each) => [each, "no"]),
);

describe.each(rows.map((row) => [row.what, row] as const))("%s", (_, row) => {
  const { forbid } = decideCase(book, {
    item: row.item,
    obs: { ...sound, ...row.obs },
    state: { dry_verified: row.dry ? "yes" : "no", wrapped: "yes", covers_imaged: "yes" },
    site: { climate: "hot_humid", hepa_vacuum: true, freezer: false },
    plan: { step: "clean" },
  });
  test.each(row.may.map((may, at) => [may === "yes" ? "may have" : "never has", columns[at] ?? ""] as const))(
    "%s %s",
    (may, method) => {
      if (may === "may have") expect(forbid).not.toContain(method);
      else expect(forbid).toContain(method);
    },
  );
  test.each(row.also ?? ["clean_ethanol"])("never has %s", (method) => {
    expect(forbid).toContain(method);
  });
});
