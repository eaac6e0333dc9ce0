import { type PaperOptions, print } from "./print.ts";
import type { BagTagView, BenchCardView, DaySheetView, OrderListView } from "./views.ts";

export type { PaperOptions } from "./print.ts";

/** A page or more for each person. */
export const daySheets = (views: readonly DaySheetView[], options: PaperOptions): Promise<Uint8Array> =>
  print("day-sheet", { views, signs: views.flatMap((view) => view.signs), codes: [] }, options);

/** A page or two for each item, in one file. For more than a hundred or so, `benchCardFiles` needs far less memory and time. */
export const benchCards = (views: readonly BenchCardView[], options: PaperOptions): Promise<Uint8Array> =>
  print(
    "bench-card",
    { views, signs: views.flatMap((view) => view.signs), codes: views.map((view) => view.item) },
    options,
  );

/** Cards to a file: the typesetter's time for a card doubles by about 1,000 cards, its memory by then is over 4 GB. */
const CARDS_A_FILE = 100;
/** Each press takes about 350 MB for a file of cards. */
const PRESSES = 2;

/** The bench cards in files of at most a hundred cards, in the order given. */
export async function benchCardFiles(
  views: readonly BenchCardView[],
  options: PaperOptions,
): Promise<Uint8Array[]> {
  const files: Uint8Array[] = [];
  const starts = Array.from({ length: Math.ceil(views.length / CARDS_A_FILE) }, (_, n) => n * CARDS_A_FILE);
  let next = 0;
  const work = async (): Promise<void> => {
    for (let file = next++; file < starts.length; file = next++) {
      const from = file * CARDS_A_FILE;
      files[file] = await benchCards(views.slice(from, from + CARDS_A_FILE), options);
    }
  };
  await Promise.all(Array.from({ length: PRESSES }, work));
  return files;
}

/** Four tags to a page, with lines to cut along. */
export const bagTags = (views: readonly BagTagView[], options: PaperOptions): Promise<Uint8Array> =>
  print(
    "bag-tag",
    { views, signs: views.flatMap((view) => view.signs), codes: views.map((view) => view.number) },
    options,
  );

export const orderList = (view: OrderListView, options: PaperOptions): Promise<Uint8Array> =>
  print("order-list", { views: [view], signs: [], codes: [] }, options);
