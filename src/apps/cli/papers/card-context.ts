import { loadNorms } from "../../../core/care/norms.ts";
import type { CardContext } from "../../../edge/papers/bench-card-view.ts";
import { readPublished } from "../../../edge/published.ts";
import { publishedRuleBook } from "../../../edge/rule-book.ts";

/** What a bench card is worded with. */
export function cardContext(campaign: string): CardContext {
  const book = publishedRuleBook();
  const norms = loadNorms(readPublished("norms.json"));
  return {
    campaign,
    endings: book.endings,
    families: book.families,
    storeWords: (use) =>
      norms.unit(use) === "pc" ? norms.what(use) : `${norms.unit(use)} ${norms.what(use)}`,
  };
}
