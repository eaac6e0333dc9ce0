import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { decideCase } from "../../../src/core/care/decide-case.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

// Worked cases: common practice, no source (test/reference/README.md).
interface Case {
  id: string;
  title: string;
  expect: Record<string, string[] | [string, string][] | undefined>;
}
const cases = ["care-cases.json", "care-cases-invented.json"].flatMap(
  (file) =>
    (
      JSON.parse(readFileSync(new URL(`../../reference/${file}`, import.meta.url), "utf8")) as {
        cases: Case[];
      }
    ).cases,
);
const book = publishedRuleBook();

describe.each(cases)("$id $title", (given) => {
  const answer = decideCase(book, given as never);
  const key = given.expect as Record<string, string[]>;
  test("finds the conditions, and no wrong one", () => {
    expect(answer.conditions).toEqual(expect.arrayContaining(key.conditions ?? []));
    for (const wrong of key.notConditions ?? []) expect(answer.conditions).not.toContain(wrong);
  });
  test.each(["require", "forbid", "prefer", "escalate"] as const)("says all it must %s", (verb) => {
    expect(answer[verb]).toEqual(expect.arrayContaining(key[verb] ?? []));
  });
  test("is not over-cautious", () => {
    for (const action of key.notForbidden ?? []) expect(answer.forbid).not.toContain(action);
    for (const action of key.notRequired ?? []) expect(answer.require).not.toContain(action);
  });
  test("keeps the order of the acts", () => {
    expect(answer.order).toEqual(expect.arrayContaining((given.expect.order as [string, string][]) ?? []));
  });
  test("gives a rule and a source for each", () => {
    for (const action of [...answer.require, ...answer.forbid])
      expect(answer.reasons.find((reason) => reason.action === action)?.source).toBeTruthy();
  });
});
