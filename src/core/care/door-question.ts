import type { Care } from "./care.ts";
import { type NextQuestion, nextQuestion } from "./questions.ts";
import type { RuleBook, Test } from "./rule-book.ts";

/**
 * What is asked next at the Door: the question that can change the care, and once there is none, whatever must-ask test still keeps the
 * item there (N01). Among the forbidden are must-ask tests that a rule forbids: only an unsure can be written of them.
 * @param putOff tests somebody left open for now
 */
export function doorQuestion(book: RuleBook, care: Care, putOff: ReadonlySet<string>): NextQuestion {
  const asked = putOff.size === 0 ? book : { ...book, tests: without(book.tests, putOff) };
  const next = nextQuestion(asked, care.facts);
  const missing = care.missingTests.flatMap((id) => asked.tests.get(id) ?? []);
  const forbidden = missing.flatMap((test) => {
    const ban = care.banned.get(`test_${test.id}`);
    const isSaid = next.forbidden.some((each) => each.test.id === test.id);
    return ban && !isSaid ? [{ test, rule: ban.reasons[0]?.rule ?? "" }] : [];
  });
  const all = { ...next, forbidden: [...next.forbidden, ...forbidden] };
  const held = missing.find((test) => !care.banned.has(`test_${test.id}`) && test.waitHours === 0);
  return next.tests.length > 0 || held === undefined ? all : { ...all, tests: [held], settled: false };
}

const without = (tests: RuleBook["tests"], some: ReadonlySet<string>): ReadonlyMap<string, Test> =>
  new Map([...tests].filter(([id]) => !some.has(id)));
