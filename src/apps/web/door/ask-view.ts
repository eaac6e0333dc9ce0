import { doorQuestion } from "../../../core/care/door-question.ts";
import type { PartCare } from "../../../core/care/item-care.ts";
import type { NextQuestion } from "../../../core/care/questions.ts";
import type { RuleBook, Test } from "../../../core/care/rule-book.ts";
import { type AnswerChoices, answerChoices } from "../../../core/log/answer-choices.ts";

/** A test as a screen asks it. */
export interface AskedTest {
  readonly id: string;
  readonly short: string;
  readonly question: string;
  readonly how: string;
  readonly note: string;
  readonly choices: AnswerChoices;
  readonly stop: boolean;
}

/** What the survey asks now. */
export interface AskView {
  /** Empty: the item itself. */
  readonly part: string;
  /** One test, or several that a glance answers; none: nothing is left to ask. */
  readonly tests: readonly AskedTest[];
  /** Rules an answer can bring in or rule out. */
  readonly rules: number;
  readonly forbidden: readonly {
    readonly part: string;
    readonly test: AskedTest;
    readonly rule: string;
    readonly text: string;
    /** It keeps the item at the Door until an unsure is written down. */
    readonly isMustAsk: boolean;
  }[];
  readonly later: readonly LaterTest[];
}

/** A test that takes hours, or another pair of hands. */
export interface LaterTest {
  readonly part: string;
  readonly test: AskedTest;
  /** 0: at once, by somebody else. */
  readonly hours: number;
  readonly who: string;
}

export const askedTest = ({ id, short, question, how, note, answers, stop }: Test): AskedTest => ({
  ...{ id, short, question, how, note, stop },
  choices: answerChoices(answers),
});

/** The next question: of the item itself while it has one, then of its parts in turn.   @param skipped tests put off, as `part test` */
export function askView(book: RuleBook, parts: readonly PartCare[], skipped: ReadonlySet<string>): AskView {
  const asked = parts.map((each) => ({
    ...{ part: each.name, missing: each.care.missingTests },
    next: nextOf(book, each, skipped),
  }));
  const now = asked.find(({ next }) => next.tests.length > 0);
  const texts = new Map(book.rules.map(({ id, reason }) => [id, reason.text]));
  return {
    part: now?.part ?? "",
    tests: now?.next.tests.map(askedTest) ?? [],
    rules: now?.next.waiting.length ?? 0,
    forbidden: once(
      asked.flatMap(({ part, missing, next }) =>
        next.forbidden.map(({ test, rule }) => ({
          ...{ part, rule, test: askedTest(test) },
          text: texts.get(rule) ?? "",
          isMustAsk: missing.includes(test.id),
        })),
      ),
    ),
    later: once(asked.flatMap(({ part, next }) => next.later.map((test) => laterTest(part, test)))),
  };
}

const laterTest = (part: string, test: Test): LaterTest => ({
  part,
  test: askedTest(test),
  hours: test.waitHours,
  who: test.who,
});

/** A part is asked what the item itself is asked only where its own materials make another answer matter; that is said once. */
function once<T extends { readonly test: AskedTest }>(rows: readonly T[]): readonly T[] {
  return [...new Map(rows.toReversed().map((row) => [row.test.id, row])).values()].toReversed();
}

function nextOf(book: RuleBook, { name, care }: PartCare, skipped: ReadonlySet<string>): NextQuestion {
  const own = [...skipped].filter((each) => each.startsWith(`${name} `));
  return doorQuestion(book, care, new Set(own.map((each) => each.slice(name.length + 1))));
}
