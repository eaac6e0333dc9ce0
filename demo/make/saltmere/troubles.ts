import { type Draft, plain, type Shelf, shelve, trouble } from "../draft.ts";
import { dormant, living, suspected } from "../growth.ts";
import type { Chance } from "../seeded.ts";

const lot = (drafts: readonly Draft[], name: string): Draft[] => drafts.filter((draft) => draft.lot === name);

/** Everything that is wrong at Saltmere Reach, each thing exactly as often as the story says. */
export function befall(chance: Chance, drafts: readonly Draft[], shelves: readonly Shelf[]): void {
  underTheRoofHole(drafts);
  const dampOf = shelve(drafts, shelves);
  dropped(drafts);
  grow(chance, drafts, dampOf);
  insects(chance, drafts);
  loose(chance, drafts);
  sealed(chance, drafts);
}

/** Nine ledgers stood under the hole in the roof when the April rain came. */
function underTheRoofHole(drafts: readonly Draft[]): void {
  const under = plain(drafts, "ledger").slice(30, 39);
  for (const draft of under) draft.row.found_in = "Rack 3 top shelf, under the roof hole";
  trouble(under, { wet: "yes", damp_to_touch: "yes", growth_visible: "no" });
}

/** Mice in a crate on the stair; bats above two files at the eaves. */
function dropped(drafts: readonly Draft[]): void {
  const files = plain(drafts, "file");
  const crate = files.slice(400, 405);
  for (const draft of crate) draft.row.found_in = "Crate on the stair";
  trouble(crate, { rodent_signs: "yes" });
  const eaves = files.slice(610, 612);
  for (const draft of eaves) draft.row.found_in = "Eaves, loose on the beam";
  trouble(eaves, { guano: "yes" });
}

/** 40 ledgers with dry growth; 130 files with living or suspected growth; shelf by shelf, not evenly. */
function grow(chance: Chance, drafts: readonly Draft[], dampOf: (draft: Draft) => number): void {
  for (const draft of chance.someByWeight(plain(drafts, "ledger"), 40, dampOf))
    dormant(chance, draft, 3, 18, 75);
  const files = chance.someByWeight(plain(drafts, "file"), 130, dampOf);
  const alive = new Set(chance.some(files, 88));
  for (const draft of files) if (alive.has(draft)) living(chance, draft, 6, 40, 100);
  for (const draft of files) if (!alive.has(draft)) suspected(chance, draft);
  for (const draft of chance.some(files, 24)) draft.row.neighbours_unchecked = "yes";
}

/** Booklice in a dozen files; old holes in forty ledgers, six of which nobody has watched for two weeks yet. */
function insects(chance: Chance, drafts: readonly Draft[]): void {
  trouble(chance.some(plain(drafts, "file"), 12), { live_insects: "yes" });
  const holed = chance.some(plain(drafts, "ledger"), 40);
  trouble(holed, { old_holes: "yes" });
  trouble(holed.slice(6), { fresh_frass: "no" });
}

/** Lifting colour, rolls that spring back, prints that stick or lift. */
function loose(chance: Chance, drafts: readonly Draft[]): void {
  const coloured = lot(drafts, "chart").filter((draft) => draft.row.media?.includes("watercolour"));
  trouble(chance.some(coloured, 3), { media_flakes: "yes" });
  trouble(
    chance.some(
      lot(drafts, "chart").filter((draft) => draft.row.format === "map_plan"),
      9,
    ),
    { springs_back: "yes" },
  );
  const prints = lot(drafts, "photograph").filter((draft) => draft.row.format === "photo_print");
  trouble(chance.some(prints, 7), { emulsion_lifting: "yes" });
  trouble(chance.some(prints, 5), { stuck_to_glass: "yes" });
  trouble(chance.some(plain(drafts, "file"), 4), { media_flakes: "yes" });
}

/** Ten licences carry a wax seal of their own; four are cracked. */
function sealed(chance: Chance, drafts: readonly Draft[]): void {
  for (const [at, draft] of chance.some(plain(drafts, "file"), 10).entries()) {
    draft.row.title = `Pilot's licences with seal, ${draft.row.date_earliest}`;
    draft.parts.push({
      row: { part: "seal", format: "sealed_document", has: ["seal_wax"], leaves: 1 },
      answers: {
        seal_loose_cracked: at < 4 ? "yes" : "no",
        lead_seal_white: "no",
        media_flakes: "no",
        bloom_melts_warm: at === 9 ? "yes" : "no",
      },
    });
  }
}
