import { type Day, weekdayOf } from "../../units/day.ts";
import { type Across, line, PLOT, px, text } from "./marks.ts";
import type { PlanPicture } from "./plan-picture.ts";
import type { PictureWords } from "./words.ts";

/** Up to so many days the axis counts weeks, beyond it months. */
const WEEKS_UP_TO = 75;
/** Room a label takes, px. */
const ROOM = 34;

const startsMonth = (day: Day): boolean => day.endsWith("-01");

/** Thin uprights through the whole picture at each week or month. */
export const uprights = ({ days }: PlanPicture, x: Across, top: number, bottom: number): string =>
  `<path d="${marked(days)
    .map((d) => `M${px(x(d))} ${px(top)}V${px(bottom)}`)
    .join("")}" stroke="#999" stroke-width="0.5" fill="none"/>`;

/** The first day is named too, where the first mark leaves it room. */
const withFirst = (marks: readonly number[], x: Across): number[] =>
  marks[0] === 0 || x(marks[0] ?? Number.POSITIVE_INFINITY) - x(0) < ROOM + 14 ? [...marks] : [0, ...marks];

const marked = (days: readonly Day[]): number[] =>
  days.flatMap((day, d) =>
    (days.length <= WEEKS_UP_TO ? weekdayOf(day) === 0 : startsMonth(day)) ? [d] : [],
  );

export function timeAxis(picture: PlanPicture, words: PictureWords, x: Across, y: number): string[] {
  const { days } = picture;
  const name = days.length <= WEEKS_UP_TO ? words.week : words.month;
  let last = Number.NEGATIVE_INFINITY;
  const labels = withFirst(marked(days), x).flatMap((d) => {
    const at = x(d);
    if (at - last < ROOM || at > PLOT.right - 8) return [];
    const day = days[d] as Day;
    const isNewYear = last === Number.NEGATIVE_INFINITY || day.slice(5, 7) === "01";
    last = at;
    return [
      line(at, y, at, y + 5),
      text(at + 2, y + 16, d === 0 ? words.week(day) : name(day)),
      ...(isNewYear ? [text(at + 2, y + 29, words.year(day), 'font-weight="bold"')] : []),
    ];
  });
  return [
    line(PLOT.left, y, PLOT.right, y, 1.2),
    ...labels,
    text(PLOT.left - 8, y + 16, words.time(picture), 'text-anchor="end" font-size="11"'),
  ];
}
