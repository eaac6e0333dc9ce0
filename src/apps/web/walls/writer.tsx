import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from "react";
import { useStatus } from "../link/use-view.ts";

/** Who works on this device now. */
export interface Writer {
  /** Their code; null: nobody was chosen yet. */
  readonly person: string | null;
  /** Whether the device is one person's own. */
  readonly isFixed: boolean;
  choose(person: string | null): void;
}

const KEY = "leafward writer";
const WriterContext = createContext<Writer>({ person: null, isFixed: false, choose: () => {} });

export const useWriter = (): Writer => useContext(WriterContext);

export function WriterProvider({ children }: { readonly children: ReactNode }) {
  const own = useStatus()?.me.person ?? null;
  const [chosen, setChosen] = useState(() => localStorage.getItem(KEY));
  const choose = useCallback((person: string | null) => {
    if (person === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, person);
    setChosen(person);
  }, []);
  const writer = useMemo(
    () => ({ person: own ?? chosen, isFixed: own !== null, choose }),
    [own, chosen, choose],
  );
  return <WriterContext value={writer}>{children}</WriterContext>;
}
