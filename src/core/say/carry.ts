import { expected, got, plain, type Sentence } from "./sentence.ts";

/** One sentence for each code about carry files. */
export const CARRY_SENTENCES = {
  "carry-no-log": () => "there is no log to carry yet.",
  "carry-no-place": (p) => `there is no folder ${got(p)} to put the file in.`,
  "carry-not-written": (p) => `the file could not be written to ${got(p)} (${expected(p)}).`,
  "carry-for-nobody": (p) => `no one device is known by the words ${got(p)} (known: ${expected(p)}).`,
  "carry-unread": (p) => `the file ${got(p)} cannot be read (${expected(p)}).`,
  "carry-not-ours": () => "this is no carry file, or nothing of it is whole.",
  "carry-manifest-lost": () => "both lists of what the file holds are damaged.",
  "carry-signature": () => "the list of what the file holds is not as its device signed it.",
  "carry-newer": (p) =>
    `a newer Leafward made this file (version ${plain(p)}; this one knows up to ${expected(p)}).`,
  "carry-of-another": (p) => `the file is of ${got(p)}, this folder of ${expected(p)}.`,
  "carry-unknown-device": () => "the file is signed by a device that is not known here yet.",
  "carry-words-differ": (p) => `${got(p)} are not the words of the device that signed it.`,
  "carry-key-unreadable": () => "the key of this device cannot be read.",
  "carry-known-unreadable": () => "the list of known devices cannot be read.",
  "carry-bytes-changed": (p) => `the bytes ${plain(p)} are not as they were written.`,
  "carry-block-lost": (p) =>
    `${plain(p).includes(" to ") ? `blocks ${plain(p)} are` : `block ${plain(p)} is`} changed or missing (${expected(p)}).`,
  "carry-block-strange": (p) =>
    `${p.got === "1" ? "one block is" : `${plain(p)} blocks are`} there that the file's own list does not name.`,
  "carry-entry-of-another": (p) => `an entry is of ${got(p)}, not of ${expected(p)}.`,
  "carry-entries-missing": (p) => `entries of ${plain(p)} are still missing here: ${expected(p)}.`,
} satisfies Record<string, Sentence>;
