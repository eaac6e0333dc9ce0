import { useEffect, useState } from "react";
import { useView } from "../link/use-view.ts";
import type { ReadyBand } from "./shelf-view.ts";

/** When each bag may be ready, bag by bag as it is reckoned. */
export function useBands(): Readonly<Record<string, ReadyBand>> {
  const [round, setRound] = useState(0);
  const [bands, setBands] = useState<Readonly<Record<string, ReadyBand>>>({});
  const found = useView("wardBands", round);
  useEffect(() => {
    if (found === null) return;
    setBands((before) => ({ ...before, ...found.bands }));
    if (found.toCome > 0) setRound((last) => last + 1);
  }, [found]);
  return bands;
}
