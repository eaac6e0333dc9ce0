import { useEffect, useState } from "react";

/** Longer than the second tap of a double tap. */
const SETTLES_MS = 400;

/** False for the first moment: a second tap of a gloved finger must not answer the question that took the place of the one it was meant for. */
export function useSettled(): boolean {
  const [isSettled, setSettled] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(true), SETTLES_MS);
    return () => clearTimeout(timer);
  }, []);
  return isSettled;
}
