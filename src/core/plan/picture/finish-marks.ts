import type { Day } from "../../units/day.ts";
import { type Across, box, line, PLOT, text } from "./marks.ts";
import type { PlanPicture } from "./plan-picture.ts";
import type { PictureWords } from "./words.ts";

const STRIP = 14;
/** Width of a letter at the size of the words, with some to spare; px. */
const LETTER = 7;

/** The range of the finish as a bar with its middle, and the end of the campaign as a double line through all panels. */
export function finishMarks(
  picture: PlanPicture,
  words: PictureWords,
  x: Across,
  top: number,
  bottom: number,
): string[] {
  const { finish, end, days } = picture;
  const edge = x(days.length);
  const [from, half, to] = [finish.p10, finish.p50, finish.p90].map((day) =>
    day === null ? edge : x(day + 1),
  );
  const [left, middle, right] = [from ?? edge, half ?? edge, to ?? edge];
  return [
    ...(finish.p10 === null ? [] : [box(left, top, Math.max(2, right - left), STRIP, "range", 1)]),
    ...(finish.p50 === null ? [] : [line(middle, top - 3, middle, bottom, 1.6, "7 3")]),
    finishWords(words.finish(picture), left, right, top),
    line(x(end + 1) - 1.5, top - 3, x(end + 1) - 1.5, bottom, 1),
    line(x(end + 1) + 1.5, top - 3, x(end + 1) + 1.5, bottom, 1),
    text(PLOT.right + 8, top + STRIP - 3, words.end(days[end] as Day), 'font-weight="bold"'),
  ];
}

/** Before the bar where there is room, else after it, else above. */
function finishWords(words: string, left: number, right: number, top: number): string {
  const width = words.length * LETTER;
  if (left - width > PLOT.left) return text(left - 8, top + STRIP - 3, words, 'text-anchor="end"');
  if (right + width < PLOT.right) return text(right + 8, top + STRIP - 3, words);
  return text(PLOT.right, top - 5, words, 'text-anchor="end"');
}
