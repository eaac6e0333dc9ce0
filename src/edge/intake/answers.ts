import { UNSURE } from "../../core/items/facts.ts";
import { type NumberStyle, numberFrom } from "./numbers.ts";
import { vocabulary } from "./vocabulary.ts";
import { comparable, wordMeant } from "./words.ts";

/** Yes and no in languages of places where campaigns are held; from memory. */
const YES =
  "yes y yeah ja j oui o sí si s sim sì da evet ndiyo ya iya có haan हाँ हां হ্যাঁ ஆம் ఆమ్ ഉണ്ട് ඔව් ใช่ ဟုတ်တယ် បាទ ແມ່ນ نعم بله ہاں да 是 はい አዎ true";
const NO =
  "no n nope nein non nao não nee hayır hapana tidak không नहीं না இல்லை కాదు ഇല്ല නැත ไม่ မဟုတ်ဘူး ទេ ບໍ່ لا نه خیر نہیں нет 否 いいえ አይ false";
const PERHAPS =
  "maybe perhaps not_sure unclear doubtful possibly possible vielleicht unsicher unklar peut_être incertain pas_sûr quizá quizás tal_vez talvez incierto incerto forse misschien onzeker mungkin unknown";
const UNTESTED =
  "not_tested not_done untested n_a na nicht_getestet nicht_geprüft non_testé no_probado não_testado non_provato niet_getest";

const setOf = (list: string): ReadonlySet<string> => new Set(list.split(" ").map(comparable));
const yes = setOf(YES);
const no = setOf(NO);
const perhaps = setOf(PERHAPS);
const untested = setOf(UNTESTED);

/** yes or no in several languages and short forms; null: neither. */
export function yesOrNoFrom(written: string | boolean): boolean | null {
  if (typeof written === "boolean") return written;
  const plain = comparable(written);
  return yes.has(plain) ? true : no.has(plain) ? false : null;
}

/** What a test of `data/vocabulary.json` may be answered with. */
export interface AnswerKind {
  readonly words: readonly string[];
  readonly range: { readonly min: number; readonly max: number; readonly unit: string } | null;
}

/** Ranges the vocabulary leaves open. Level and share are what their scales allow; the angle is a full turn. */
function rangeOf(answers: string): AnswerKind["range"] {
  if (answers === "degrees") return { min: 0, max: 360, unit: "°" };
  if (answers.startsWith("number %")) return { min: 0, max: 100, unit: answers.slice("number ".length) };
  if (answers.startsWith("number")) return { min: 0, max: 100_000, unit: answers.slice("number ".length) };
  const scale = /^(\d+)-(\d+)$/.exec(answers);
  return scale ? { min: Number(scale[1]), max: Number(scale[2]), unit: "" } : null;
}

/** The answers of a test, or null when there is no such test. Unsure is an answer to every test. */
export function answersOf(test: string): AnswerKind | null {
  const entry = Object.hasOwn(vocabulary.tests, test) ? vocabulary.tests[test] : undefined;
  if (entry === undefined) return null;
  const range = rangeOf(entry.answers);
  const own = range === null ? entry.answers.split("/") : [];
  return { words: own.includes(UNSURE) ? own : [...own, UNSURE], range };
}

export type AnswerReading =
  | { readonly kind: "answer"; readonly answer: string | number; readonly readAsUnsure: boolean }
  | { readonly kind: "not tested" }
  | { readonly kind: "two ways" }
  | { readonly kind: "out of range" }
  | { readonly kind: "none" };

const answered = (answer: string | number): AnswerReading => ({
  kind: "answer",
  answer,
  readAsUnsure: false,
});

/** Reads what was written for a test: its own words, yes and no in other languages, a number, or one of the ways to say perhaps. */
export function answerFrom(
  written: string | number | boolean,
  allowed: AnswerKind,
  style: NumberStyle,
): AnswerReading {
  const text = typeof written === "boolean" ? (written ? "yes" : "no") : String(written).trim();
  if (typeof written === "string" && allowed.words.includes(written)) return answered(written);
  if (/^[-–—]?$/.test(text) || untested.has(comparable(text))) return { kind: "not tested" };
  const own = wordMeant(text, allowed.words);
  if (own !== null && comparable(text) !== "") return answered(own);
  if (/^\?+$/.test(text) || perhaps.has(comparable(text)))
    return { kind: "answer", answer: UNSURE, readAsUnsure: true };
  if (allowed.range !== null) return numberAnswer(written, text, allowed.range, style);
  const meant = yesOrNoFrom(text);
  const plain = meant === null ? null : meant ? "yes" : "no";
  return plain !== null && allowed.words.includes(plain) ? answered(plain) : { kind: "none" };
}

function numberAnswer(
  written: string | number | boolean,
  text: string,
  { min, max, unit }: NonNullable<AnswerKind["range"]>,
  style: NumberStyle,
): AnswerReading {
  const n = typeof written === "number" ? written : numberFrom(text, style, false, unit);
  if (n === "two ways") return { kind: "two ways" };
  if (n === null) return { kind: "none" };
  return n < min || n > max ? { kind: "out of range" } : answered(n);
}

/** The allowed answers in words, for a person. */
export function sayAnswers({ words, range }: AnswerKind): string {
  const number =
    range === null
      ? []
      : [`a number ${range.min} to ${range.max}${range.unit === "" ? "" : ` ${range.unit}`}`];
  return [...number, ...words].join(", ");
}
