import { sayDay } from "../../../core/say/dates.ts";
import { sayClock } from "../../../core/say/day-sheet.ts";
import { ward as words } from "../../../core/say/rooms/ward.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import type { When } from "./ward-items.ts";

/** `Fri 29 May, 14:00`, or `today, 14:00`. */
export const sayWhen = ({ day, minute }: When, today?: Day): string =>
  day === today
    ? words.today(sayClock(minute, LOCALE))
    : `${sayDay(day, LOCALE, "short")}, ${sayClock(minute, LOCALE)}`;
