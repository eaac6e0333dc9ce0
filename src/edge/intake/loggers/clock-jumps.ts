import { dayNumberOf } from "./packed-date.ts";

/** A change between standard and summer time in rows that are in the order of the file. */
export interface FoundJump {
  /** Row after the jump. */
  readonly at: number;
  readonly kind: "skipped hour" | "repeated hour";
}

/** Longest time that summer time lasts, with some days over; two thirds of a year, common practice, no source. */
const SUMMER_MINUTES = 240 * 1440;
const DAY = 1440;

/** Jumps by an hour in nights when clocks are changed somewhere, each summer with a plausible beginning and end. */
export function findJumps(minutes: Float64Array, usualStep: number): FoundJump[] {
  if (usualStep > 60 || usualStep <= 0) return [];
  const slack = Math.min(2, usualStep * 0.2);
  const found: FoundJump[] = [];
  for (let i = 1; i < minutes.length; i++) {
    const before = minutes[i - 1] as number; // i starts at 1
    const step = (minutes[i] as number) - before;
    if (step <= usualStep * 1.01 + slack && step >= usualStep * 0.99 - slack) continue;
    const hour = Math.floor((before - Math.floor(before / DAY) * DAY) / 60);
    if (hour > 3) continue;
    const day = Math.floor(before / DAY);
    if (Math.abs(step - usualStep - 60) <= slack && isSwitchDay(day, "skipped hour"))
      found.push({ at: i, kind: "skipped hour" });
    else if (Math.abs(step - usualStep + 60) <= slack && isSwitchDay(day, "repeated hour"))
      found.push({ at: i, kind: "repeated hour" });
  }
  return plausible(found, minutes);
}

/** A skipped hour wants its repeated hour within the year, and the other way round, unless the file ends or begins in summer. */
function plausible(found: readonly FoundJump[], minutes: Float64Array): FoundJump[] {
  return found.filter(({ at, kind }, i) => {
    const here = minutes[at] ?? 0;
    const other = kind === "skipped hour" ? found[i + 1] : found[i - 1];
    const end = kind === "skipped hour" ? minutes.at(-1) : minutes[0];
    if (other === undefined) return Math.abs((end ?? here) - here) <= SUMMER_MINUTES;
    return other.kind !== kind && Math.abs((minutes[other.at] ?? here) - here) <= SUMMER_MINUTES;
  });
}

/** Puts summer hours back to standard time; rows in the order of the file. */
export function takeOutSummer(minutes: Float64Array, jumps: readonly FoundJump[]): void {
  let isSummer = jumps[0]?.kind === "repeated hour";
  let next = 0;
  for (let i = 0; i < minutes.length; i++) {
    if (jumps[next]?.at === i) {
      isSummer = jumps[next]?.kind === "skipped hour";
      next++;
    }
    if (isSummer) minutes[i] = (minutes[i] as number) - 60; // i stays below the length
  }
}

/** Sundays on which clocks are changed in Europe, North America (today's and older rule), south-east Australia and New Zealand; from memory. */
function isSwitchDay(day: number, kind: FoundJump["kind"]): boolean {
  if ((((day + 4) % 7) + 7) % 7 !== 0) return false; // 0 is Sunday: 1970-01-01 was a Thursday
  const date = new Date(day * 86_400_000);
  const [year, month, monthDay] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
  const isFirst = monthDay <= 7;
  const isSecond = monthDay > 7 && monthDay <= 14;
  const isLast = dayNumberOf(year, month, monthDay + 7) < 0;
  if (kind === "skipped hour")
    return (
      (month === 3 && (isLast || isSecond)) ||
      ((month === 4 || month === 10) && isFirst) ||
      (month === 9 && isLast)
    );
  return (month === 10 && isLast) || ((month === 11 || month === 4) && isFirst);
}
