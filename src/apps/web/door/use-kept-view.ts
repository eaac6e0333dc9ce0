import { useRef } from "react";
import { useView } from "../link/use-view.ts";
import type { ViewArgs, ViewName, ViewResult } from "../views.ts";

/** As `useView`, but what was shown stays until the answer to other arguments is here, so that nothing flickers. */
export function useKeptView<N extends ViewName>(name: N, ...args: ViewArgs<N>): ViewResult<N> | null {
  const view = useView(name, ...args);
  const last = useRef<ViewResult<N> | null>(null);
  if (view !== null) last.current = view;
  return last.current;
}
