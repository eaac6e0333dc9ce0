import type { ItemRow, PartRow } from "./rows.ts";
import type { Chance } from "./seeded.ts";

export type Answers = Record<string, string | number>;

/** An item while it is being invented: its row, and the answers its trouble gives; the survey adds the rest. */
export interface Draft {
  /** The lot it is counted in: `ledger`, `file`, `plate` … */
  readonly lot: string;
  readonly row: ItemRow;
  readonly answers: Answers;
  readonly parts: { readonly row: Omit<PartRow, "item">; readonly answers: Answers }[];
}

export const draftOf = (lot: string, row: Omit<ItemRow, "item">, answers: Answers = {}): Draft => ({
  lot,
  row: { item: "", ...row },
  answers: { ...answers },
  parts: [],
});

/** Numbers the items in their order: `SR-0001`, `SR-0002` … */
export function number(drafts: readonly Draft[], prefix: string, digits: number): void {
  for (const [at, draft] of drafts.entries())
    draft.row.item = `${prefix}-${String(at + 1).padStart(digits, "0")}`;
}

/** A shelf, crate or chest; damp ones draw the growth. */
export interface Shelf {
  readonly name: string;
  /** 1 dry; the greater, the likelier growth. */
  readonly damp: number;
}

/** Racks times shelves; about one in six is damp, the lowest and those at the outer wall first of all. */
export function racks(chance: Chance, name: string, count: number, shelves: number): Shelf[] {
  return Array.from({ length: count * shelves }, (_, at) => {
    const shelf = (at % shelves) + 1;
    const low = shelf === 1 ? 3 : 1;
    const damp = chance.happens(0.16) ? chance.skewed(12, 20, 60) * low : chance.skewed(0.3, 0.6, 2) * low;
    return { name: `${name} ${Math.floor(at / shelves) + 1} shelf ${shelf}`, damp };
  });
}

/** Puts items on shelves in their order, evenly; those already placed stay. Gives the damp of an item's shelf. */
export function shelve(drafts: readonly Draft[], shelves: readonly Shelf[]): (draft: Draft) => number {
  const open = drafts.filter((draft) => draft.row.found_in === undefined);
  const each = Math.ceil(open.length / shelves.length);
  for (const [at, draft] of open.entries()) {
    const shelf = shelves[Math.floor(at / each)];
    if (shelf) draft.row.found_in = shelf.name;
  }
  const damp = new Map(shelves.map((shelf) => [shelf.name, shelf.damp]));
  return (draft) => damp.get(draft.row.found_in ?? "") ?? 0.5;
}

/** Items without any trouble yet, of one lot or all. */
export const plain = (drafts: readonly Draft[], ...lots: readonly string[]): Draft[] =>
  drafts.filter(
    (draft) =>
      Object.keys(draft.answers).every((test) => HARMLESS.has(test)) &&
      (lots.length === 0 || lots.includes(draft.lot)),
  );

/** Answers a lot is born with that are no trouble. */
const HARMLESS = new Set([
  "writing_raised_or_cut",
  "film_edge_mark",
  "opening_angle",
  "rub_mark",
  "rusted_fasteners",
  "fragments_fall",
  "boards_detached",
  "silver_mirror",
  "inserts",
]);

/** The answers written over a number of items: the trouble a story asks for, exactly so many times. */
export function trouble(drafts: readonly Draft[], answers: Answers): void {
  for (const draft of drafts) Object.assign(draft.answers, answers);
}
