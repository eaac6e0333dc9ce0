import type { ItemCare } from "../../care/item-care.ts";
import type { Act } from "../../items/campaign.ts";
import { conditionsOf, hasGrowth } from "./contamination.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/* What an act draws from the stores, from the consumables of data/norms.json. */

/** What one person uses on one exposed day. */
const PER_EXPOSED_DAY = [
  "k-mask",
  "k-gloves",
  "k-apron",
  "k-hair",
  "k-cloth",
  "k-eth",
  "k-cover",
  "k-bags-waste",
];

type Uses = Readonly<Record<string, number>>;

export const usesOfExposedDay = (paper: PlanOnPaper): Uses =>
  Object.fromEntries(PER_EXPOSED_DAY.map((use) => [use, paper.typical(use)]));

/** What an act takes for one item, all of it on the act's first day. */
export function usesOfAct(paper: PlanOnPaper, care: ItemCare, act: Act): Uses {
  const conditions = conditionsOf(care);
  switch (act) {
    case "admit": {
      const dries = ["damp", "wet", "mould_active"].some((each) => conditions.has(each));
      const { mass_kg: mass } = care.item.facts;
      const gel = paper.typical("k-gel") * (typeof mass === "number" ? mass : 1);
      return { "k-bag": paper.typical("k-bag"), ...(dries ? { "k-gel": gel } : {}) };
    }
    case "wrap":
      return { "k-wrap-paper": paper.typical("k-wrap-paper"), "k-tape": paper.typical("k-tape") };
    case "clean":
      return spongesOf(paper, care, conditions);
    case "box":
      return housingOf(care, conditions);
    default:
      return {};
  }
}

/** Leaves of a format where nobody counted. Common practice, no source. */
const LEAVES: Readonly<Record<string, number>> = {
  bound_volume: 200,
  pamphlet: 16,
  loose_sheets: 85,
  newspaper: 60,
  album: 30,
  palm_leaf_bundle: 80,
  bark_manuscript: 60,
  folded_book: 40,
};

const leavesOf = ({ item }: ItemCare): number =>
  typeof item.facts.leaves === "number" ? item.facts.leaves : (LEAVES[String(item.facts.format)] ?? 1);

/** Sponge for the leaves with growth, for a tenth of them at least, where the rules allow sponges once it is released and wrapped. */
function spongesOf(paper: PlanOnPaper, care: ItemCare, conditions: ReadonlySet<string>): Uses {
  const [body] = care.at(new Set<Act>([...care.done, "release", "covers", "wrap"]), true);
  if (!body || body.care.banned.has("clean_sponge")) return {};
  const extent = care.answers.mould_extent_pct;
  const hit = hasGrowth(conditions) ? Math.min(1, (typeof extent === "number" ? extent : 10) / 100) : 0;
  return { "k-sponge-light": (leavesOf(care) * Math.max(hit, 0.1) * paper.typical("k-sponge-light")) / 100 };
}

/** Boxes, folders and labels by format. Common practice, no source. */
function housingOf(care: ItemCare, conditions: ReadonlySet<string>): Uses {
  switch (String(care.item.facts.format)) {
    case "loose_sheets":
      return { "k-folder": (leavesOf(care) / 100) * 3, "k-label": 1, "k-box-vol": 0.1 };
    case "palm_leaf_bundle":
    case "bark_manuscript":
      return { "k-label": 2, "k-box-vol": 1, "k-tape": 1.5 };
    case "map_plan":
    case "photo_print":
    case "parchment_document":
      return { "k-folder": 1, "k-label": 1 };
    case "film_negative":
      return { "k-label": 1, "k-box-vol": 0.1 };
    case "glass_negative":
      return { "k-fourflap": 1, "k-label": 1, "k-box-vol": 0.1 };
    default:
      return { "k-box-vol": conditions.has("red_rot") ? 1 : 0.4, "k-label": 2 };
  }
}
