import type { Campaign, Finding, Item, Limit, Part } from "../../../src/core/items/campaign.ts";
import type { Facts, FactValue } from "../../../src/core/items/facts.ts";
import type { Day } from "../../../src/core/units/day.ts";

/** An invented harbour office with a few items of each trouble; nobody and nothing in it is real. */
const day = (text: string): Day => text as Day; // literals of this file only
const limit = (value: number): Limit => ({ value, source: "test" });

/** Answers of a quiet item, so that only what a test changes speaks. */
const QUIET: Facts = {
  wet: "no",
  damp_to_touch: "no",
  growth_visible: "no",
  live_insects: "no",
  rodent_signs: "no",
  guano: "no",
  powder_between: "no",
  fragments_fall: "no",
  media_flakes: "no",
  media_offsets: "no",
  leaves_stuck: "no",
  bright_green: "no",
  opening_angle: 120,
  rusted_fasteners: "no",
  emulsion_lifting: "no",
  stuck_to_glass: "no",
  glass_broken: "no",
  springs_back: "no",
  writing_raised_or_cut: "cut",
  leaf_delaminates: "no",
  devotional_deposit: "no",
  order_uncertain: "no",
  film_sticky_or_bubbled: "no",
  acrid_odour: "no",
  vinegar_odour: "no",
  inserts: "no",
  seal_loose_cracked: "no",
  lead_seal_white: "no",
};
const DORMANT: Facts = { growth_visible: "yes", growth_smears: "no", mould_extent_pct: 12 };

export interface Sample {
  readonly id: string;
  readonly facts: Facts;
  readonly answers?: Facts;
  readonly parts?: readonly Part[];
  readonly rule?: string;
}

export const SAMPLES: readonly Sample[] = [
  {
    id: "LDG-01",
    facts: {
      format: "bound_volume",
      support: "paper_rag",
      cover: "leather_calf",
      media: ["ink_iron_gall"],
      leaves: 320,
      mass_kg: 3,
    },
    answers: { ...DORMANT, rub_mark: "clear" },
  },
  {
    id: "PLM-01",
    facts: {
      format: "palm_leaf_bundle",
      support: "palm_leaf",
      media: ["incised_inked", "painted"],
      has: ["painted_boards"],
      leaves: 80,
      mass_kg: 1,
    },
    answers: { writing_raised_or_cut: "both" },
    parts: [{ name: "painted outer leaf", facts: { media: ["painted", "gilding"] } }],
    rule: "Bring the bundle with the right hand, never by the cord.",
  },
  {
    id: "FIL-01",
    facts: {
      format: "loose_sheets",
      support: "paper_wood_pulp",
      media: ["typescript"],
      leaves: 90,
      mass_kg: 1,
    },
  },
  {
    id: "PHO-01",
    facts: { format: "photo_print", support: "paper_rag", media: ["photographic"], mass_kg: 0.1 },
    answers: DORMANT,
  },
  {
    id: "FLM-01",
    facts: { format: "film_negative", support: "film_unknown", leaves: 6, mass_kg: 0.1 },
    answers: { film_edge_mark: "none" },
  },
  {
    id: "PSN-01",
    facts: {
      format: "bound_volume",
      support: "paper_rag",
      cover: "bookcloth",
      leaves: 100,
      date_earliest: 1850,
      mass_kg: 1,
    },
    answers: { powder_between: "unsure", rub_mark: "none" },
  },
  {
    id: "GRN-01",
    facts: { format: "bound_volume", support: "paper_rag", cover: "bookcloth", leaves: 150, mass_kg: 1 },
    answers: { bright_green: "yes", rub_mark: "none" },
  },
  {
    id: "LET-01",
    facts: {
      format: "loose_sheets",
      support: "paper_rag",
      media: ["ink_iron_gall"],
      leaves: 40,
      mass_kg: 0.5,
    },
    answers: { growth_visible: "yes", growth_smears: "yes", damp_to_touch: "yes", mould_extent_pct: 60 },
    parts: [{ name: "seal", facts: { format: "sealed_document", has: ["seal_wax"] } }],
  },
  {
    id: "BRK-01",
    facts: { format: "loose_sheets", support: "paper_wood_pulp", media: ["pencil"], leaves: 60 },
    answers: { fragments_fall: "yes" },
  },
  { id: "NEW-01", facts: { format: "map_plan", support: "paper_rag" }, answers: { springs_back: "unsure" } },
];

export const findingsOf = ({ id, answers = {} }: Sample): Finding[] =>
  Object.entries({ ...QUIET, ...answers }).map(([test, answer]: [string, FactValue]) => ({
    item: id,
    part: "",
    test,
    answer,
  }));

const itemOf = ({ id, facts, parts = [], rule }: Sample): Item => ({
  id,
  title: `Item ${id}`,
  facts: rule ? { ...facts, custodian_rule: rule } : facts,
  parts,
  priority: "want",
  heightMm: 380,
  widthMm: 250,
  thicknessMm: 60,
  foundIn: "chest 4",
  ...(rule ? { custodianRule: rule } : {}),
});

export const campaignOf = (samples: readonly Sample[], changes: Partial<Campaign> = {}): Campaign => ({
  name: "Saltmere Reach Harbour Papers",
  place: { name: "Quillimbo", climate: "hot_humid", freezer: false, fineFilterVacuum: true },
  start: day("2026-06-01"),
  end: day("2026-09-30"),
  planFrom: day("2026-06-01"),
  wardLitres: 500,
  stations: [],
  limits: {
    exposedMinutesADay: limit(180),
    exposedDaysAWeek: limit(3),
    exposedDaysInARow: limit(2),
    maskMinutes: limit(75),
    maskBreakMinutes: limit(30),
  },
  items: samples.map(itemOf),
  findings: samples.flatMap(findingsOf),
  people: [],
  calendar: [],
  stores: [],
  deliveries: [],
  sessions: [],
  ward: [],
  climate: [],
  ...changes,
});
