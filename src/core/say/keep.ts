import { expected, got, plain, type Sentence } from "./sentence.ts";

/** One sentence for each code about where the log is kept. */
export const KEEP_SENTENCES = {
  "keep-full": () => "the disk of the log is full, or was taken away.",
  "keep-read-only": () => "the log cannot be written here.",
  "keep-damaged": (p) => `the log is damaged (${plain(p)}).`,
  "keep-not-ours": () => "this is no log of Leafward.",
  "keep-newer": (p) =>
    `a newer Leafward made this log (version ${plain(p)}; this one knows up to ${expected(p)}).`,
  "keep-in-use": () => "another program is writing to the log and does not end.",
  "log-went-on": () => "somebody else wrote into the log meanwhile.",
  "keep-unopened": (p) => `the log cannot be opened (${expected(p)}).`,
  "keep-unreachable": (p) => `the database cannot be reached (${expected(p)}).`,
  "keep-not-durable": () =>
    "this database does not wait for its disk: a power cut could lose what it has answered.",
  "keep-sum-differs": () => "the file is not what it was when its sum was written beside it.",
  "keep-row": (p) => `the entry at place ${plain(p)} cannot be read, or does not lie where it belongs.`,
  "keep-places-missing": (p) => `nothing is left at place ${plain(p)}.`,
  "keep-strange": (p) => `there are entries this Leafward does not know (${plain(p)}).`,
  "backup-no-place": (p) => `there is no folder ${got(p)} to put a backup in.`,
  "backup-there": (p) => `the backup ${got(p)} is there already.`,
  "backup-of-another": (p) => `the log in that folder is of ${got(p)}, the backup of ${expected(p)}.`,
  "programme-no-database": () => "no database is named.",
  "sheets-differ": (p) => `the sheets were changed since they were taken into the log (${plain(p)}).`,
} satisfies Record<string, Sentence>;
