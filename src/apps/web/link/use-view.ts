import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import type { Status } from "../log/tablet.ts";
import type { ViewArgs, ViewName, ViewResult } from "../views.ts";
import { askView, onStatus, statusNow } from "./tablet-link.ts";

/** The line to the server, what waits, who this device is; null while the log is being opened. */
export const useStatus = (): Status | null => useSyncExternalStore(onStatus, statusNow);

/** What a screen shows, kept up to date as entries come in. Null: not here yet. The value before stays until the next is here. */
export function useView<N extends ViewName>(name: N, ...args: ViewArgs<N>): ViewResult<N> | null {
  const turn = useSyncExternalStore(onStatus, () => statusNow()?.turn ?? 0);
  const key = JSON.stringify([name, args]);
  const [shown, setShown] = useState<{ readonly key: string; readonly value: ViewResult<N> | null }>();
  const asked = useRef(0);
  // the key holds the arguments
  useEffect(() => {
    const mine = ++asked.current;
    void askView(name, args).then((value) => {
      if (mine === asked.current) setShown({ key, value });
    });
  }, [key, turn]);
  return shown?.key === key ? shown.value : null;
}
