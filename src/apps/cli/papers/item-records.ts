import { PAPERS_WORDS } from "../../../core/say/papers/command.ts";
import { itemHistory, pictureHashes } from "../../../edge/papers/item-history.ts";
import { picturesOf, type RecordPicture, readPictures } from "../../../edge/papers/item-pictures.ts";
import type { RecordOf } from "../../../edge/papers/item-record-view.ts";
import { itemRecordView } from "../../../edge/papers/item-record-view.ts";
import { sheets } from "../../../edge/papers/sheet-view.ts";
import { numbered, type PaperSource, type Printed } from "./printed.ts";

/** Records to a file: the typesetter's memory grows with it. */
const A_FILE = 100;

/** The record of the item asked for, else of every item. */
export async function itemRecords(source: PaperSource): Promise<Printed[]> {
  const { campaign, book, care, routes, state, item } = source;
  const { pictures, unread } = await readPictures(source.folder);
  for (const name of unread) source.complain(PAPERS_WORDS.unreadPicture(name));
  const wanted = care.filter((each) => item === null || each.item.id === item);
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  const records = wanted.flatMap((each) => {
    const route = routeOf.get(each.item.id);
    const own = picturesOf(pictures, each.item.id, pictureHashes(state, each.item.id));
    const history = itemHistory(campaign, state, each.item.id);
    return route ? [{ record: { campaign, book, care: each, route, history, pictures: own }, own }] : [];
  });
  const files: Uint8Array[] = [];
  for (let from = 0; from < records.length; from += A_FILE)
    files.push(await print(records.slice(from, from + A_FILE), source));
  return numbered(item === null ? "item-records" : `item-${item.replace(/[^\p{L}\p{N}_-]/gu, "-")}`, files);
}

interface OneRecord {
  readonly record: RecordOf;
  readonly own: readonly RecordPicture[];
}

/** A picture that cannot be decoded must not cost the record: then it is printed without. */
async function print(records: readonly OneRecord[], { sheet, complain }: PaperSource): Promise<Uint8Array> {
  const pictures = new Map(records.flatMap(({ own }) => own.map((each) => [each.name, each] as const)));
  const views = records.map(({ record }) => itemRecordView(record));
  try {
    return await sheets(views, { sheet }, [...pictures.values()]);
  } catch (error) {
    if (pictures.size === 0) throw error;
    complain(PAPERS_WORDS.noPictures);
    return sheets(
      records.map(({ record }) => itemRecordView({ ...record, pictures: [] })),
      { sheet },
    );
  }
}
