const MOST = 120;

/** Whole minutes since something was begun, at least 1; null: it was not, or so long ago that somebody went away in between.
 *  @param began, now milliseconds since 1970; 0: not begun */
export function minutesSince(began: number, now: number): number | null {
  const minutes = Math.max(1, Math.round((now - began) / 60_000));
  return began === 0 || minutes > MOST ? null : minutes;
}
