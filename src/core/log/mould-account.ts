import type { CalendarEntry, Limits, Person } from "../items/campaign.ts";
import { addDays, type Day, mondayOf } from "../units/day.ts";
import type { NearMould, Worn } from "./minutes-near-mould.ts";

/** A person's account of work near mould at one moment, against the limits. */
export interface MouldAccount {
  /** Minutes near mould today, what runs now among them. */
  readonly today: number;
  readonly leftToday: number;
  /** Since Monday, today among them: minutes, and days that had any. */
  readonly week: number;
  readonly daysThisWeek: number;
  /** Days near mould in a row, up to today if it has had any, else up to yesterday. */
  readonly daysInARow: number;
  /** Minutes in the mask since the last break. */
  readonly maskWorn: number;
  /** Minutes until it comes off; null: the limits ask for no break. */
  readonly maskLeft: number | null;
  /** Minutes after midnight when the break that is due is over; null: none is due, or nobody wrote when the mask came off. */
  readonly breakUntil: number | null;
  /** What stands against work near mould now; null: nothing. */
  readonly stop: NearStop | null;
}

/** `clean work`: given no work near mould these days, whatever the cause. The others: a limit is reached. */
export type NearStop = "clean work" | "day" | "week" | "row" | "mask";

/** What an account is drawn up from. */
export interface AccountAsk {
  readonly near: NearMould | undefined;
  readonly limits: Limits;
  readonly day: Day;
  /** Minutes after midnight. */
  readonly minute: number;
  /** Minutes after midnight when the work near mould that runs now was begun; null: none runs. */
  readonly runsSince: number | null;
  readonly mayMould: boolean;
}

/** How a person stands to the limits. A limit that is not known to be kept counts as reached. */
export function mouldAccount({ near, limits, day, minute, runsSince, mayMould }: AccountAsk): MouldAccount {
  const days = near?.days ?? new Map<Day, number>();
  const running = runsSince === null ? 0 : Math.max(0, minute - runsSince);
  const today = (days.get(day) ?? 0) + running;
  const before = rowBefore(days, day);
  const thisWeek = [...days].filter(([each]) => each >= mondayOf(day) && each < day);
  const mask = maskNow(near?.worn ?? [], { limits, day, minute, runsSince });
  const account = {
    today,
    leftToday: Math.max(0, limits.exposedMinutesADay.value - today),
    week: thisWeek.reduce((sum, [, minutes]) => sum + minutes, today),
    daysThisWeek: thisWeek.length + (today > 0 ? 1 : 0),
    daysInARow: before + (today > 0 ? 1 : 0),
    ...mask,
  };
  const stop: NearStop | null = !mayMould
    ? "clean work"
    : thisWeek.length >= limits.exposedDaysAWeek.value
      ? "week"
      : before >= limits.exposedDaysInARow.value
        ? "row"
        : account.leftToday <= 0
          ? "day"
          : mask.maskLeft !== null && mask.maskLeft <= 0
            ? "mask"
            : null;
  return { ...account, stop };
}

function rowBefore(days: NearMould["days"], day: Day): number {
  let row = 0;
  while (days.has(addDays(day, -1 - row))) row++;
  return row;
}

type MaskAsk = Pick<AccountAsk, "limits" | "day" | "minute" | "runsSince">;

/** Stretches in the mask add up until as long a break as the limits ask for lies between two of them. */
function maskNow(
  worn: readonly Worn[],
  { limits, day, minute, runsSince }: MaskAsk,
): Pick<MouldAccount, "maskWorn" | "maskLeft" | "breakUntil"> {
  const [most, rest] = [limits.maskMinutes.value, limits.maskBreakMinutes.value];
  if (most <= 0) return { maskWorn: 0, maskLeft: null, breakUntil: null };
  const own = worn.filter((each) => each.day === day);
  const running = runsSince === null ? null : Math.max(0, minute - runsSince);
  const now = running === null ? [] : [{ from: minute - running, minutes: running, maskMinutes: running }];
  let [maskWorn, off]: [number, number | null] = [0, null];
  for (const { from, minutes, maskMinutes } of [...own, ...now]) {
    if (from !== null && off !== null && from - off >= rest) maskWorn = 0;
    maskWorn += maskMinutes;
    off = from === null ? (off === null ? null : off + minutes) : Math.max(off ?? 0, from + minutes);
  }
  if (running === null && off !== null && minute - off >= rest) maskWorn = 0;
  const maskLeft = most - maskWorn;
  const isDue = running === null && maskLeft <= 0 && off !== null;
  return { maskWorn, maskLeft: Math.max(0, maskLeft), breakUntil: isDue ? (off ?? 0) + rest : null };
}

/** Whether somebody may be given work near mould on a day: listed for it, and not on clean work. Anything but a clear yes is no. */
export const mayWorkNearMould = (
  person: Person | undefined,
  calendar: readonly CalendarEntry[],
  day: Day,
): boolean =>
  person?.mouldWork === true &&
  !calendar.some(
    ({ who, what, from, to }) =>
      what === "clean work" && (who === person.code || who === "everyone") && from <= day && day <= to,
  );
