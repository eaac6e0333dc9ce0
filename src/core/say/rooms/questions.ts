import type { Count } from "../page.ts";

const of = (count: Count, one: string, many: string): string => `${count.text} ${count.n === 1 ? one : many}`;

/** Words of asking the adviser, and of the adviser’s answers. */
export const questions = {
  intro: "Whatever needs an adviser is asked here, and answered here, with or without a network.",
  open: (n: Count) => `${of(n, "question waits", "questions wait")}`,
  noneOpen: "No question waits",
  noneOpenHelp: "Stop and ask stands at every item; a question asked there comes here.",
  answered: "Answered",
  noneAnswered: "Nothing is answered yet",
  noneAnsweredHelp: "An answer stays here, beside its question.",
  general: "About the campaign",
  known: "What is known of it",
  asked: (by: string, when: string) => (by === "" ? `Asked ${when}` : `Asked by ${by}, ${when}`),
  answeredBy: (by: string, when: string) => (by === "" ? `Answered ${when}` : `Answered by ${by}, ${when}`),
  yourAnswer: (name: string) => `Answer to ${name}`,
  answerHelp: "What to do, what to leave, and until when. It is not about people’s health.",
  answer: "Answer",
  answerMore: "Add to the answer",
  saidAnswered: (name: string) => `Answered ${name}`,
  mayNotAnswer: "The conservator or the lead answers; on this device questions can only be read.",
} as const;

/** Words of stop and ask, at any item. */
export const ask = {
  open: "Stop and ask the adviser",
  openGeneral: "Ask the adviser",
  text: "What do you want to know?",
  help: "What you see, where on it, and what you would do next. Nothing about anybody’s health.",
  picture: "Add a picture",
  pictureN: (n: number) => `question, picture ${n}`,
  send: "Ask",
  empty: "Write the question first.",
  emptyAnswer: "Write the answer first.",
  said: (name: string) => `Asked the adviser: ${name}`,
  until: "Until the answer is here, leave the item shut and where it is.",
} as const;

/** Why a control cannot be used now. */
export const whyNot = {
  nobody: "Choose who works here, at the top; then this can be written down.",
  role: "This device’s role does not write this down. The lead can do it, or let the device in under another role.",
} as const;
