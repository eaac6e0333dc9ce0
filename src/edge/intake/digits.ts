/** First code point of the decimal digits of scripts met on survey sheets: Arabic, Persian, Devanagari, Bengali, Gurmukhi, Gujarati,
 *  Odia, Tamil, Telugu, Kannada, Malayalam, Sinhala, Thai, Lao, Tibetan, Myanmar, Khmer, full width. Source: Unicode 15, category Nd. */
const ZEROS = [
  0x660, 0x6f0, 0x966, 0x9e6, 0xa66, 0xae6, 0xb66, 0xbe6, 0xc66, 0xce6, 0xd66, 0xde6, 0xe50, 0xed0, 0xf20,
  0x1040, 0x17e0, 0xff10,
];

/** The text with every decimal digit written 0 to 9. */
export const plainDigits = (text: string): string =>
  /[^\p{ASCII}]/u.test(text) ? text.replace(/\p{Nd}/gu, (digit) => asciiDigit(digit)) : text;

function asciiDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  const zero = ZEROS.find((first) => code >= first && code < first + 10);
  return zero === undefined ? digit : String(code - zero);
}
