import { useCallback, useState } from "react";

/** What somebody has typed and not yet written into the log; a reload or a crash does not lose it.
 *  @returns the value, how to change it, and how to forget it once it is written */
export function useDraft<T>(name: string, first: T): readonly [T, (next: T) => void, () => void] {
  const key = `leafward draft ${name}`;
  const [value, setValue] = useState<T>(() => {
    const kept = localStorage.getItem(key);
    return kept === null ? first : (JSON.parse(kept) as T); // put there below
  });
  const change = useCallback(
    (next: T) => {
      localStorage.setItem(key, JSON.stringify(next));
      setValue(next);
    },
    [key],
  );
  const forget = useCallback(() => {
    localStorage.removeItem(key);
    setValue(first);
  }, [key, first]);
  return [value, change, forget];
}
