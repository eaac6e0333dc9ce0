import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { differencesFrom } from "../../../scripts/checks/agree.ts";
import type { CheckModels } from "../../../scripts/checks/model.ts";
import type { Row } from "../../../scripts/checks/rows.ts";

/** One claim for each row of a file of `test/reference/physics`: our model gives the published value within the row's own tolerance. */
export function claimPublishedRows(file: string, models: CheckModels): void {
  const { checks } = JSON.parse(
    readFileSync(new URL(`../../reference/physics/${file}`, import.meta.url), "utf8"),
  ) as { checks: Row[] };
  describe(`published values of ${file}`, () => {
    test.each(checks.map((row) => [row.model, JSON.stringify(row.inputs), row.source, row] as const))(
      "%s %s: %s",
      (name, _inputs, _source, row) => {
        const model = models[name];
        expect(model, `no model "${name}"`).toBeDefined();
        expect(differencesFrom(row.expected, model?.(row.inputs) ?? {}, row.tolerance)).toEqual([]);
      },
    );
  });
}
