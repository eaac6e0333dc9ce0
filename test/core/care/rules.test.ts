import { describe, expect, test } from "vitest";
import { truthOfRule } from "../../../src/core/care/evaluate.ts";
import { sayFact } from "../../../src/core/say/facts.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

const book = publishedRuleBook();
const words = (given: Readonly<Record<string, never>>): string =>
  Object.entries(given)
    .map(([fact, value]) => sayFact(book.facts, fact, value))
    .join(", ") || "anything";

describe.each(book.rules.map((rule) => [rule.id, rule.reason.text, rule] as const))(
  "%s %s",
  (_, __, rule) => {
    test.each(rule.examples.map((each) => [each.expect, words(each.given as never), each.given] as const))(
      "%s: %s",
      (wanted, _words, given) => {
        expect(truthOfRule(book, rule, given)).toBe(wanted);
      },
    );
  },
);
