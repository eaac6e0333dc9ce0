import type { Filed } from "./kinds.ts";
import { isOf, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout, namesOn } from "./state.ts";

/** A question to the adviser, as it stands. */
export interface QuestionNow {
  readonly name: string;
  /** Null: about no item of its own. */
  readonly item: string | null;
  readonly text: string;
  readonly asked: Filed<"questionAsked">;
  /** In the order of the log; empty: it waits. */
  readonly answers: readonly Filed<"questionAnswered">[];
}

/** Every question that was asked and not taken back, the oldest first. */
export const questionsIn = (state: CampaignState): QuestionNow[] =>
  namesOn(state, "question")
    .flatMap((name) => questionOf(state, name))
    .sort((a, b) => (a.asked.id < b.asked.id ? -1 : 1));

function questionOf(state: CampaignState, name: string): QuestionNow[] {
  const { counted } = standingOf(eventsAbout(state, `question:${name}`));
  const answers = counted.filter((event) => isOf(event, "questionAnswered"));
  return counted
    .filter((event) => isOf(event, "questionAsked"))
    .map((asked) => ({
      ...{ name, asked, answers, text: asked.payload.text },
      item: asked.payload.item ?? null,
    }));
}

const MOST_OF_DEVICE = 30;

/** A name no question has and no other device gives, though it be out of reach: `Q-tablet-3`.   @param device its name, unique in the campaign */
export function nextQuestionName(state: CampaignState, device: string): string {
  const own = `Q-${device.slice(0, MOST_OF_DEVICE)}-`;
  const numbers = namesOn(state, "question").map((name) =>
    name.startsWith(own) ? Number(name.slice(own.length)) : 0,
  );
  return `${own}${Math.max(0, ...numbers.filter(Number.isFinite)) + 1}`;
}
