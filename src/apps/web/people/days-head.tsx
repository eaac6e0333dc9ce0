import { sayDayOfMonth, sayWeekday } from "../../../core/say/dates.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { columnOf } from "./column.ts";

/** Weekday and date above each column; every row says its days itself, so this is for the eye alone. */
export const DaysHead = ({ days }: { days: readonly Day[] }) => (
  <svg className="people-head" aria-hidden="true">
    {days.map((day, at) => (
      <svg key={day} {...columnOf(at, days.length)}>
        <text x="50%" y="18">
          {sayWeekday(day, LOCALE)}
        </text>
        <text className="people-date" x="50%" y="42">
          {sayDayOfMonth(day, LOCALE)}
        </text>
      </svg>
    ))}
  </svg>
);
