import type { Act, Item } from "../items/campaign.ts";

/** Pictures of one kind that an item needs. */
export interface ShotSet {
  /** Name of ours: `covers`, `openings` … */
  readonly set: string;
  /** Empty: the item as a whole. */
  readonly part: string;
  /** How many; null: as many as the part has to show. */
  readonly wanted: number | null;
}

/** The views of covers and edges: front, back, spine, head, tail, fore-edge. */
export const COVER_VIEWS = 6;
/** How the leaves of a format lie under the camera; what is not here is bound: openings. */
const LIE: Readonly<Record<string, string>> = {
  loose_sheets: "sheets",
  pamphlet: "sheets",
  map_plan: "sheets",
  scroll_roll: "sheets",
  photo_print: "front-back",
  photo_cased: "front-back",
  parchment_document: "front-back",
  sealed_document: "front-back",
  film_negative: "frames",
  glass_negative: "plate",
  palm_leaf_bundle: "leaf-sides",
  bark_manuscript: "leaf-sides",
};

/** What an item has to be pictured in, set by set: covers and edges first, then the leaves, then each part on its own.
 *  @param images of the whole item, as its route counts them   Common practice, no source */
export function shotListOf(item: Item, act: Act, images: number): ShotSet[] {
  const parts = item.parts.map(({ name }): ShotSet => ({ set: "part", part: name, wanted: null }));
  const covers: ShotSet = { set: "covers", part: "", wanted: COVER_VIEWS };
  if (act === "covers") return [covers];
  const lie = LIE[String(item.facts.format)];
  if (lie !== undefined) return [{ set: lie, part: "", wanted: images }, ...parts];
  return [covers, { set: "openings", part: "", wanted: Math.max(0, images - COVER_VIEWS) }, ...parts];
}
