import type { GelCaution } from "../../physics/bags/gel-caution.ts";

/** One plain sentence for each caution that travels with a figure about silica gel. */
export const CAUTIONS: Readonly<Record<GelCaution, string>> = {
  "no-more-gel-than-the-item-bears":
    "Do not put in more dry gel than this: with more, the item goes on drying past what it can bear.",
  "gel-dries-the-outside-first":
    "Dry gel empties the air long before the core of a thick item follows, so its outside dries too far first: for palm leaf, skin and photographs use gel left in air of the wanted humidity until it gains no more.",
  "packet-larger-than-the-item-bears":
    "One more packet would dry the item too far: use smaller packets, or gel conditioned to the wanted humidity.",
  "gel-is-full": "The gel ends nearly full: use more, or change it, before reading the bag as dry.",
  "leak-outruns-gel":
    "More water leaks in than this gel can take: mend the seal or use a tighter film first.",
  "more-exchanges-than-sense":
    "So many changes of gel will not get there in good time: open and fan the item, or dry the air of a separate room.",
  "units-ignore-damp-items":
    "The count of units is made for dry goods: the water of damp items must be added to it.",
  "gel-dry-only-by-weight":
    "Gel is dry when two weighings an hour apart differ by less than half a per cent; colour and time alone do not show it. Hot gel burns: let it cool in a closed tin.",
  "colour-gel-not-above-120":
    "Gel that changes colour is spoiled above about 120 °C: dry it cooler and longer.",
  "blue-gel-is-poisonous":
    "Blue gel holds a cobalt salt that harms people and may not be thrown away freely: prefer gel with another indicator, never breathe its dust, follow local rules.",
  "case-rule-from-memory": "The display-case rule was recalled, not read again: take the figure as a guide.",
};
