import { type RefObject, useCallback, useEffect, useState } from "react";
import { WEEK } from "./sizes.ts";

/** Weeks drawn on either side of those in sight, so that none is missing while somebody scrolls. */
const BESIDE = 2;

export interface WeeksInSight {
  readonly first: number;
  readonly last: number;
  /** The week at the beginning of the box. */
  readonly at: number;
}

/** The weeks to draw, kept up to date as the box is scrolled or its width changes. */
export function useWeeksInSight(
  box: RefObject<HTMLElement | null>,
  weeks: number,
  isShown: boolean,
): WeeksInSight {
  const [sight, setSight] = useState<WeeksInSight>({ first: 0, last: 6, at: 0 });
  const look = useCallback(() => {
    const element = box.current;
    if (element === null) return;
    const left = Math.abs(element.scrollLeft); // it counts down from 0 where the page runs from right to left
    const at = Math.round(left / WEEK);
    const first = Math.max(0, at - BESIDE);
    const last = Math.min(weeks - 1, Math.floor((left + element.clientWidth) / WEEK) + BESIDE);
    setSight((before) =>
      before.at === at && before.first === first && before.last === last ? before : { first, last, at },
    );
  }, [box, weeks]);
  useEffect(() => {
    const element = box.current;
    if (element === null || !isShown) return;
    look();
    element.addEventListener("scroll", look, { passive: true });
    const watch = new ResizeObserver(look);
    watch.observe(element);
    return () => {
      element.removeEventListener("scroll", look);
      watch.disconnect();
    };
  }, [box, look, isShown]);
  return sight;
}
