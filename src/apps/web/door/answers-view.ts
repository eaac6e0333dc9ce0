import type { RuleBook } from "../../../core/care/rule-book.ts";
import type { Filed, Payload } from "../../../core/log/kinds.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { correctionOf } from "../../../core/log/subjects.ts";
import type { ItemNow } from "../log/item-now.ts";
import { type AskedTest, askedTest } from "./ask-view.ts";

/** An answer that stands. */
export interface AnswerView {
  readonly part: string;
  readonly test: AskedTest;
  readonly answer: string | number;
  readonly by: string;
  readonly day: string;
  /** What takes it back. */
  readonly correction: Payload<"eventCorrected">;
  readonly isOwn: boolean;
}

/** Answers that contradict, and who gave them. */
export interface DisagreementView {
  readonly part: string;
  readonly test: AskedTest;
  readonly answers: readonly {
    readonly answer: string | number;
    readonly by: string;
    readonly day: string;
  }[];
}

type Answered = Filed<"findingRecorded" | "disagreementSettled">;

/** Answers that stand on the item and its parts, those that contradict not among them.   @param device whose own answers may be taken back */
export function answersOf(book: RuleBook, found: ItemNow, device: string): AnswerView[] {
  const answers: AnswerView[] = [];
  for (const { standing } of standingOf(found.events).matters.values()) {
    const event = standing.findLast((each) => isOf(each, "findingRecorded", "disagreementSettled"));
    const test = event && book.tests.get(event.payload.test);
    if (event === undefined || test === undefined || isDisagreed(found, event)) continue;
    const { part, answer } = event.payload;
    const isOwn = event.device === device;
    answers.push({
      part,
      answer,
      isOwn,
      ...saidBy(event),
      test: askedTest(test),
      correction: correctionOf(event),
    });
  }
  return answers;
}

const isDisagreed = ({ disagreements }: ItemNow, { payload: { part, test } }: Answered): boolean =>
  disagreements.some((each) => each.part === part && each.test === test);

/** Who says it and when; an adviser from outside is shown neither. */
function saidBy({ payload }: Answered): { readonly by: string; readonly day: string } {
  const by: unknown = payload.by; // left out where people are not shown
  return { by: Array.isArray(by) ? by.join(", ") : typeof by === "string" ? by : "", day: payload.day ?? "" };
}

export const disagreementsOf = (book: RuleBook, { disagreements }: ItemNow): DisagreementView[] =>
  disagreements.flatMap(({ part, test, answers }) => {
    const known = book.tests.get(test);
    if (known === undefined) return [];
    return [
      {
        ...{ part, test: askedTest(known) },
        answers: answers.map((event) => ({ answer: event.payload.answer, ...saidBy(event) })),
      },
    ];
  });
