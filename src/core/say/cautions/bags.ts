import type { BagCaution } from "../../physics/bags/bags.ts";

/** One plain sentence for each caution that travels with a figure about films, bags and boxes. */
export const CAUTIONS: Readonly<Record<BagCaution, string>> = {
  "bag-does-not-dry":
    "A closed bag dries nothing by itself within weeks: without gel or opening, the item stays as damp as it went in.",
  "film-figure-is-a-band": "Films of one name differ by a factor of two or more: plan with the worse end.",
  "film-colder-is-estimated":
    "The film was measured at another temperature: the figure is an estimate between two ends.",
  "measure-the-box": "Boxes leak by their seams, and no table of it can be trusted: measure this one.",
};
