import { memo } from "react";
import { sayDayOfMonth, sayDayRange, sayWeekday } from "../../../../core/say/dates.ts";
import { count, LOCALE } from "../../frame/reader.ts";
import { type Calendar, dayAt, type Row } from "./calendar.ts";
import { cellPaths, markPath, stationPath } from "./cell-paths.ts";
import { DAY, FRAME, HEAD, heightOf, WEEK } from "./sizes.ts";
import { weekWords } from "./spot-words.ts";

interface WeekStripProps {
  readonly calendar: Calendar;
  readonly week: number;
  readonly rows: readonly Row[];
  readonly tops: readonly number[];
  /** Place of today. */
  readonly today: number;
}

/** One week of everybody, drawn in few strokes, as fifty of them are scrolled through. */
export const WeekStrip = memo(({ calendar, week, rows, tops, today }: WeekStripProps) => (
  <svg
    className="week-strip"
    style={{ insetInlineStart: week * WEEK }}
    width={WEEK}
    height={tops.at(-1) ?? HEAD}
    direction="ltr"
  >
    <text className="week-strip-range" x={6} y={22}>
      {sayDayRange(dayAt(calendar, week * 7), dayAt(calendar, week * 7 + 6), LOCALE)}
    </text>
    {Array.from({ length: 7 }, (_, n) => dayAt(calendar, week * 7 + n)).map((day, n) => (
      <text
        key={day}
        className="week-strip-day"
        data-today={week * 7 + n === today}
        x={n * DAY + DAY / 2}
        y={52}
      >
        {`${sayWeekday(day, LOCALE).slice(0, 2)} ${sayDayOfMonth(day, LOCALE)}`}
      </text>
    ))}
    <path className="week-strip-line" d={`M0 0V${tops.at(-1) ?? HEAD}${linesOf(tops)}`} />
    {rows.map((row, at) => (
      <g key={keyOf(row)} transform={`translate(0 ${tops[at] ?? 0})`}>
        <RowOfWeek row={row} week={week} />
      </g>
    ))}
  </svg>
));

const linesOf = (tops: readonly number[]): string => tops.map((top) => `M0 ${top}H${WEEK}`).join("");

const keyOf = (row: Row): string =>
  row.kind === "person" ? `p ${row.person.code}` : row.kind === "station" ? `s ${row.station.id}` : row.what;

function RowOfWeek({ row, week }: { readonly row: Row; readonly week: number }) {
  if (row.kind === "station") return <path className="week-strip-open" d={stationPath(row.station, week)} />;
  if (row.kind === "marks")
    return row.marks
      .filter(({ at }) => Math.floor(at / 7) === week)
      .map((mark, n) => (
        <path
          // marks have no names of their own, and a drawing is made anew with them
          key={`${mark.at} ${mark.store} ${n}`}
          className="week-strip-mark"
          d={markPath(mark, heightOf(row))}
        />
      ));
  const { near, bars, clean, away } = cellPaths(row, week);
  const said = weekWords(row, week);
  return (
    <>
      <path className="week-strip-away" d={away} />
      <path className="week-strip-clean" d={clean} />
      <path className="week-strip-frame" d={near} />
      <path className="week-strip-bar" d={bars} />
      {said !== null &&
        Array.from(row.near.subarray(week * 7, week * 7 + 7)).map(
          (minutes, n) =>
            minutes > 0 && (
              // seven days of a week, in their places
              <text key={n} className="week-strip-minutes" x={n * DAY + DAY / 2} y={FRAME + 24}>
                {count(minutes).text}
              </text>
            ),
        )}
      {said !== null && (
        <text className="week-strip-week" x={6} y={FRAME + 48}>
          {said}
        </text>
      )}
    </>
  );
}
