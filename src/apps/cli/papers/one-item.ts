import type { PaperKind } from "../../../core/say/papers/command.ts";
import { benchCardView } from "../../../edge/papers/bench-card-view.ts";
import { boxLabelViews } from "../../../edge/papers/box-label-view.ts";
import { filledBoxes } from "../../../edge/papers/filled-boxes.ts";
import { labels } from "../../../edge/papers/label-view.ts";
import { bagTags, benchCards } from "../../../edge/papers/papers.ts";
import { bagTagViews } from "../../../edge/papers/store-views.ts";
import { cardContext } from "./card-context.ts";
import { oneFile, type PaperSource, type Printed } from "./printed.ts";
import { STANDING_PAPERS } from "./standing-papers.ts";

/** The papers of one item; none of them needs a plan. */
export const ITEM_PAPERS = {
  "bench-cards": ({ campaign, care, routes, sheet, item }: PaperSource): Promise<Printed[]> => {
    const context = cardContext(campaign.name);
    const views = care.flatMap((each, at) => {
      const route = routes[at];
      return each.item.id === item && route ? [benchCardView(each, route, context)] : [];
    });
    return oneFile("bench-card.pdf", views, () => benchCards(views, { sheet }));
  },
  "bag-tags": ({ campaign, routes, sheet, item }: PaperSource): Promise<Printed[]> => {
    const since = campaign.ward.find((each) => each.item === item && each.what === "closed")?.day;
    const admit = since ?? campaign.planFrom;
    const itemDays = routes.some((route) => route.item === item && route.wardDays)
      ? [{ item: item ?? "", days: { admit } }]
      : [];
    const views = bagTagViews({ itemDays }, campaign, routes, admit, admit);
    return oneFile("bag-tag.pdf", views, () => bagTags(views, { sheet }));
  },
  "hazard-labels": STANDING_PAPERS["hazard-labels"],
  "box-labels": (source: PaperSource): Promise<Printed[]> => {
    const { campaign, state, sheet, item } = source;
    const own = filledBoxes(state).filter(({ items }) => item !== null && items.includes(item));
    const views = boxLabelViews(
      campaign.name,
      own.length > 0 || item === null ? own : [{ box: item, items: [item] }],
      source,
    );
    return oneFile("box-label.pdf", views, () => labels(views, { sheet }));
  },
  "item-records": STANDING_PAPERS["item-records"],
} satisfies Partial<Record<PaperKind, (source: PaperSource) => Promise<Printed[]>>>;
