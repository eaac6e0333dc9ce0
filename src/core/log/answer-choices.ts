import { UNSURE } from "../items/facts.ts";
import { rangeOf } from "./answer-fits.ts";

/** What may be answered to a test: one of these, or a number within a range; `unsure` besides, always. */
export type AnswerChoices =
  | { readonly kind: "words"; readonly words: readonly (string | number)[] }
  | { readonly kind: "number"; readonly unit: string; readonly least: number; readonly most: number };

/** @param answers as the vocabulary lists them: `yes/no/unsure`, `number % RH`, `degrees`, `0-3` */
export function answerChoices(answers: string): AnswerChoices {
  const [least, most] = rangeOf(answers);
  if (least > most) return { kind: "words", words: answers.split("/").filter((each) => each !== UNSURE) };
  if (/^\d+-\d+$/.test(answers))
    return { kind: "words", words: Array.from({ length: most - least + 1 }, (_, at) => least + at) };
  const unit = answers === "degrees" ? "°" : answers.replace(/^number ?/, "").replace("m2", "m²");
  return { kind: "number", unit, least, most };
}
