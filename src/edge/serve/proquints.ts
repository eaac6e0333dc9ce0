const CONSONANTS = "bdfghjklmnprstvz";
const VOWELS = "aiou";

/**
 * Bytes as words that can be read out: two bytes are five letters, `lusab-babad`.
 * Source: Wilkerson, A Proposal for Proquints (2009), arXiv 0901.4016, from memory.
 * @param bytes an even number of them
 */
export function proquints(bytes: Uint8Array): string {
  const words: string[] = [];
  for (let at = 0; at + 1 < bytes.length; at += 2)
    words.push(word((bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0)));
  return words.join("-");
}

/** Four bits, two, four, two, four: a consonant, a vowel, and so on. */
const word = (bits: number): string =>
  CONSONANTS.charAt(bits >> 12) +
  VOWELS.charAt((bits >> 10) & 3) +
  CONSONANTS.charAt((bits >> 6) & 15) +
  VOWELS.charAt((bits >> 4) & 3) +
  CONSONANTS.charAt(bits & 15);
