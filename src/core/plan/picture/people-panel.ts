import { type Across, area, box, line, PLOT, steps, text } from "./marks.ts";
import type { DrawnPerson, PlanPicture } from "./plan-picture.ts";
import type { PictureWords } from "./words.ts";

/** Height of all rows together, and of one at most; px. */
const ROWS = { height: 204, most: 40, gap: 4 } as const;

export const peopleHeight = ({ people }: PlanPicture): number => rowHeight(people.length) * people.length;
const rowHeight = (people: number): number => Math.min(ROWS.most, ROWS.height / Math.max(1, people));

/** A row a person: black bars of mould minutes under a broken line at the limit. */
export function peoplePanel(picture: PlanPicture, words: PictureWords, x: Across, top: number): string[] {
  const height = rowHeight(picture.people.length);
  return picture.people.flatMap((person, at) => row(person, words, x, top + at * height, height));
}

function row(person: DrawnPerson, words: PictureWords, x: Across, top: number, height: number): string[] {
  const ground = top + height;
  const full = height - ROWS.gap;
  const small = height < 20 ? 'font-size="10"' : "";
  const most = Math.max(person.limit ?? 0, ...person.minutes, 1);
  const y = (minutes: number): number => ground - (full * minutes) / most;
  const clean = person.limit === null ? [{ from: 0, to: person.minutes.length - 1 }] : person.clean;
  return [
    text(PLOT.left - 8, ground - height * 0.25, person.name, `text-anchor="end" ${small}`.trim()),
    ...person.away.map(({ from, to }) => box(x(from), top + ROWS.gap, x(to + 1) - x(from), full, "away")),
    ...clean.flatMap(({ from, to }) => cleanStretch(words, x(from), x(to + 1), ground, full, small)),
    area(steps(person.minutes, x, y), "black"),
    ...(person.limit === null ? [] : limitLines(person, x, y(person.limit))),
    ...(person.limit === null ? [] : [text(PLOT.right + 8, y(person.limit) + 9, words.limit(person), small)]),
    line(PLOT.left, ground, PLOT.right, ground, 0.8),
  ];
}

/** The limit holds where mould work may be given. */
function limitLines({ clean, minutes }: DrawnPerson, x: Across, y: number): string[] {
  const lines: string[] = [];
  let from = 0;
  for (const stretch of [...clean, { from: minutes.length, to: minutes.length }]) {
    if (stretch.from > from) lines.push(line(x(from), y, x(stretch.from), y, 0.9, "4 2"));
    from = stretch.to + 1;
  }
  return lines;
}

/** Two thin lines along the ground, with the words where there is room. */
function cleanStretch(
  words: PictureWords,
  left: number,
  right: number,
  ground: number,
  full: number,
  small: string,
): string[] {
  const middle = ground - full / 2;
  const long = right - left > 90;
  return [
    line(left, middle - 1.5, long ? (left + right) / 2 - 38 : right, middle - 1.5, 0.7),
    line(left, middle + 1.5, long ? (left + right) / 2 - 38 : right, middle + 1.5, 0.7),
    ...(long
      ? [
          text((left + right) / 2, middle + 4, words.cleanWork, `text-anchor="middle" ${small}`.trim()),
          line((left + right) / 2 + 38, middle - 1.5, right, middle - 1.5, 0.7),
          line((left + right) / 2 + 38, middle + 1.5, right, middle + 1.5, 0.7),
        ]
      : []),
  ];
}
