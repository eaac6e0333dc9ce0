import type { Act } from "../items/campaign.ts";

const CONDITIONS: Readonly<Record<string, string>> = {
  mould_active: "Living mould",
  mould_dormant: "Dormant mould",
  mould_suspected: "Suspected mould",
  damp: "Damp",
  wet: "Wet",
  red_rot: "Red rot",
  bloom_not_mould: "Bloom, not mould",
  flaking_media: "Flaking ink or paint",
  friable_media: "Powdery writing",
  water_sensitive: "Not shown safe with water",
  ink_corrosion: "Ink corrosion",
  brittle: "Brittle",
  blocked: "Leaves stuck together",
  delaminating: "Splitting into layers",
  insect_active: "Live insects",
  insect_uncertain: "Old insect damage, life not ruled out",
  rodent_contaminated: "Rodent droppings",
  guano_contaminated: "Bat or bird droppings",
  pesticide_suspected: "Possible poison",
  arsenic_suspected: "Possible arsenic green",
  lead_suspected: "Possible lead",
  nitrate_suspected: "Possible nitrate film",
  nitrate_advanced: "Decaying nitrate film",
  acetate_degrading: "Decaying acetate film",
  image_layer_unsafe: "Image layer unsafe to touch",
  stuck_print: "Stuck print",
  broken_glass: "Broken glass",
  rust_metal: "Rusted pins or clips",
  seal_at_risk: "Seal at risk",
  parchment_distorted: "Distorted skin",
  devotional_deposit: "Matter placed on purpose",
  flood_dirt: "Flood dirt",
  soot: "Soot",
};

export const sayCondition = (condition: string): string =>
  CONDITIONS[condition] ?? condition.replaceAll("_", " ");
export const spokenConditions = (): string[] => Object.keys(CONDITIONS);

/** An act as the cards name it. */
const ACT_WORDS: Readonly<Record<Act, string>> = {
  survey: "Survey",
  admit: "Bag, label and log in the Ward",
  release: "Read the bag and test for release",
  covers: "Photograph the covers",
  wrap: "Wrap",
  clean: "Clean",
  image: "Photograph",
  box: "Box and label",
};
export const sayAct = (act: Act): string => ACT_WORDS[act];

const DIRT_WORDS = ["clean", "dusty", "red rot", "mould", "poison"] as const;
/** What an item leaves on a station. */
export const sayDirt = (dirt: 0 | 1 | 2 | 3 | 4): string => DIRT_WORDS[dirt];
