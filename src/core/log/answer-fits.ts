import { UNSURE } from "../items/facts.ts";

/** Whether a test of the vocabulary may be answered so.   @param answers as the vocabulary lists them: `yes/no/unsure`, `number %`, `degrees`, `0-3` */
export function answerFits(answers: string, answer: string | number): boolean {
  if (answer === UNSURE) return true;
  const [least, most] = rangeOf(answers);
  return typeof answer === "number" ? least <= answer && answer <= most : answers.split("/").includes(answer);
}

/** Ends of what a number may be; none fits where answers are words. */
export function rangeOf(answers: string): readonly [number, number] {
  if (answers === "degrees") return [0, 360];
  if (answers.startsWith("number %")) return [0, 100];
  if (answers.startsWith("number")) return [0, 100_000];
  const scale = /^(\d+)-(\d+)$/.exec(answers);
  return scale ? [Number(scale[1]), Number(scale[2])] : [1, 0];
}
