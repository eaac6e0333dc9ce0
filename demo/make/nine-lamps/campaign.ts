import { roomLog } from "../climate.ts";
import { workdays } from "../days.ts";
import { type Draft, draftOf, number, plain, racks, shelve, trouble } from "../draft.ts";
import { dormant } from "../growth.ts";
import { trialSessions } from "../pilot.ts";
import type { Invented } from "../rows.ts";
import { type Chance, inShares, seeded } from "../seeded.ts";
import { stackSize, years } from "../sizes.ts";
import { answerAll, findingsOf } from "../survey.ts";
import { CALENDAR, CAMPAIGN, DELIVERIES, PEOPLE, STORES } from "./house.ts";

const HOUSE_RULE = "No shoe leather near the chests; texts are never laid on the floor.";
const SUBJECTS = [
  "Fevers",
  "Bone setting",
  "Lamp oils",
  "Children's cures",
  "Roots and barks",
  "Bites and stings",
  "Eyes",
  "Births",
  "Tides of the blood",
  "The nine lamps",
];

/** House of the Nine Lamps: 620 items of a family of herb doctors. */
export function nineLamps(): Invented {
  const chance = seeded(20261005);
  const drafts = [
    ...bundles(chance),
    ...barkBooks(chance),
    ...foldedBooks(chance),
    ...notes(chance),
    ...plates(),
  ];
  number(drafts, "NL", 3);
  befall(chance, drafts);
  consign(drafts);
  for (const draft of drafts) draft.row.priority = chance.happens(0.2) ? "must" : "want";
  wantedByDay(chance, drafts);
  answerAll(chance, drafts, 6);
  const days = workdays("2026-07-06", "2026-10-02");
  return {
    folder: "nine-lamps",
    campaign: CAMPAIGN,
    tables: {
      items: drafts.map((draft) => draft.row),
      parts: drafts.flatMap((draft) => draft.parts.map((part) => ({ item: draft.row.item, ...part.row }))),
      findings: findingsOf(chance, drafts, { days, people: ["HK", "AT", "SW"] }),
      people: PEOPLE,
      calendar: CALENDAR,
      stores: STORES,
      deliveries: DELIVERIES,
      sessions: trial(chance, drafts, days),
      ward: [],
    },
    climate: {
      "chest-room": roomLog(chance, {
        from: "2026-07-01",
        to: "2026-09-30",
        warmth: [23, 29],
        damp: [88, 74],
        weather: 0.6,
      }),
      "clean-room": roomLog(chance, {
        from: "2026-07-01",
        to: "2026-09-30",
        warmth: [22, 26],
        damp: [64, 56],
        weather: 0.5,
        fails: { on: "2026-08-24", how: "blank" },
      }),
    },
  };
}

/** 410 palm-leaf bundles: 260 cut and blackened, 90 inked on the surface, 60 with painted boards or outer leaves. */
function bundles(chance: Chance): Draft[] {
  const kinds = chance.shuffled(inShares({ cut: 260, inked: 90, painted: 60 }));
  return kinds.map((kind) => {
    const leaves = Math.round(chance.skewed(70, 72, 160));
    const draft = draftOf(
      "bundle",
      {
        title: `${chance.pick(SUBJECTS)}, ${chance.pick(["first", "second", "third", "old", "new", "teacher's"])} bundle`,
        format: "palm_leaf_bundle",
        support: "palm_leaf",
        media: [kind === "inked" ? "inked_on_surface" : "incised_inked"],
        cover: kind === "painted" ? "lacquered_boards" : "wooden_boards",
        ...(kind === "painted" ? { has: ["painted_boards"] } : {}),
        leaves,
        ...stackSize(50, chance.skewed(320, 450, 600), leaves, 0.45, 380, 0.25),
        ...years(chance.whole(1720, 1890)),
        custodian_rule: HOUSE_RULE,
      },
      { writing_raised_or_cut: kind === "inked" ? "on_surface" : "cut" },
    );
    if (kind === "painted")
      draft.parts.push({
        row: { part: "painted outer leaves", media: ["painted", "incised_inked"], leaves: 2 },
        answers: { writing_raised_or_cut: "both", media_flakes: chance.pick(["no", "no", "unsure", "yes"]) },
      });
    return draft;
  });
}

const barkBooks = (chance: Chance): Draft[] =>
  Array.from({ length: 60 }, () => {
    const leaves = Math.round(chance.skewed(12, 24, 60));
    return draftOf("bark", {
      title: `${chance.pick(SUBJECTS)}, bark book`,
      format: "bark_manuscript",
      support: "bark",
      media: ["ink_carbon"],
      cover: "wooden_boards",
      leaves,
      ...stackSize(180, 120, leaves, 0.8, 500, 0.1),
      ...years(chance.whole(1780, 1900)),
      custodian_rule: HOUSE_RULE,
    });
  });

const foldedBooks = (chance: Chance): Draft[] =>
  Array.from({ length: 48 }, () => {
    const leaves = Math.round(chance.skewed(14, 30, 60));
    return draftOf("folded", {
      title: `${chance.pick(SUBJECTS)}, black folded book`,
      format: "folded_book",
      support: "paper_local_fibre",
      media: ["soapstone_white"],
      cover: "none",
      leaves,
      ...stackSize(360, 120, leaves, 0.6, 220, 0),
      ...years(chance.whole(1820, 1910)),
    });
  });

const notes = (chance: Chance): Draft[] =>
  Array.from({ length: 90 }, () => {
    const leaves = Math.round(chance.skewed(8, 24, 90));
    return draftOf("note", {
      title: `Patients' notes, ${chance.pick(SUBJECTS)}`,
      format: "loose_sheets",
      support: "paper_local_fibre",
      media: [chance.pick(["ink_carbon", "pencil", "ink_dye"])],
      cover: "none",
      leaves,
      ...stackSize(280, 200, leaves, 0.15, 60, 0),
      ...years(chance.whole(1890, 1950)),
      restricted_view: "yes",
    });
  });

/** Twelve copper plates: no recipe in the rules, so they are described and set aside. */
const plates = (): Draft[] =>
  Array.from({ length: 12 }, (_, at) =>
    draftOf("plate", {
      title: `Copper grant plate ${at + 1}`,
      format: "other",
      support: "metal_plate",
      leaves: 1,
      ...stackSize(90, 240, 1, 3, 9000, 0),
      found_in: "Shrine shelf",
    }),
  );

/** 70 bundles with vermilion or ash; 55 with old holes, 18 with fresh dust; 40 with dry growth; a chest with droppings. */
function befall(chance: Chance, drafts: readonly Draft[]): void {
  const chest = plain(drafts, "note").slice(0, 14);
  for (const draft of chest) draft.row.found_in = "Chest 4, under the stair";
  trouble(chest, { rodent_signs: "yes" });
  const dampOf = shelve(drafts, racks(chance, "Chest", 9, 4));
  for (const draft of chance.someByWeight(plain(drafts, "bundle"), 40, dampOf))
    dormant(chance, draft, 2, 12, 50);
  trouble(chance.some(plain(drafts, "bundle"), 18), { old_holes: "yes", fresh_frass: "yes" });
  const holed = chance.some(plain(drafts, "bundle"), 37);
  trouble(holed, { old_holes: "yes", fresh_frass: "no" });
  for (const draft of holed.slice(0, 9)) delete draft.answers.fresh_frass;
  trouble(chance.some(plain(drafts, "bundle"), 70), { devotional_deposit: "yes" });
  for (const draft of chance.some(plain(drafts, "bundle"), 30)) draft.answers.water_spot_moves = "no";
  stops(chance, drafts);
  const wishes = plain(drafts, "bundle");
  for (const draft of wishes.slice(0, 2))
    draft.row.custodian_rule = `${HOUSE_RULE} Dame Orrel alone may untie this set.`;
  for (const draft of wishes.slice(2, 5))
    draft.row.custodian_rule = `${HOUSE_RULE} The family asks to have the letters blackened: answer together with a conservator.`;
  for (const draft of wishes.slice(5, 8))
    draft.row.custodian_rule = `${HOUSE_RULE} The family asks to have the leaves oiled after cleaning: answer together with a conservator.`;
}

/** Insect powder in three bundles of notes, two wrappers of bright green, swallows over two bark books, ink that lifts, leaves that split. */
function stops(chance: Chance, drafts: readonly Draft[]): void {
  const old = plain(drafts, "note").filter((draft) => (draft.row.date_earliest ?? 0) < 1930);
  trouble(old.slice(0, 3), { powder_between: "yes" });
  trouble(old.slice(3, 5), { bright_green: "yes" });
  const swallows = plain(drafts, "bark").slice(0, 2);
  for (const draft of swallows) draft.row.found_in = "Shrine beam";
  trouble(swallows, { guano: "yes" });
  const inked = plain(drafts, "bundle").filter((draft) => draft.row.media?.includes("inked_on_surface"));
  trouble(chance.some(inked, 9), { media_flakes: "yes" });
  trouble(chance.some(plain(drafts, "bundle"), 12), { leaf_delaminates: "yes" });
  trouble(chance.some(plain(drafts, "bundle"), 30), { order_uncertain: "yes" });
}

/** For the midwinter reading and the new year of the valley. */
function wantedByDay(chance: Chance, drafts: readonly Draft[]): void {
  const here = drafts.filter((draft) => draft.row.arrives === undefined && draft.row.priority === "must");
  for (const draft of chance.some(here, 24)) draft.row.due = chance.pick(["2026-12-18", "2027-04-09"]);
}

/** Three chests that nobody has opened for fifty years come down one after another. */
function consign(drafts: readonly Draft[]): void {
  const inOrder = drafts.filter((draft) => draft.lot === "bundle");
  for (const [at, arrives] of ["2026-11-16", "2027-01-11", "2027-02-15"].entries())
    for (const draft of inOrder.slice(300 + at * 36, 336 + at * 36)) draft.row.arrives = arrives;
}

/** The summer trial: forty items. */
function trial(
  chance: Chance,
  drafts: readonly Draft[],
  days: readonly string[],
): Invented["tables"]["sessions"] {
  const here = drafts.filter((draft) => draft.row.arrives === undefined && draft.parts.length === 0);
  const survey = [4.5, 0.02] as const;
  const plainHere = (lot: string, count: number): Draft[] =>
    chance.some(
      here.filter(
        (draft) =>
          draft.lot === lot &&
          draft.answers.growth_visible === "no" &&
          draft.answers.rodent_signs === "no" &&
          draft.answers.powder_between === "no" &&
          draft.answers.guano === "no" &&
          draft.answers.bright_green !== "yes" &&
          draft.answers.media_flakes !== "yes" &&
          draft.answers.devotional_deposit !== "yes" &&
          draft.answers.old_holes !== "yes",
      ),
      count,
    );
  return trialSessions(
    chance,
    [
      { items: plainHere("bundle", 24), acts: { survey, clean: [20, 1], image: [6, 2.3], box: [30, 0] } },
      { items: plainHere("note", 10), acts: { survey, clean: [4, 0.2], image: [3, 0.6], box: [2, 0] } },
      { items: plainHere("folded", 6), acts: { survey, clean: [4, 1], image: [4, 0.9], box: [6, 0] } },
    ],
    { days, people: { survey: ["HK", "AT"], clean: ["HK", "AT"], image: ["AT", "SW"], box: ["DO", "HK"] } },
  );
}
