import { expect, test } from "vitest";
import { answerChoices } from "../../../src/core/log/answer-choices.ts";
import { answerFits } from "../../../src/core/log/answer-fits.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

const tests = [...publishedRuleBook().tests.values()];

test.each(tests.map(({ id, answers }) => [id, answers] as const))(
  "every button for %s gives an answer the log takes",
  (_, answers) => {
    const choices = answerChoices(answers);
    const given = choices.kind === "words" ? choices.words : [choices.least, choices.most];
    expect(given.length).toBeGreaterThan(1);
    for (const each of [...given, "unsure"]) expect(answerFits(answers, each)).toBe(true);
  },
);

test("unsure is no choice among others: it is always there besides", () => {
  expect(answerChoices("yes/no/unsure")).toEqual({ kind: "words", words: ["yes", "no"] });
});
