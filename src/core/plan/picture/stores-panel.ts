import type { Day } from "../../units/day.ts";
import type { DrawnStore } from "./drawn-stores.ts";
import { type Across, area, arrow, cross, diamond, line, PLOT, steps, text } from "./marks.ts";
import type { PlanPicture } from "./plan-picture.ts";
import type { PictureWords } from "./words.ts";

const ROW = 34;
const FULL = 24;
/** Words keep clear of the dots behind them. */
const HALO = 'paint-order="stroke" stroke="#fff" stroke-width="3"';
/** Letters a line of a name has room for. */
const NAME_ROOM = 25;

export const storesHeight = ({ stores }: PlanPicture): number => ROW * stores.length;

/** A row a store, each to its own full shelf. */
export const storesPanel = (picture: PlanPicture, words: PictureWords, x: Across, top: number): string[] =>
  picture.stores.flatMap((store, at) => row(store, picture.days, words, x, top + at * ROW));

function row(store: DrawnStore, days: readonly Day[], words: PictureWords, x: Across, top: number): string[] {
  const ground = top + ROW;
  const y = (quantity: number): number => ground - (FULL * quantity) / Math.max(1e-9, store.full);
  const gone = store.out;
  return [
    ...nameLines(words.storeLabel(store), ground),
    area(steps(store.level, x, y), "used", 0.8),
    line(PLOT.left, ground, PLOT.right, ground, 0.8),
    ...store.deliveries.flatMap(({ day, quantity }) => [
      arrow(x(day), ground - FULL - 3),
      text(x(day) - 6, ground - FULL + 6, words.delivery(quantity), `text-anchor="end" ${HALO}`),
    ]),
    ...(store.orderBy === null ? [] : [diamond(x(store.orderBy), ground)]),
    ...(gone === null ? [] : goneMarks(x(gone), ground, words.out(days[gone] as Day))),
    text(PLOT.right + 8, ground - FULL + 10, words.storeFirst(store)),
  ];
}

/** A long name in two lines. */
function nameLines(name: string, ground: number): string[] {
  const lines = [""];
  for (const word of name.split(" ")) {
    const last = lines.at(-1) ?? "";
    if (last === "") lines[lines.length - 1] = word;
    else if (`${last} ${word}`.length <= NAME_ROOM || lines.length === 2)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.map((words, at) =>
    text(
      PLOT.left - 8,
      ground - 9 + (at - (lines.length - 1) / 2) * 12,
      clipped(words),
      'text-anchor="end" font-size="11"',
    ),
  );
}

const clipped = (words: string): string =>
  words.length > NAME_ROOM + 2 ? `${words.slice(0, NAME_ROOM + 1)}…` : words;

/** The words stand on the side that has room. */
const goneMarks = (at: number, ground: number, words: string): string[] => [
  cross(at, ground - 5),
  at > PLOT.right - 110
    ? text(at - 8, ground - 4, words, `text-anchor="end" ${HALO}`)
    : text(at + 8, ground - 4, words, HALO),
];
