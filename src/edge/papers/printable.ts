const LONGEST = 24; // characters without a place to break; the narrowest column takes half of it
const BREAK = "\u200b";

const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff\p{Cs}]+/gu;

/** The text as it can stand on paper: no control characters, turned writing directions or half letters, and a place to break inside overlong words. */
export const printable = (text: string): string =>
  text.replace(UNPRINTABLE, " ").replace(/\S{25,}/gu, breakable);

/** Every string of a view made printable. */
export function printableIn(value: unknown): unknown {
  if (typeof value === "string") return printable(value);
  if (Array.isArray(value)) return value.map(printableIn);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, printableIn(each)]));
}

const letters = new Intl.Segmenter("en", { granularity: "grapheme" });
/** Written without spaces; the typesetter itself breaks it between words. */
const THAI = /\p{Script=Thai}/u;

function breakable(word: string): string {
  if (THAI.test(word)) return word;
  const parts = [...letters.segment(word)].map((each) => each.segment);
  if (parts.length <= LONGEST) return word;
  return parts.map((part, at) => (at > 0 && at % (LONGEST / 2) === 0 ? BREAK + part : part)).join("");
}
