import { nextQuestionName, questionsIn } from "../../../core/log/questions-now.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import type { Now } from "../log/now.ts";

/** A question with its answers, as the adviser reads it. */
export interface QuestionView {
  readonly name: string;
  readonly item: string | null;
  readonly title: string;
  readonly text: string;
  /** Who asked; empty where people are not shown. */
  readonly by: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** By SHA-256. */
  readonly pictures: readonly string[];
  readonly answers: readonly { readonly text: string; readonly by: string; readonly at: number }[];
}

export interface QuestionsView {
  /** The oldest first. */
  readonly open: readonly QuestionView[];
  /** The newest first. */
  readonly answered: readonly QuestionView[];
  readonly mayAnswer: boolean;
  readonly mayAsk: boolean;
}

/** Questions to the adviser. Whoever is from outside the campaign sees roles and no people. */
function questionsView(now: Now): QuestionsView {
  const all = questionsIn(now.state).map((question): QuestionView => {
    const { name, item, text, asked, answers } = question;
    return {
      ...{ name, item, text },
      title: (item === null ? null : now.item(item))?.item.title ?? "",
      by: asked.who.person ?? asked.who.role,
      at: asked.clock.wall,
      pictures: item === null ? [] : picturesOf(now, item, name),
      answers: answers.map(({ payload, who, clock }) => ({
        text: payload.text,
        by: who.role,
        at: clock.wall,
      })),
    };
  });
  return {
    open: all.filter(({ answers }) => answers.length === 0),
    answered: all.filter(({ answers }) => answers.length > 0).reverse(),
    mayAnswer: now.me.writes.includes("questionAnswered"),
    mayAsk: now.me.writes.includes("questionAsked"),
  };
}

const picturesOf = (now: Now, item: string, question: string): readonly string[] => {
  const found = now.item(item);
  if (found === null) return [];
  return standingOf(found.events).counted.flatMap((event) =>
    isOf(event, "pictureTaken") && event.payload.shot === question ? [event.payload.picture] : [],
  );
};

export const questionViews = {
  questions: questionsView,
  nextQuestionName: (now: Now): string => nextQuestionName(now.state, now.me.device),
} as const;
