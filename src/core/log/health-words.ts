/** Beginnings of words that tell of a person's health, in some languages; from memory. They begin few other words, names of people among them. */
const BEGINNINGS =
  "diagnos pregnan allerg asthm disabilit disabled chemothera covid diabet steroid depressi immunos immunoc immunod immunis epilep psychi migraine schwanger krankh krankg attest malad enceinte embaraz enferm grávid gravid zwanger gesundheit saúde salud";
/** Whole words that do; as beginnings they would stop "illuminated" and "fluff". */
const WHOLE =
  "ill illness sick sickness sickly pregnant unwell doctor hospital surgery cancer flu fever injury injured symptom symptoms lung lungs coughs coughing rash health healthy medical medication krank arzt ärztin gesund santé saude ziek gezond sakit hamil";

const beginnings = BEGINNINGS.split(" ");
const whole: ReadonlySet<string> = new Set(WHOLE.split(" "));
const LETTERS = /[\p{L}\p{M}]+/gu;
/** Soft hyphens and joiners, as they come along in text copied from elsewhere. */
const INVISIBLE = /\p{Cf}/gu;

const tellsAsBeginning = (word: string): boolean => beginnings.some((each) => word.startsWith(each));
const wordsOf = (text: string): readonly string[] =>
  text.normalize("NFKC").replace(INVISIBLE, "").toLowerCase().match(LETTERS) ?? [];

/** The words of a free text that may tell of somebody's health. Not of a title: papers may speak of illness, notes about the work need not. */
export const healthWords = (text: string): string[] =>
  wordsOf(text).filter((word) => whole.has(word) || tellsAsBeginning(word));

/** The same for a person's name, which may well begin or end like an illness. */
export const healthWordsInName = (name: string): string[] => wordsOf(name).filter(tellsAsBeginning);
