import { expected, got, plain, type Sentence } from "./sentence.ts";

/** One sentence for each code about the log. */
export const LOG_SENTENCES = {
  "not-an-event": (p) => `this is no entry of a log (${plain(p)}: ${expected(p)}).`,
  "event-altered": (p) => `the entry ${got(p)} of ${expected(p)} is not as it was written.`,
  "event-twice": (p) => `two different entries have the number ${got(p)} (${expected(p)}).`,
  "clock-ahead": (p) => `the clock of ${got(p)} does not fit this one (${expected(p)}).`,
  "chain-gap": (p) =>
    `${p.got === "1" ? "one entry is" : `${plain(p)} entries are`} missing before ${expected(p)}.`,
  "chain-fork": (p) => `there are ${plain(p)} with ${expected(p)}.`,
  "chain-torn": (p) => `${plain(p)} of ${expected(p)} does not follow on the one before it.`,
  "event-unfit": (p) => `this is no entry of its kind (${plain(p)}: ${expected(p)}).`,
  "health-words": () => "the words may tell of somebody's health.",
  "text-not-kept": (p) => `the words of ${plain(p)} were left out; the rest was taken.`,
  "snapshot-unfit": (p) => `the stored state cannot be used (${expected(p)}).`,
} satisfies Record<string, Sentence>;
