import type { SorptionCaution } from "../../physics/sorption/isotherm.ts";

/** One plain sentence for each caution that travels with a figure made from a sorption curve. */
export const CAUTIONS: Readonly<Record<SorptionCaution, string>> = {
  "never-dry-by-weight-alone":
    "A drying item holds more water than this curve says at the same humidity: never call it dry by weight alone, read the rested bag too.",
  "isotherm-from-memory":
    "The curve is fitted to an old handbook table that was recalled, not read again: take the figure as a guide.",
  "leather-by-modern-sole-leather":
    "No curve of old binding leather was found: this one is of new sole leather, and powdering leather may differ.",
  "parchment-by-catgut":
    "No curve of parchment was found: untanned gut stands in for it, about half a per cent of moisture out.",
  "emulsion-by-hide-collagen":
    "No curve of photographic emulsion was found: untanned gut stands in for it, as the handbook's gelatin row is too low.",
  "palm-leaf-by-wood":
    "No curve of palm leaf was found: wood stands in for it, weakly. Trust readings of the bag before this figure.",
  "pulp-is-an-upper-bound":
    "This curve is the first drying of pure pulp, well above book paper: use it for how temperature shifts things, not for how much water there is.",
  "relhum-shift-is-woods":
    "How humidity moves with warmth is wood's: about 0.2 % for each degree in a closed bag, and up to 0.35 % has been met.",
};
