import { useRef } from "react";

/** What was shown last, while the next is not here yet: a form does not vanish under somebody's fingers. */
export function useLast<T>(value: T | null): T | null {
  const last = useRef<T | null>(null);
  if (value !== null) last.current = value;
  return last.current;
}
