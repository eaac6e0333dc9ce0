import { type Draft, plain, type Shelf, shelve, trouble } from "../draft.ts";
import { onImage } from "../growth.ts";
import type { Chance } from "../seeded.ts";

/** Where each lot stands; the plate cabinets under the wash basin took the damp. */
const PLACES: Readonly<Record<string, readonly Shelf[]>> = {
  plate: rows("Plate cabinet", 8, 9, (row, shelf) => (row >= 6 ? 18 : shelf === 1 ? 4 : 0.4)),
  film: rows("Film room rack", 4, 6, () => 1),
  "album or print": rows("Print press", 5, 4, () => 1),
  gazette: rows("Attic bay", 10, 3, () => 1),
  "account book": rows("Office shelf", 2, 3, () => 1),
};

function rows(
  name: string,
  count: number,
  shelves: number,
  damp: (row: number, shelf: number) => number,
): Shelf[] {
  return Array.from({ length: count * shelves }, (_, at) => {
    const row = Math.floor(at / shelves) + 1;
    const shelf = (at % shelves) + 1;
    return { name: `${name} ${row} shelf ${shelf}`, damp: damp(row, shelf) };
  });
}

const lot = (drafts: readonly Draft[], name: string): Draft[] => drafts.filter((draft) => draft.lot === name);

/** Everything that is wrong in the house of the studio and the paper. */
export function befall(chance: Chance, drafts: readonly Draft[]): void {
  riverStore(drafts);
  for (const [name, shelves] of Object.entries(PLACES)) {
    const dampOf = shelve(lot(drafts, name), shelves);
    if (name === "plate") platesGrow(chance, lot(drafts, name), dampOf);
  }
  broken(chance, drafts);
  stops(chance, drafts);
}

/** Two dozen quarters stand in the river office's store, muddy from the last flood; six with their feet in seepage. */
function riverStore(drafts: readonly Draft[]): void {
  const there = lot(drafts, "gazette").slice(200, 224);
  for (const draft of there)
    Object.assign(draft.row, { found_in: "River office store", arrives: "2027-02-22" });
  trouble(there, { floodwater_dirty: "yes", damp_to_touch: "yes", erh: 68 });
  trouble(there.slice(0, 6), { wet: "yes" });
}

/** 130 plates with growth, most in the cabinets under the basin. */
function platesGrow(chance: Chance, plates: readonly Draft[], dampOf: (draft: Draft) => number): void {
  const grown = chance.someByWeight(plates, 130, dampOf);
  for (const draft of grown) onImage(chance, draft, 1, 12, 70);
  for (const draft of chance.some(grown, 18)) draft.row.neighbours_unchecked = "yes";
}

/** 240 cracked plates; layers that lift; prints that stick; tinted prints that flake. */
function broken(chance: Chance, drafts: readonly Draft[]): void {
  trouble(chance.some(lot(drafts, "plate"), 240), { glass_broken: "yes" });
  trouble(chance.some(lot(drafts, "plate"), 96), { emulsion_lifting: "yes" });
  const prints = drafts.filter((draft) => draft.row.format === "photo_print");
  trouble(chance.some(prints, 14), { stuck_to_glass: "yes" });
  const tinted = chance.some(
    prints.filter((draft) => draft.row.process === "albumen"),
    6,
  );
  trouble(tinted, { media_flakes: "yes" });
  for (const draft of tinted) draft.row.media = ["photographic", "watercolour"];
}

/** Bats over the attic hatch, mice behind a shelf, old moth powder in five account books, silverfish in the paper. */
function stops(chance: Chance, drafts: readonly Draft[]): void {
  const dry = lot(drafts, "gazette").filter((draft) => draft.answers.floodwater_dirty === undefined);
  const hatch = dry.slice(120, 126);
  for (const draft of hatch) draft.row.found_in = "Attic, under the hatch";
  trouble(hatch, { guano: "yes" });
  trouble(chance.some(dry.slice(0, 120), 14), { live_insects: "yes" });
  trouble(dry.slice(140, 148), { rodent_signs: "yes" });
  trouble(
    plain(drafts, "account book")
      .filter((draft) => draft.row.cover === "paper")
      .slice(0, 5),
    { powder_between: "yes" },
  );
}
