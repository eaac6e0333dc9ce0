/** The form under which words are compared: lower case, letters and digits, one underscore between. */
export const comparable = (text: string): string =>
  text
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, "_")
    .replace(/^_+|_+$/g, "");

/** Allowed words by their compared form, kept for each list. */
const indexes = new WeakMap<readonly string[], ReadonlyMap<string, string>>();

function indexOf(allowed: readonly string[]): ReadonlyMap<string, string> {
  const known = indexes.get(allowed);
  if (known) return known;
  const index = new Map<string, string>();
  for (const word of allowed) if (!index.has(comparable(word))) index.set(comparable(word), word);
  for (const word of allowed) index.set(word, word);
  indexes.set(allowed, index);
  return index;
}

/** The allowed word meant, whatever its case, spaces and hyphens; null: none. */
export function wordMeant(text: string, allowed: readonly string[]): string | null {
  const index = indexOf(allowed);
  return index.get(text) ?? index.get(comparable(text)) ?? null;
}

/** The allowed word with the fewest changed letters, or null when none is near: at most two in five letters. */
export function nearestWord(text: string, allowed: Iterable<string>): string | null {
  const wanted = comparable(text).slice(0, 60);
  let best: string | null = null;
  let least = Math.max(1, Math.floor(wanted.length * 0.4)) + 1;
  for (const word of allowed) {
    const other = comparable(word);
    if (Math.abs(other.length - wanted.length) >= least) continue;
    const apart = changes(wanted, other, least);
    if (apart < least) [best, least] = [word, apart];
  }
  return best;
}

/** Letters to insert, delete or replace to come from one word to the other (Levenshtein 1966); gives up at `most`. */
function changes(a: string, b: string, most: number): number {
  let above = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const replaced = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const value = Math.min(replaced, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      row.push(value);
      if (value < least) least = value;
    }
    if (least >= most) return most;
    above = row;
  }
  return above[b.length] ?? most;
}

/** The words in one line; long lists are cut. */
export const listed = (words: readonly string[], most = 24): string =>
  words.length <= most ? words.join(", ") : `${words.slice(0, most).join(", ")} …`;
