const wordsOf = (text: string): Set<string> => new Set(text.toLowerCase().match(/[\p{L}\p{N}&.]+/gu) ?? []);

/** The entry whose name shares most words with the name asked for; of equals, the one with fewest words beyond.
 *  For rows that record a published fact: another's wording of a name finds our entry.   @throws Error when no word is shared */
export function entryNamed<T>(asked: string, entries: readonly T[], nameOf: (entry: T) => string): T {
  const wanted = wordsOf(asked);
  const score = (entry: T): number => {
    const have = wordsOf(nameOf(entry));
    const shared = [...wanted].filter((word) => have.has(word)).length;
    return shared === 0 ? 0 : shared + 1 / (2 + have.size);
  };
  const best = [...entries].sort((a, b) => score(b) - score(a))[0];
  if (best === undefined || score(best) === 0) throw new Error(`no entry is named like "${asked}"`);
  return best;
}
